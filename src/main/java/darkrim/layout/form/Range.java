package darkrim.layout.form;

/**
 * The numbers that are allowed.
 *
 * @param least lower end
 * @param leastIncluded whether the lower end itself is allowed
 * @param most upper end
 * @param mostIncluded whether the upper end itself is allowed
 */
public record Range(double least, boolean leastIncluded, double most, boolean mostIncluded) {
    /** From least to most, both included. */
    public static Range closed(double least, double most) {
        return new Range(least, true, most, true);
    }

    /** Above least, up to most. */
    public static Range above(double least, double most) {
        return new Range(least, false, most, true);
    }

    /** Between least and most, neither included. */
    public static Range open(double least, double most) {
        return new Range(least, false, most, false);
    }

    /** Whether a number is allowed; never for NaN. */
    public boolean contains(double value) {
        return (leastIncluded ? value >= least : value > least) && (mostIncluded ? value <= most : value < most);
    }

    /** {@code from 0 to 1}, {@code above 0 and at most 1}. */
    public String describe(String unit) {
        String from = Wording.number(least) + unit;
        String to = Wording.number(most) + unit;
        if (leastIncluded && mostIncluded) {
            return "from " + from + " to " + to;
        }
        return (leastIncluded ? "at least " : "above ") + from + " and " + (mostIncluded ? "at most " : "below ") + to;
    }
}
