package darkrim.assembly;

import darkrim.diagnostic.Place;
import darkrim.layout.DetectorsShape;
import darkrim.layout.DetectorsShape.Bonds;
import darkrim.layout.DetectorsShape.Side;
import darkrim.layout.DetectorsShape.Sides;
import darkrim.layout.DetectorsShape.Underfill;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import java.util.function.ToDoubleFunction;
import org.apache.commons.geometry.euclidean.twod.Vector2D;

/**
 * Detectors in a grid: each one closed solid from its active surface at z = 0 down to the underside of its carrier, and one more for the
 * wire bonds of each bond side.
 *
 * <p>From the middle outward and down: active area, reference pixels, rim of the die (all at z = 0), edge of the die, underfill, ledge and
 * pads (on the readout), edge of the readout, top, side and bottom of the carrier. Rows of pads run the whole length of their ledge and
 * meet at mitred corners.
 */
final class DetectorPieces {
    private final DetectorsShape shape;

    private DetectorPieces(DetectorsShape shape) {
        this.shape = shape;
    }

    /**
     * The pieces of a group of detectors.
     *
     * @throws IllegalArgumentException if the sizes do not fit into one another
     */
    static Pieces of(DetectorsShape shape) {
        DetectorPieces pieces = new DetectorPieces(shape);
        List<Mesh> meshes = new ArrayList<>();
        List<Die> dies = new ArrayList<>();
        for (GridSteps.Step step : GridSteps.of(shape.columns(), shape.rows(), shape.spacingX(), shape.spacingY())) {
            Facing facing = Facing.of(shape, step.offset());
            String name = "die" + step.number();
            dies.add(pieces.addDie(name, step.offset(), facing, meshes));
        }
        return new Pieces(meshes, List.of(), dies, 0);
    }

    /**
     * Which way round a detector stands.
     *
     * @param swapX whether its -x and +x sides are exchanged against the layout file
     * @param swapY likewise for y
     */
    private record Facing(boolean swapX, boolean swapY) {
        /** Sides are given for the quarter +x, +y; a detector in the middle of an odd grid is not mirrored. */
        static Facing of(DetectorsShape shape, Vector2D fromMiddle) {
            return new Facing(shape.mirrored() && fromMiddle.getX() < 0, shape.mirrored() && fromMiddle.getY() < 0);
        }

        Sides turned(Sides sides) {
            return new Sides(
                    swapX ? sides.plusX() : sides.minusX(),
                    swapX ? sides.minusX() : sides.plusX(),
                    swapY ? sides.plusY() : sides.minusY(),
                    swapY ? sides.minusY() : sides.plusY());
        }

        Side turned(Side side) {
            return switch (side) {
                case MINUS_X -> swapX ? Side.PLUS_X : side;
                case PLUS_X -> swapX ? Side.MINUS_X : side;
                case MINUS_Y -> swapY ? Side.PLUS_Y : side;
                case PLUS_Y -> swapY ? Side.MINUS_Y : side;
            };
        }
    }

    private Die addDie(String name, Vector2D centre, Facing facing, List<Mesh> meshes) {
        Rect active = Rect.square(centre, shape.activeSide());
        Rect array = Rect.square(centre, shape.arraySide());
        Rect die = array.grown(facing.turned(shape.dieMargin()));
        Sides ledge = facing.turned(shape.readoutLedge());
        Rect readout = die.grown(ledge);
        double readoutTop = -shape.dieThickness();
        double carrierTop = readoutTop - shape.readoutThickness();

        Mesh mesh = Mesh.solid(name);
        Loft loft = new Loft(mesh, "active", active, 0);
        loft.to(array, 0, side -> "reference/" + side.label());
        loft.to(die, 0, side -> "rim/" + side.label());
        addEdge(loft, die, ledge);
        Set<Side> bondSides = EnumSet.noneOf(Side.class);
        shape.bonds().ifPresent(bonds -> bonds.sides().forEach(side -> bondSides.add(facing.turned(side))));
        shape.bonds().ifPresent(bonds -> addPads(loft, bonds, bondSides, die, ledge));
        loft.to(readout, readoutTop, side -> "ledge/" + side.label());
        loft.to(readout, carrierTop, side -> "readout/" + side.label());
        Rect carrier = readout.grown(facing.turned(shape.carrierMargin()));
        loft.to(carrier, carrierTop, side -> "carrier/top/" + side.label());
        loft.to(carrier, carrierTop - shape.carrierThickness(), side -> "carrier/side/" + side.label());
        loft.close("carrier/bottom");
        meshes.add(mesh);
        for (Side side : bondSides) {
            meshes.add(BondSpace.of(name, side, shape.bonds().orElseThrow(), die, readout, readoutTop));
        }
        return new Die(name, Place.IN_CODE, active.corners(0), array.corners(0), die.corners(0));
    }

    /** The edge faces of the die down to the underfill, if there is one, and the underfill down to its foot on the readout. */
    private void addEdge(Loft loft, Rect die, Sides ledge) {
        double readoutTop = -shape.dieThickness();
        if (shape.underfill().isEmpty()) {
            loft.to(die, readoutTop, side -> "edge/" + side.label());
            return;
        }
        Underfill underfill = shape.underfill().get();
        double underfillTop = readoutTop + underfill.height();
        if (!(underfill.height() > 0 && underfillTop < 0)) {
            throw new IllegalArgumentException(
                    "the underfill of its dies must end between the readout and the active surface");
        }
        loft.to(die, underfillTop, side -> "edge/" + side.label());
        Rect foot = die.grown(onSides(side -> ledge.on(side) > 0 ? underfill.width() : 0));
        loft.fillet(foot, readoutTop, side -> "edge/" + side.label(), side -> "underfill/" + side.label());
    }

    /** The ledge up to the pads and the pads; on sides without bonds both steps do not grow. */
    private void addPads(Loft loft, Bonds bonds, Set<Side> bondSides, Rect die, Sides ledge) {
        double readoutTop = -shape.dieThickness();
        Rect foot = loft.rect();
        double padsEnd = bonds.padFromEdge();
        double padsBegin = padsEnd + bonds.padWidth();
        Rect inner = foot.onSides(bondSides, die.grown(onSides(side -> ledge.on(side) - padsBegin)));
        Rect outer = foot.onSides(bondSides, die.grown(onSides(side -> ledge.on(side) - padsEnd)));
        loft.to(inner, readoutTop, side -> "ledge/" + side.label());
        loft.to(outer, readoutTop, side -> "pads/" + side.label());
    }

    private static Sides onSides(ToDoubleFunction<Side> length) {
        return new Sides(
                length.applyAsDouble(Side.MINUS_X),
                length.applyAsDouble(Side.PLUS_X),
                length.applyAsDouble(Side.MINUS_Y),
                length.applyAsDouble(Side.PLUS_Y));
    }
}
