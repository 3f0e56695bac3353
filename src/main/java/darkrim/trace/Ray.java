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
    double directionX;
    double directionY;
    double directionZ;
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
     * @param dx direction, any length but 0; distances are in units of its length
     * @param dy likewise
     * @param dz likewise
     * @param length hits count when their distance lies between 0 and this, both left out
     * @param plane the plane of the facet on which the ray starts, whose facets it cannot meet, or {@link #NO_PLANE}
     */
    public void set(double x, double y, double z, double dx, double dy, double dz, double length, int plane) {
        originX = x;
        originY = y;
        originZ = z;
        directionX = dx;
        directionY = dy;
        directionZ = dz;
        farthest = length;
        skippedPlane = plane;
        inverseX = 1 / dx;
        inverseY = 1 / dy;
        inverseZ = 1 / dz;
        double sizeX = Math.abs(dx);
        double sizeY = Math.abs(dy);
        double sizeZ = Math.abs(dz);
        axisZ = sizeX > sizeY ? (sizeX > sizeZ ? 0 : 2) : (sizeY > sizeZ ? 1 : 2);
        double longest = axisZ == 0 ? dx : axisZ == 1 ? dy : dz;
        int next = axisZ == 2 ? 0 : axisZ + 1;
        int afterNext = next == 2 ? 0 : next + 1;
        axisX = longest < 0 ? afterNext : next;
        axisY = longest < 0 ? next : afterNext;
        shearX = component(axisX) / longest;
        shearY = component(axisY) / longest;
        shearZ = 1 / longest;
        facet = -1;
    }

    private double component(int axis) {
        return axis == 0 ? directionX : axis == 1 ? directionY : directionZ;
    }

    /** The facet met, or -1. */
    public int facet() {
        return facet;
    }

    /** Distance to the hit, in units of the direction's length; the given length where nothing was met. */
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
