package darkrim.trace;

import org.apache.commons.geometry.euclidean.threed.Vector3D;

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

    /** Taken for less over the longest component: a ray that moves by so little along an axis does not leave a box there. */
    private static final double LEAST = 0x1p-60;

    /** The axes onto which a ray is sheared, by twice the longest axis, plus 1 if it runs down that. */
    private static final int[] AXIS_X = {1, 2, 2, 0, 0, 1};

    private static final int[] AXIS_Y = {2, 1, 0, 2, 1, 0};

    /** The greatest number of {@link #reach}: the bits of the largest float. */
    private static final int FARTHEST = Float.floatToRawIntBits(Float.MAX_VALUE);

    private final double[] origin = new double[3];
    private final double[] direction = new double[3];
    double farthest;
    int skippedPlane;

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
    /** Steps of the grid that the ray goes along its longest axis while its distance grows by 1. */
    private double stepsPerDistance;
    /** Distance of the point from which boxes are looked at. */
    private double entered;

    /** One over the direction, whose longest component counts 1; finite. */
    float inverseX;

    float inverseY;
    float inverseZ;
    /** The point from which boxes are looked at, in steps of the grid, times the inverse, negative. */
    float offsetX;

    float offsetY;
    float offsetZ;
    /** Where in a node the borders stand by which the ray enters. */
    int nearX;

    int nearY;
    int nearZ;
    /** Likewise, by which it leaves. */
    int farX;

    int farY;
    int farZ;

    int facet;
    double weightA;
    double weightB;
    double weightC;

    /** Children still to be looked at: in the upper half where they are entered, in the lower their number. */
    final long[] stack = new long[FacetTree.DEEPEST * (Nodes.WIDTH - 1) + Nodes.WIDTH];
    /** Where the children of a node are entered. */
    final int[] entries = new int[Nodes.WIDTH];

    /**
     * Sets out on a new way.
     *
     * @param x start, mm
     * @param y likewise
     * @param z likewise
     * @param dx direction, of a length between 1e-100 and 1e100, no component but 0 below 1e-300 of the longest; distances are in units of its length
     * @param dy likewise
     * @param dz likewise
     * @param length hits count when their distance lies between 0 and this, both left out; infinity for no end
     * @param plane the plane of the facet on which the ray starts, whose facets it cannot meet, or {@link #NO_PLANE}
     */
    public void set(double x, double y, double z, double dx, double dy, double dz, double length, int plane) {
        // A box that is missed is entered at infinity, which must lie beyond the end of every ray.
        farthest = Math.min(length, Double.MAX_VALUE);
        skippedPlane = plane;
        double[] from = origin;
        double[] way = direction;
        from[0] = x;
        from[1] = y;
        from[2] = z;
        way[0] = dx;
        way[1] = dy;
        way[2] = dz;
        // Which is longest depends on chance: without branches, by the bits of numbers that are not negative.
        long sizeX = Double.doubleToRawLongBits(Math.abs(dx));
        long sizeY = Double.doubleToRawLongBits(Math.abs(dy));
        long sizeZ = Double.doubleToRawLongBits(Math.abs(dz));
        int longer = 1 - (int) ((sizeY - sizeX) >>> 63);
        axisZ = 2 + (longer - 2) * (int) ((sizeZ - Math.max(sizeX, sizeY)) >>> 63);
        double longest = way[axisZ];
        int turn = 2 * axisZ + (int) (Double.doubleToRawLongBits(longest) >>> 63);
        axisX = AXIS_X[turn];
        axisY = AXIS_Y[turn];
        shearX = way[axisX] / longest;
        shearY = way[axisY] / longest;
        shearZ = 1 / longest;
        startX = from[axisX];
        startY = from[axisY];
        startZ = from[axisZ];
        facet = -1;
    }

    /** The same from vectors: start in mm, and direction; beside the hot code. */
    public void set(Vector3D start, Vector3D way, double length, int plane) {
        set(start.getX(), start.getY(), start.getZ(), way.getX(), way.getY(), way.getZ(), length, plane);
    }

    /**
     * Makes ready for the walk through the boxes of a tree, which begins where the ray enters the box about all.
     *
     * @return whether there may be anything to meet
     */
    boolean enter(FacetTree tree) {
        double x = origin[0];
        double y = origin[1];
        double z = origin[2];
        double[] box = tree.box;
        entered = 0;
        if (!(x >= box[0] && y >= box[1] && z >= box[2] && x <= box[3] && y <= box[4] && z <= box[5])) {
            entered = entry(box);
            x += entered * direction[0];
            y += entered * direction[1];
            z += entered * direction[2];
        }
        double size = 1 / Math.abs(shearZ);
        // Also false for a ray that has no direction.
        if (!(entered <= farthest && size > 0 && size < Double.POSITIVE_INFINITY)) {
            return false;
        }
        BoxGrid grid = tree.grid;
        double scale = grid.scale();
        stepsPerDistance = size * scale;
        inverseX = inverse(direction[0], size);
        inverseY = inverse(direction[1], size);
        inverseZ = inverse(direction[2], size);
        offsetX = (float) ((grid.centreX() - x) * scale * inverseX);
        offsetY = (float) ((grid.centreY() - y) * scale * inverseY);
        offsetZ = (float) ((grid.centreZ() - z) * scale * inverseZ);
        nearX = inverseX < 0 ? 3 * Nodes.WIDTH : 0;
        nearY = inverseY < 0 ? 4 * Nodes.WIDTH : Nodes.WIDTH;
        nearZ = inverseZ < 0 ? 5 * Nodes.WIDTH : 2 * Nodes.WIDTH;
        farX = 3 * Nodes.WIDTH - nearX;
        farY = 5 * Nodes.WIDTH - nearY;
        farZ = 7 * Nodes.WIDTH - nearZ;
        return true;
    }

    /** The distance at which the ray enters a box from outside; infinity or not a number if it misses it. */
    private double entry(double[] box) {
        double in = 0;
        double out = Double.POSITIVE_INFINITY;
        for (int k = 0; k < 3; k++) {
            double from = origin[k];
            double along = direction[k];
            if (along == 0) {
                if (from < box[k] || from > box[3 + k]) {
                    return Double.POSITIVE_INFINITY;
                }
            } else {
                double low = (box[k] - from) / along;
                double high = (box[3 + k] - from) / along;
                in = Math.max(in, Math.min(low, high));
                out = Math.min(out, Math.max(low, high));
            }
        }
        return in <= out ? in : Double.POSITIVE_INFINITY;
    }

    /** One over a component, in units of the longest; finite, so that 0 times it is 0. */
    private static float inverse(double component, double size) {
        double least = size * LEAST;
        return (float) (size / (Math.abs(component) < least ? Math.copySign(least, component) : component));
    }

    /**
     * How far boxes matter, as a whole number that compares with those of {@link Kernel}: the distance to the nearest hit so far, rounded up, and
     * up to eight more.
     */
    int reach() {
        double steps = (farthest - entered) * stepsPerDistance;
        return Math.min((Float.floatToRawIntBits((float) steps) + 1) | (Nodes.WIDTH - 1), FARTHEST);
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
