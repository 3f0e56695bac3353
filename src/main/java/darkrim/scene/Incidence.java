package darkrim.scene;

import org.apache.commons.geometry.euclidean.threed.Vector3D;

/**
 * Between which angles light from the pupil can strike a triangle: bounds of the cosine of the angle of incidence.
 *
 * <p>The pupil lies within a circle of the reach of its outline. Over that circle the height above the triangle's plane changes by the in-plane part
 * of the normal at most; the cosine is that height over the distance, and each is taken at its least and its greatest.
 *
 * @param least no cosine of light that arrives is smaller
 * @param most none is larger; 0 where no light can arrive
 */
public record Incidence(double least, double most) {
    /** Covers rounding. */
    private static final double ROUNDING = 1e-9;

    /**
     * The bounds for a triangle that faces along a normal.
     *
     * @param pupil the pupil
     * @param normal the side that is struck, unit length
     */
    public static Incidence of(Pupil pupil, Vector3D a, Vector3D b, Vector3D c, Vector3D normal) {
        Vector3D centre = pupil.frame().origin();
        double along = normal.dot(pupil.frame().normal());
        double radius = pupil.outline().reach();
        double swing = radius * Math.sqrt(Math.max(0, 1 - along * along));
        Vector3D middle = a.add(b).add(c).multiply(1.0 / 3);
        double far = Math.max(centre.distance(a), Math.max(centre.distance(b), centre.distance(c)));
        double size = Math.max(middle.distance(a), Math.max(middle.distance(b), middle.distance(c)));
        double near = centre.distance(middle) - size - radius;
        double low = Double.POSITIVE_INFINITY;
        double high = Double.NEGATIVE_INFINITY;
        for (Vector3D corner : new Vector3D[] {a, b, c}) {
            double height = centre.subtract(corner).dot(normal);
            low = Math.min(low, height - swing);
            high = Math.max(high, height + swing);
        }
        if (high <= 0) {
            return new Incidence(0, 0);
        }
        double least = Math.max(0, low / (far + radius) - ROUNDING);
        double most = near > 0 ? Math.min(1, high / near + ROUNDING) : 1;
        return new Incidence(least, most);
    }
}
