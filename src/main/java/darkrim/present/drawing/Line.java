package darkrim.present.drawing;

import java.util.List;

/**
 * How a line is drawn.
 *
 * @param colour colour as {@code #rrggbb}
 * @param width width, mm
 * @param dashes lengths of dashes and gaps in turn, mm; empty for an unbroken line
 */
public record Line(String colour, double width, List<Double> dashes) {
    /** Outlines of parts. */
    static final Line PART = new Line("#202020", 0.18, List.of());
    /** Dimensions and frames. */
    static final Line THIN = new Line("#404040", 0.13, List.of());
    /** The border of the sheet, and the pupil. */
    static final Line THICK = new Line("#000000", 0.5, List.of());

    /** Copies the list. */
    public Line {
        dashes = List.copyOf(dashes);
    }
}
