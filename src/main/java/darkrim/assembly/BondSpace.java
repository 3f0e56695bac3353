package darkrim.assembly;

import darkrim.layout.DetectorsShape.Bonds;
import darkrim.layout.DetectorsShape.Side;
import java.util.List;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/**
 * The space that the wire bonds of one side take, as a solid block: from the middle of the row of pads outward to the stated reach beyond
 * the readout, from the plane of the ledge up to the height of the loops, as long as the die. It is opaque, which real wires are not.
 *
 * <p>Its faces are {@code top}, {@code bottom}, {@code inner} (toward the die), {@code outer}, {@code end-1} (toward -x or -y) and
 * {@code end-2}.
 */
final class BondSpace {
    private BondSpace() {}

    /**
     * The block of one side.
     *
     * @param die path of the die below the part
     * @param ledgeZ height of the ledge, mm
     */
    static Mesh of(String die, Side side, Bonds bonds, Rect dieRect, Rect readout, double ledgeZ) {
        double in = bonds.padFromEdge() + bonds.padWidth() / 2;
        double out = bonds.reach();
        Rect block = switch (side) {
            case MINUS_X -> new Rect(readout.minX() - out, readout.minX() + in, dieRect.minY(), dieRect.maxY());
            case PLUS_X -> new Rect(readout.maxX() - in, readout.maxX() + out, dieRect.minY(), dieRect.maxY());
            case MINUS_Y -> new Rect(dieRect.minX(), dieRect.maxX(), readout.minY() - out, readout.minY() + in);
            case PLUS_Y -> new Rect(dieRect.minX(), dieRect.maxX(), readout.maxY() - in, readout.maxY() + out);
        };
        Mesh mesh = Mesh.solid(die + "/bonds/" + side.label());
        List<Vector3D> low = block.corners(ledgeZ);
        List<Vector3D> high = block.corners(ledgeZ + bonds.loopHeight());
        mesh.quad("top", high.get(0), high.get(1), high.get(2), high.get(3));
        mesh.quad("bottom", low.get(3), low.get(2), low.get(1), low.get(0));
        mesh.band(i -> faceOf(Loft.SIDES.get(i), side), low, high);
        return mesh;
    }

    private static String faceOf(Side face, Side bondSide) {
        if (face == bondSide) {
            return "outer";
        }
        boolean sameAxis = alongX(face) == alongX(bondSide);
        if (sameAxis) {
            return "inner";
        }
        return face == Side.MINUS_X || face == Side.MINUS_Y ? "end-1" : "end-2";
    }

    private static boolean alongX(Side side) {
        return side == Side.MINUS_X || side == Side.PLUS_X;
    }
}
