package darkrim.trace;

/**
 * A ray on its way through a {@link FacetTree}, and what it met. Mutable and used over and over, one for each thread, so that tracing
 * allocates nothing.
 *
 * <p>The terms {@code shear} and {@code axis} are those of Woop, Benthin, Wald, "Watertight Ray/Triangle Intersection", Journal of Computer
 * Graphics Techniques 2(1), 2013: the ray is sheared onto the axis along which it is longest.
 */
public final class Ray {
    /** Given for the skipped plane when every facet counts. */
    public static final int NO_PLANE = -1;

    double originX;
    double originY;
    double originZ;
    double farthest;
    int skippedPlane;

    double inverseX;
    double inverseY;
    double inverseZ;
    int axisX;
    int axisY;
    int axisZ;
    double shearX;
    double shearY;
    double shearZ;
    /** The start along the three axes just named. */
    double startX;

    double startY;
    double startZ;
    /** Where in a node the border stands by which the ray enters: 0 for the low one, 3 for the high one. */
    int nearX;

    int nearY;
    int nearZ;

    int facet;
    double weightA;
    double weightB;
    double weightC;

    final int[] stack = new int[FacetTree.DEEPEST + 1];
    final double[] stackEntry = new double[FacetTree.DEEPEST + 1];

    /**
     * Sets out on a new way.
     *
     * @param x start, mm
     * @param y likewise
     * @param z likewise
     * @param dx direction, of a length between 1e-100 and 1e100; distances are in units of its length
     * @param dy likewise
     * @param dz likewise
     * @param length hits count when their distance lies between 0 and this, both left out; infinity for no end
     * @param plane the plane of the facet on which the ray starts, whose facets it cannot meet, or {@link #NO_PLANE}
     */
    public void set(double x, double y, double z, double dx, double dy, double dz, double length, int plane) {
        originX = x;
        originY = y;
        originZ = z;
        // A box that is missed is entered at infinity, which must lie beyond the end of every ray.
        farthest = Math.min(length, Double.MAX_VALUE);
        skippedPlane = plane;
        inverseX = inverse(dx);
        inverseY = inverse(dy);
        inverseZ = inverse(dz);
        nearX = inverseX < 0 ? 3 : 0;
        nearY = inverseY < 0 ? 3 : 0;
        nearZ = inverseZ < 0 ? 3 : 0;
        double sizeX = Math.abs(dx);
        double sizeY = Math.abs(dy);
        double sizeZ = Math.abs(dz);
        axisZ = sizeX > sizeY ? (sizeX > sizeZ ? 0 : 2) : (sizeY > sizeZ ? 1 : 2);
        double longest = axisZ == 0 ? dx : axisZ == 1 ? dy : dz;
        int next = axisZ == 2 ? 0 : axisZ + 1;
        int afterNext = next == 2 ? 0 : next + 1;
        axisX = longest < 0 ? afterNext : next;
        axisY = longest < 0 ? next : afterNext;
        shearX = pick(axisX, dx, dy, dz) / longest;
        shearY = pick(axisY, dx, dy, dz) / longest;
        shearZ = 1 / longest;
        startX = pick(axisX, x, y, z);
        startY = pick(axisY, x, y, z);
        startZ = pick(axisZ, x, y, z);
        facet = -1;
    }

    private static double pick(int axis, double x, double y, double z) {
        return axis == 0 ? x : axis == 1 ? y : z;
    }

    /** Finite also for 0, so that 0 times it is 0 and not NaN. */
    private static double inverse(double component) {
        return Math.max(-Double.MAX_VALUE, Math.min(1 / component, Double.MAX_VALUE));
    }

    /** The facet met, or -1. */
    public int facet() {
        return facet;
    }

    /** Distance to the hit, in units of the direction's length; the given length, at most the largest double, where nothing was met. */
    public double distance() {
        return farthest;
    }

    /** Weight of the first corner at the hit; the three add up to 1. */
    public double weightA() {
        return weightA;
    }

    /** Weight of the second corner at the hit. */
    public double weightB() {
        return weightB;
    }

    /** Weight of the third corner at the hit. */
    public double weightC() {
        return weightC;
    }
}
