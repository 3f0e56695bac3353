package darkrim.present.picture;

import darkrim.verdict.Verdict;
import java.util.List;

/**
 * How the outline of a face tells its verdict: by a letter and by the pattern of the line; colour only repeats them.
 *
 * @param letter stands on the face
 * @param word what the letter means
 * @param argb colour of the line, and of the plate on which the letter stands in white
 * @param width width of the line, in pixels of a picture at its plain size
 * @param dashes lengths of strokes and gaps in turn along the line, in the same pixels; empty for an unbroken line
 */
public record VerdictMark(char letter, String word, int argb, double width, List<Double> dashes) {
    /** Colour of the letter, and of the rim that parts the line from what lies under it. */
    public static final int LETTER = 0xffffffff;

    private static final VerdictMark PASS = new VerdictMark('P', "pass", 0xff0b5d3b, 1.5, List.of());
    private static final VerdictMark FAIL = new VerdictMark('F', "fail", 0xffa3200d, 3, List.of(9.0, 4.0));
    private static final VerdictMark UNDECIDED = new VerdictMark('U', "undecided", 0xff5b4a00, 2, List.of(2.0, 4.0));

    /** Copies the list. */
    public VerdictMark {
        dashes = List.copyOf(dashes);
    }

    /** The mark of a verdict. */
    public static VerdictMark of(Verdict verdict) {
        return switch (verdict) {
            case PASS -> PASS;
            case FAIL -> FAIL;
            case UNDECIDED -> UNDECIDED;
        };
    }
}
