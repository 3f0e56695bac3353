package darkrim.layout;

import darkrim.diagnostic.Place;
import darkrim.geom.Placement;
import java.util.Optional;

/**
 * A part as the designer wrote it.
 *
 * @param name its name, the first step of the path of its surfaces
 * @param shape what it is
 * @param placement where it stands
 * @param repeat how often it is repeated, if it is
 * @param finish name of its finish; absent where none is stated, which absorbs everything as {@link #NO_FINISH} does
 * @param tolerance how far it may stand from its place; absent where none is stated
 * @param place where it stands in the file
 * @param mounting how it contracts; absent where the layout is not cooled
 * @param coating thickness of what is laid on all its surfaces after they are made, mm; drawn without it, and it grows outward
 */
public record Part(
        String name,
        Shape shape,
        Placement placement,
        Optional<Repeat> repeat,
        Optional<String> finish,
        Optional<PlacementTolerance> tolerance,
        Place place,
        Optional<Mounting> mounting,
        double coating) {
    /** The finish that absorbs everything; a part for which none is stated has it, too. */
    public static final String NO_FINISH = "absorber";

    /** A part that stands exactly where it is drawn. */
    public Part(
            String name,
            Shape shape,
            Placement placement,
            Optional<Repeat> repeat,
            Optional<String> finish,
            Place place) {
        this(name, shape, placement, repeat, finish, Optional.empty(), place);
    }

    /** A part that neither contracts nor is coated. */
    public Part(
            String name,
            Shape shape,
            Placement placement,
            Optional<Repeat> repeat,
            Optional<String> finish,
            Optional<PlacementTolerance> tolerance,
            Place place) {
        this(name, shape, placement, repeat, finish, tolerance, place, Optional.empty(), 0);
    }

    /** The same part in another place. */
    public Part at(Placement other) {
        return new Part(name, shape, other, repeat, finish, tolerance, place, mounting, coating);
    }

    /** The same part, mounted and coated. */
    public Part with(Optional<Mounting> otherMounting, double otherCoating) {
        return new Part(name, shape, placement, repeat, finish, tolerance, place, otherMounting, otherCoating);
    }

    /**
     * Copies of a part in a grid about the place of the part. Copy (i, j), counted from 1, is named {@code part[i,j]}.
     *
     * @param columns number along x
     * @param rows number along y
     * @param stepX step along x, mm
     * @param stepY step along y, mm
     */
    public record Repeat(int columns, int rows, double stepX, double stepY) {}
}
