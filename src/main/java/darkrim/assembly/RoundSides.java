package darkrim.assembly;

import java.util.List;
import java.util.stream.IntStream;
import org.apache.commons.geometry.euclidean.twod.Vector2D;

/**
 * Regular polygons that stand for circles, always on the side of less material: around the circle of an opening, inside the circle of a
 * rim. What is proved dark behind the polygon is then dark behind the true part.
 *
 * <p>With n sides a polygon around a circle of radius r reaches r (1 / cos(pi/n) - 1) beyond it, one inside stays r (1 - cos(pi/n)) behind.
 * n is the least multiple of 4 that keeps the first below 0.001 mm, but from 48 to 720.
 *
 * @param count number of sides
 */
record RoundSides(int count) {
    /** Aim for the distance between circle and polygon, mm. */
    static final double TOLERANCE = 0.001;

    private static final int FEWEST = 48;
    private static final int MOST = 720;

    /** For circles up to a radius, mm. */
    static RoundSides forRadius(double radius) {
        return forRadius(radius, TOLERANCE);
    }

    static RoundSides forRadius(double radius, double tolerance) {
        double needed = Math.PI / StrictMath.acos(radius / (radius + tolerance));
        // The cast turns what is too large, or not a number, into something that the clamp below mends.
        int multiple = 4 * (int) Math.ceil(Math.min(needed, MOST) / 4);
        return new RoundSides(Math.max(FEWEST, Math.min(MOST, multiple)));
    }

    /** A polygon whose sides touch the circle from outside, mm. */
    List<Vector2D> around(double radius) {
        return polygon(radius / StrictMath.cos(Math.PI / count));
    }

    /** A polygon whose corners lie on the circle, mm. */
    List<Vector2D> inside(double radius) {
        return polygon(radius);
    }

    /** How far the corners of {@link #around} lie beyond the circle, mm; more than the sides of {@link #inside} stay behind it. */
    double chordError(double radius) {
        return radius / StrictMath.cos(Math.PI / count) - radius;
    }

    private List<Vector2D> polygon(double radius) {
        return IntStream.range(0, count)
                .mapToObj(i -> Vector2D.of(
                        radius * StrictMath.cos(2 * Math.PI * i / count),
                        radius * StrictMath.sin(2 * Math.PI * i / count)))
                .toList();
    }
}
