package darkrim.light;

import java.util.stream.IntStream;

/**
 * One way of light from the pupil to a receiver, as a broken line. Point 0 lies on the pupil, points 1 to {@link #order} on the surfaces
 * that reflect, in the order in which light meets them, the last point on the receiver. Mutable and used over and over: what is to be kept must be
 * copied while a {@link PathListener} is told of it.
 */
public final class TracedPath {
    /** From the receiver on. */
    private final double[] points;

    private final int[] facets;
    private final int[] surfaces;
    private final int[] parts;
    private int order;

    TracedPath(int most) {
        points = new double[3 * (most + 2)];
        facets = new int[most + 2];
        surfaces = new int[most + 2];
        parts = new int[most + 2];
    }

    /** Sets the point after a number of reflections, counted from the receiver. */
    void place(int back, int facet, int surface, double x, double y, double z) {
        facets[back] = facet;
        surfaces[back] = surface;
        points[3 * back] = x;
        points[3 * back + 1] = y;
        points[3 * back + 2] = z;
    }

    void part(int back, Reflector.Part part) {
        parts[back] = part.slot();
    }

    void end(int reflections, double x, double y, double z) {
        order = reflections;
        place(reflections + 1, -1, -1, x, y, z);
    }

    /** How often the light is reflected. */
    public int order() {
        return order;
    }

    /** Coordinate k (0 to 2) of a point, mm. */
    public double at(int point, int k) {
        return points[3 * (order + 1 - point) + k];
    }

    /** The facet on which a point lies; -1 on the pupil and for a receiver that is a point. */
    public int facet(int point) {
        return facets[order + 1 - point];
    }

    /** The surface on which a point of reflection lies. */
    public int surface(int point) {
        return surfaces[order + 1 - point];
    }

    /** The part of the finish that reflects at a point of reflection. */
    public Reflector.Part part(int point) {
        return Reflector.Part.at(parts[order + 1 - point]);
    }

    /** The surfaces that reflect. Allocates. */
    public ReflectionPath path() {
        return new ReflectionPath(IntStream.rangeClosed(1, order)
                .mapToObj(point -> new Reflector(surface(point), part(point)))
                .toList());
    }
}
