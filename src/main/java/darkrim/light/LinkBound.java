package darkrim.light;

/**
 * How much a small piece of one surface can matter to a point of another: an upper bound of cos(a) cos(b) / (pi d^2), the view factor for each mm2
 * that is seen (any heat transfer text, e.g. Howell, Menguc, Siegel, Thermal Radiation Heat Transfer, ch. 4), over all points of both.
 *
 * <p>The distance is at least that of the boxes about both and that of either from the plane of the other; a cosine is at most the greatest height
 * over the plane over that distance. What lies so near that rounding could matter has no bound.
 */
final class LinkBound {
    /** Nearer than this many lifts of a start, no bound is stated. */
    private static final double NEAR = 1 << 20;

    private final TrianglePieces pieces;
    private final double lift;

    /**
     * @param lift how far starts are lifted from a face, mm
     */
    LinkBound(TrianglePieces pieces, double lift) {
        this.pieces = pieces;
        this.lift = lift;
    }

    /**
     * The bound, 1/mm2; 0 if no light can go from one to the other, infinite where they nearly touch.
     *
     * @param to the piece that gets light
     * @param nx the direction in which it faces, unit length
     * @param from the piece that sends it
     * @param mx the direction in which it faces, unit length
     */
    double between(int to, double nx, double ny, double nz, int from, double mx, double my, double mz) {
        double distance = boxes(to, from);
        double mostFrom = Double.NEGATIVE_INFINITY;
        double leastFrom = Double.POSITIVE_INFINITY;
        double mostTo = Double.NEGATIVE_INFINITY;
        double leastTo = Double.POSITIVE_INFINITY;
        for (int k = 0; k < 3; k++) {
            double height = height(from, k, to, nx, ny, nz);
            mostFrom = Math.max(mostFrom, height);
            leastFrom = Math.min(leastFrom, height);
            height = height(to, k, from, mx, my, mz);
            mostTo = Math.max(mostTo, height);
            leastTo = Math.min(leastTo, height);
        }
        // As in Facing: what only touches a plane sends nothing across it.
        if (!(mostFrom > lift / 16 && mostTo > lift / 16)) {
            return 0;
        }
        distance = Math.max(distance, Math.max(leastFrom, leastTo));
        if (distance < NEAR * lift) {
            return Double.POSITIVE_INFINITY;
        }
        double sure = distance * (1 - 1e-9) - 4 * lift;
        double cosineTo = Math.min(1, (mostFrom + 4 * lift) / sure);
        double cosineFrom = Math.min(1, (mostTo + 4 * lift) / sure);
        return cosineTo * cosineFrom / (Math.PI * sure * sure);
    }

    private double height(int piece, int corner, int above, double nx, double ny, double nz) {
        return nx * (pieces.corner(piece, corner, 0) - pieces.corner(above, 0, 0))
                + ny * (pieces.corner(piece, corner, 1) - pieces.corner(above, 0, 1))
                + nz * (pieces.corner(piece, corner, 2) - pieces.corner(above, 0, 2));
    }

    private double boxes(int one, int other) {
        double squared = 0;
        for (int axis = 0; axis < 3; axis++) {
            double gap =
                    Math.max(Math.max(least(one, axis) - most(other, axis), least(other, axis) - most(one, axis)), 0);
            squared += gap * gap;
        }
        return Math.sqrt(squared);
    }

    private double least(int piece, int axis) {
        return Math.min(
                pieces.corner(piece, 0, axis), Math.min(pieces.corner(piece, 1, axis), pieces.corner(piece, 2, axis)));
    }

    private double most(int piece, int axis) {
        return Math.max(
                pieces.corner(piece, 0, axis), Math.max(pieces.corner(piece, 1, axis), pieces.corner(piece, 2, axis)));
    }
}
