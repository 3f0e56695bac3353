package darkrim.geom;

/**
 * The outline of a flat region in its own plane, in mm: a disc, a ring, or a polygon. Curved outlines are exact.
 *
 * <p>{@link #place} maps the unit square onto the region so that equal areas go to equal areas; it is what makes a uniform sample.
 */
public sealed interface Outline permits Ring, Polygon {
    /** Area, mm2. */
    double area();

    /** Whether a point of the plane, mm, lies in the region or on its border. */
    boolean contains(double u, double v);

    /** Greatest distance of a point of the region from the origin of the plane, mm. */
    double reach();

    /**
     * Maps the unit square onto the region, equal areas to equal areas.
     *
     * @param s first coordinate, 0 to 1
     * @param t second coordinate, 0 to 1
     * @param into receives the two coordinates in the plane, mm
     */
    void place(double s, double t, double[] into);
}
