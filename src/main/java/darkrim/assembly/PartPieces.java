package darkrim.assembly;

import darkrim.layout.BondWiresShape;
import darkrim.layout.CutShape;
import darkrim.layout.DetectorsShape;
import darkrim.layout.Shape;
import darkrim.layout.TurnedShape;

/** The pieces of a part in its own frame, by its kind. */
final class PartPieces {
    private PartPieces() {}

    /**
     * The pieces of a shape.
     *
     * @throws IllegalArgumentException if its sizes do not make a body; the message completes the sentence "part x: ..."
     */
    static Pieces of(Shape shape) {
        // A chain, since Java 17 cannot switch over a sealed type.
        if (shape instanceof DetectorsShape detectors) {
            return DetectorPieces.of(detectors);
        } else if (shape instanceof Shape.Plate plate) {
            return PlatePieces.of(plate);
        } else if (shape instanceof Shape.Box box) {
            return SimplePieces.of(box);
        } else if (shape instanceof Shape.Tube tube) {
            return SimplePieces.of(tube);
        } else if (shape instanceof Shape.Block block) {
            return SimplePieces.of(block);
        } else if (shape instanceof Shape.Disc disc) {
            return SimplePieces.of(disc);
        } else if (shape instanceof Shape.Rectangle rectangle) {
            return SimplePieces.of(rectangle);
        } else if (shape instanceof TurnedShape turned) {
            return TurnedPieces.of(turned);
        } else if (shape instanceof CutShape cut) {
            return CutPieces.of(cut);
        } else if (shape instanceof BondWiresShape wires) {
            return BondWirePieces.of(wires);
        } else if (shape instanceof Shape.SphereCap cap) {
            return SpherePieces.of(cap);
        }
        throw new IllegalStateException("nothing makes pieces of " + shape);
    }
}
