package darkrim.trace;

/**
 * The grid on which the borders of boxes stand: whole numbers below 2^24 in size, which single precision holds exactly. It is laid about the
 * facets, not about the origin, so that its steps are fine beside them wherever they are.
 *
 * <p>Boxes reach {@link #margin()} steps beyond what they hold. Of these 8 are for the walk in single precision, which is off by less than
 * 4 (derived in docs/decisions/0034), the rest is the contact of the tree.
 *
 * @param centreX the middle of the facets, mm
 * @param centreY likewise
 * @param centreZ likewise
 * @param scale steps in a mm, a power of two
 * @param margin steps by which boxes are wider than what they hold
 */
record BoxGrid(double centreX, double centreY, double centreZ, double scale, int margin) {
    /** Steps from the centre to the farthest border of what is held. */
    private static final int HALF_BITS = 23;

    /** Steps for the rounding of the walk. */
    private static final int ROUNDING_STEPS = 8;

    /**
     * The grid for facets.
     *
     * @param corners nine coordinates a facet, mm; at least one facet
     * @param contact how far boxes must reach beyond facets, mm
     */
    static BoxGrid about(double[] corners, double contact) {
        double[] low = {corners[0], corners[1], corners[2]};
        double[] high = low.clone();
        for (int i = 0; i < corners.length; i += 3) {
            for (int k = 0; k < 3; k++) {
                double at = corners[i + k];
                low[k] = at < low[k] ? at : low[k];
                high[k] = at > high[k] ? at : high[k];
            }
        }
        // Facets that all lie within a few contacts get a coarser grid, so that the contact is few steps.
        double half = contact * (1 << (HALF_BITS - 4));
        for (int k = 0; k < 3; k++) {
            half = Math.max(half, 0.5 * high[k] - 0.5 * low[k]);
        }
        int power = Math.max(-900, Math.getExponent(half) + 1);
        double scale = Math.scalb(1.0, HALF_BITS - power);
        return new BoxGrid(
                0.5 * low[0] + 0.5 * high[0],
                0.5 * low[1] + 0.5 * high[1],
                0.5 * low[2] + 0.5 * high[2],
                scale,
                ROUNDING_STEPS + (int) Math.ceil(contact * scale));
    }

    double centre(int axis) {
        return axis == 0 ? centreX : axis == 1 ? centreY : centreZ;
    }

    /** The border of a box below a coordinate, mm. */
    int below(double coordinate, int axis) {
        return (int) Math.floor((coordinate - centre(axis)) * scale) - margin;
    }

    /** The border of a box above a coordinate, mm. */
    int above(double coordinate, int axis) {
        return (int) Math.ceil((coordinate - centre(axis)) * scale) + margin;
    }

    /** Where a border stands, mm. */
    double place(double border, int axis) {
        return centre(axis) + border / scale;
    }
}
