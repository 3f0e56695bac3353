package darkrim.cli;

import darkrim.layout.form.Wording;
import darkrim.study.first.FirstWishes;
import java.util.Map;
import java.util.OptionalDouble;

/** What {@code darkrim new} must know; an option and a question alike. In the order in which it is asked: defaults follow from earlier answers. */
enum Question {
    COLUMNS("--columns", "COUNT", "Detectors along x", "", 1, 100, true, true),
    ROWS("--rows", "COUNT", "Detectors along y", "", 1, 100, true, true),
    PIXELS("--pixels", "COUNT", "Pixels along a side of a detector", "", 2, 100_000, true, false),
    PIXEL_PITCH("--pixel-pitch", "UM", "Pixel pitch", "um", 0.5, 10_000, false, false),
    REFERENCE_PIXELS("--reference-pixels", "COUNT", "Border of reference pixels, in pixels", "", 0, 1000, true, true),
    DIE_MARGIN("--die-margin", "MM", "From the last pixel to the edge of the die", "mm", 0.001, 100, false, false),
    SPACING("--spacing", "MM", "Between the middles of neighbouring detectors", "mm", 0.01, 1e4, false, false),
    PUPIL_DISTANCE("--pupil-distance", "MM", "From the focal plane to the pupil", "mm", 1, 1e6, false, false),
    F_NUMBER("--f-number", "N", "f-number: that distance over the pupil's diameter", "", 0.5, 1000, false, false),
    FIELD_HALF_WIDTH(
            "--field-half-width",
            "MM",
            "Half the side of the square that the optics light in the focal plane",
            "mm",
            0.01,
            1e5,
            false,
            true),
    PLACEMENT_ERROR(
            "--placement-error",
            "MM",
            "Total placement error a side between opening and detector",
            "mm",
            0,
            10,
            false,
            true),
    EDGE_HEIGHT(
            "--edge-height",
            "MM",
            "Height of the edges of the openings above the pixels",
            "mm",
            0.2,
            1e5,
            false,
            false),
    WALL_HEIGHT("--wall-height", "MM", "Height of the walls on the lid, 0 for none", "mm", 0, 1e5, false, true);

    private static final double UM = 1e-3;

    private final String option;
    private final String label;
    private final String words;
    private final String unit;
    private final double least;
    private final double most;
    private final boolean whole;
    private final boolean defaulted;

    Question(
            String option,
            String label,
            String words,
            String unit,
            double least,
            double most,
            boolean whole,
            boolean defaulted) {
        this.option = option;
        this.label = label;
        this.words = words;
        this.unit = unit;
        this.least = least;
        this.most = most;
        this.whole = whole;
        this.defaulted = defaulted;
    }

    /** The name of the option. */
    String option() {
        return option;
    }

    /** What stands for its value in the help. */
    String label() {
        return label;
    }

    /** What it asks, with the unit. */
    String words() {
        return words + (unit.isEmpty() ? "" : ", " + unit);
    }

    /** Whether the default serves where nobody can be asked; otherwise it is only a hint to whom is asked. */
    boolean hasDefault() {
        return defaulted;
    }

    /** What was expected, for a message. */
    String expected() {
        return "expected a " + (whole ? "whole " : "") + "number from " + Wording.number(least) + " to "
                + Wording.number(most) + (unit.isEmpty() ? "" : " " + unit);
    }

    /** Reads an answer; empty if it is none. */
    OptionalDouble read(String text) {
        String bare = text.strip();
        if (!unit.isEmpty() && bare.endsWith(unit)) {
            bare = bare.substring(0, bare.length() - unit.length()).strip();
        }
        try {
            double value = Decimal.read(bare);
            boolean good = value >= least && value <= most && (!whole || value == Math.rint(value));
            return good ? OptionalDouble.of(value) : OptionalDouble.empty();
        } catch (NumberFormatException noNumber) {
            return OptionalDouble.empty();
        }
    }

    /** The value where nothing is answered, given the answers to all questions before. */
    double suggested(Map<Question, Double> before) {
        return switch (this) {
            case COLUMNS, ROWS -> 1;
            case PIXELS -> 2048;
            case PIXEL_PITCH -> 18;
            case REFERENCE_PIXELS -> 4;
            case DIE_MARGIN -> 0.6;
            case SPACING ->
                Math.ceil(before.get(PIXELS) * before.get(PIXEL_PITCH) * UM + 2 * before.get(DIE_MARGIN) + 1);
            case PUPIL_DISTANCE -> 320;
            case F_NUMBER -> 7;
            case FIELD_HALF_WIDTH -> Math.ceil(wishes(before).outermost() + 5);
            case PLACEMENT_ERROR -> 0.1;
            // Two thirds of what is feasible, in tenths of a millimetre, but not so low that wire bonds have no room.
            case EDGE_HEIGHT -> Math.max(0.8, Math.floor(20 * wishes(before).greatestHeight() / 3) / 10);
            case WALL_HEIGHT -> 40;
        };
    }

    /** Whether it is asked after these answers: there is no spacing of one detector. */
    boolean matters(Map<Question, Double> before) {
        return this != SPACING || before.getOrDefault(COLUMNS, 1.0) > 1 || before.getOrDefault(ROWS, 1.0) > 1;
    }

    /** The answers together; 0 for what is not answered yet. */
    static FirstWishes wishes(Map<Question, Double> given) {
        double distance = given.getOrDefault(PUPIL_DISTANCE, 0.0);
        return new FirstWishes(
                given.getOrDefault(COLUMNS, 1.0).intValue(),
                given.getOrDefault(ROWS, 1.0).intValue(),
                given.getOrDefault(PIXELS, 0.0).intValue(),
                given.getOrDefault(PIXEL_PITCH, 0.0) * UM,
                given.getOrDefault(REFERENCE_PIXELS, 0.0).intValue(),
                given.getOrDefault(SPACING, 0.0),
                given.getOrDefault(DIE_MARGIN, 0.0),
                distance,
                distance / given.getOrDefault(F_NUMBER, 1.0),
                given.getOrDefault(FIELD_HALF_WIDTH, 0.0),
                given.getOrDefault(EDGE_HEIGHT, 0.0),
                given.getOrDefault(PLACEMENT_ERROR, 0.0),
                given.getOrDefault(WALL_HEIGHT, 0.0));
    }
}
