package darkrim.layout;

import java.util.EnumSet;
import java.util.Optional;
import java.util.Set;

/**
 * Detectors in a grid about the origin; their active surface is the plane z = 0. Detector (i, j), counted from 1 along x and y, is named
 * {@code part/die[i,j]}, or {@code part/die} where there is one. Lengths in mm.
 *
 * @param columns number along x
 * @param rows number along y
 * @param spacingX step between centres of pixel arrays along x
 * @param spacingY step between centres of pixel arrays along y
 * @param pixels pixels along each side of the array, reference pixels included
 * @param pixelPitch pixel pitch
 * @param referencePixels width of the border of reference pixels, in pixels
 * @param mirrored whether the sides are given for a detector in the quarter +x, +y and mirrored for those on the other side of the middle
 * @param dieMargin from the pixel array to the edge of the die, by side
 * @param dieThickness thickness of the die, which is the height of its edge faces
 * @param readoutLedge from the edge of the die to the edge of the readout, by side
 * @param readoutThickness thickness of the readout
 * @param underfill the fillet along the foot of the die, if there is one
 * @param carrierMargin from the edge of the readout to the edge of the carrier, by side
 * @param carrierThickness thickness of the carrier
 * @param bonds the wire bonds, if there are any
 */
public record DetectorsShape(
        int columns,
        int rows,
        double spacingX,
        double spacingY,
        int pixels,
        double pixelPitch,
        int referencePixels,
        boolean mirrored,
        Sides dieMargin,
        double dieThickness,
        Sides readoutLedge,
        double readoutThickness,
        Optional<Underfill> underfill,
        Sides carrierMargin,
        double carrierThickness,
        Optional<Bonds> bonds)
        implements Shape {

    /** Side of the whole pixel array, mm. */
    public double arraySide() {
        return pixels * pixelPitch;
    }

    /** Side of the light-sensitive area inside the reference pixels, mm. */
    public double activeSide() {
        return (pixels - 2 * referencePixels) * pixelPitch;
    }

    /** A side of a detector. */
    public enum Side {
        /** The side toward -x. */
        MINUS_X("-x"),
        /** The side toward +x. */
        PLUS_X("+x"),
        /** The side toward -y. */
        MINUS_Y("-y"),
        /** The side toward +y. */
        PLUS_Y("+y");

        private final String label;

        Side(String label) {
            this.label = label;
        }

        /** The step in the path of a surface: {@code -x}, {@code +x}, {@code -y} or {@code +y}. */
        public String label() {
            return label;
        }
    }

    /**
     * A length for each side.
     *
     * @param minusX toward -x
     * @param plusX toward +x
     * @param minusY toward -y
     * @param plusY toward +y
     */
    public record Sides(double minusX, double plusX, double minusY, double plusY) {
        /** The same on all sides. */
        public static Sides all(double value) {
            return new Sides(value, value, value, value);
        }

        /** The length on a side. */
        public double on(Side side) {
            return switch (side) {
                case MINUS_X -> minusX;
                case PLUS_X -> plusX;
                case MINUS_Y -> minusY;
                case PLUS_Y -> plusY;
            };
        }
    }

    /**
     * A fillet along the foot of the die: a plane slope from the edge face down to the readout.
     *
     * @param height where it begins on the edge face, above the readout; less than the die's thickness
     * @param width how far it reaches onto the readout; less than the ledge on every side that has one
     */
    public record Underfill(double height, double width) {}

    /**
     * Wire bonds: a row of pads on the ledge and the space that the wires take. The space is one solid body: light that passes between
     * wires is not followed.
     *
     * @param sides the sides that have bonds; the ledge there must hold the pads
     * @param padFromEdge from the edge of the readout to the near edge of the pads
     * @param padWidth width of the row of pads, square to the edge
     * @param loopHeight height of the wires above the readout
     * @param reach how far the wires reach beyond the edge of the readout, at most the carrier's margin there
     */
    public record Bonds(Set<Side> sides, double padFromEdge, double padWidth, double loopHeight, double reach) {
        /** Copies the set. */
        public Bonds {
            sides = sides.isEmpty() ? Set.of() : java.util.Collections.unmodifiableSet(EnumSet.copyOf(sides));
        }
    }
}
