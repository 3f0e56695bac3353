package darkrim.layout;

import darkrim.layout.DetectorsShape.Side;

/** How much room neighbouring detectors of a grid need, carriers included. */
final class NeighbourRoom {
    private NeighbourRoom() {}

    /**
     * The greatest distance between centres that two neighbours along an axis need so that they do not overlap, mm; 0 where there are no
     * neighbours.
     *
     * @param shape the detectors
     * @param count how many stand along the axis
     * @param minus the side toward the beginning of the axis
     * @param plus the side toward its end
     */
    static double widest(DetectorsShape shape, int count, Side minus, Side plus) {
        double widest = 0;
        for (int i = 0; i + 1 < count; i++) {
            double left = extent(shape, isMirrored(shape, i, count) ? minus : plus);
            double right = extent(shape, isMirrored(shape, i + 1, count) ? plus : minus);
            widest = Math.max(widest, left + right);
        }
        return widest;
    }

    /** Those before the middle of a mirrored grid are mirrored; one on the middle is not. */
    private static boolean isMirrored(DetectorsShape shape, int index, int count) {
        return shape.mirrored() && 2 * index + 1 < count;
    }

    private static double extent(DetectorsShape shape, Side side) {
        return shape.arraySide() / 2
                + shape.dieMargin().on(side)
                + shape.readoutLedge().on(side)
                + shape.carrierMargin().on(side);
    }
}
