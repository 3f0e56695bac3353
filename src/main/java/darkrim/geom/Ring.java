package darkrim.geom;

/**
 * A disc about the origin of its plane, with or without a round hole about the same point.
 *
 * @param radius outer radius, mm, positive
 * @param hole radius of the hole, mm, 0 for none, less than the outer radius
 */
public record Ring(double radius, double hole) implements Outline {
    /**
     * @throws IllegalArgumentException if a radius is not finite, not positive, or the hole leaves nothing
     */
    public Ring {
        if (!(radius > 0 && radius < Double.POSITIVE_INFINITY && hole >= 0 && hole < radius)) {
            throw new IllegalArgumentException("a ring needs 0 <= hole < radius, got " + hole + " and " + radius);
        }
    }

    /** A disc without a hole. */
    public static Ring disc(double radius) {
        return new Ring(radius, 0);
    }

    @Override
    public double area() {
        return Math.PI * (radius - hole) * (radius + hole);
    }

    @Override
    public boolean contains(double u, double v) {
        double squared = u * u + v * v;
        return squared <= radius * radius && squared >= hole * hole;
    }

    @Override
    public double reach() {
        return radius;
    }

    @Override
    public void place(double s, double t, double[] into) {
        double inner = hole * hole;
        double distance = Math.sqrt(inner + (radius * radius - inner) * s);
        into[0] = distance * UnitCircle.cosine(t);
        into[1] = distance * UnitCircle.sine(t);
    }
}
