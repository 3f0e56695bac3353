package darkrim.shadow;

/**
 * Whether a straight line crosses a triangle: yes, no, or too near an edge to tell.
 *
 * <p>Signs of volumes with the error bound of Shewchuk, "Adaptive Precision Floating-Point Arithmetic and Fast Robust Geometric
 * Predicates", Discrete and Computational Geometry 18, 1997, orient3d stage A: |error| {@literal <=} (7 + 56 u) u times the sum of the
 * sizes of the products, u = 2^-53. A sign within the bound is unsure, so an answer other than unsure is exact for the coordinates given.
 */
enum Crossing {
    /** The open line runs through the inside of the triangle. */
    YES,
    /** The line misses the triangle. */
    NO,
    /** Rounding does not allow an answer. */
    UNSURE;

    private static final double ROUNDOFF = 0x1p-53;
    private static final double BOUND = (7 + 56 * ROUNDOFF) * ROUNDOFF;

    /**
     * @param from start of the line, three coordinates
     * @param to its end
     * @param t nine coordinates of the triangle, from {@code at}
     */
    static Crossing of(double[] from, double[] to, double[] t, int at) {
        int start = sign(t, at, t, at + 3, t, at + 6, from);
        int end = sign(t, at, t, at + 3, t, at + 6, to);
        if (start != 0 && start == end) {
            return NO;
        }
        int ab = sign(t, at, t, at + 3, from, 0, to);
        int bc = sign(t, at + 3, t, at + 6, from, 0, to);
        int ca = sign(t, at + 6, t, at, from, 0, to);
        if (ab * bc < 0 || bc * ca < 0 || ca * ab < 0) {
            return NO;
        }
        return start * end < 0 && ab != 0 && ab == bc && bc == ca ? YES : UNSURE;
    }

    /** Sign of the volume of a, b, c, d; 0 when unsure. */
    private static int sign(double[] a, int i, double[] b, int j, double[] c, int k, double[] d) {
        double adx = a[i] - d[0];
        double bdx = b[j] - d[0];
        double cdx = c[k] - d[0];
        double ady = a[i + 1] - d[1];
        double bdy = b[j + 1] - d[1];
        double cdy = c[k + 1] - d[1];
        double adz = a[i + 2] - d[2];
        double bdz = b[j + 2] - d[2];
        double cdz = c[k + 2] - d[2];
        double bxcy = bdx * cdy;
        double cxby = cdx * bdy;
        double cxay = cdx * ady;
        double axcy = adx * cdy;
        double axby = adx * bdy;
        double bxay = bdx * ady;
        double volume = adz * (bxcy - cxby) + bdz * (cxay - axcy) + cdz * (axby - bxay);
        double sizes = (Math.abs(bxcy) + Math.abs(cxby)) * Math.abs(adz)
                + (Math.abs(cxay) + Math.abs(axcy)) * Math.abs(bdz)
                + (Math.abs(axby) + Math.abs(bxay)) * Math.abs(cdz);
        double bound = BOUND * sizes;
        return volume > bound ? 1 : volume < -bound ? -1 : 0;
    }
}
