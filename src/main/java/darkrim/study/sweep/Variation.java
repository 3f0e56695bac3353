package darkrim.study.sweep;

import darkrim.layout.Quantity;
import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.List;
import java.util.stream.LongStream;

/**
 * What a dimension is to take: a list of values, or a range with or without a step. Values in mm, degrees or plain.
 *
 * @param dimension name of the dimension
 * @param kind what it measures
 * @param listed the values of a list, ascending; empty for a range
 * @param from lower end of a range
 * @param to upper end of a range
 * @param step step of a range; 0 where none is given
 */
public record Variation(
        String dimension, Quantity kind, List<BigDecimal> listed, BigDecimal from, BigDecimal to, BigDecimal step) {
    /** A step that was rounded, as a third of a degree is, still meets the end. */
    private static final BigDecimal SLACK = new BigDecimal("1e-12");

    /** Copies the list. */
    public Variation {
        listed = List.copyOf(listed);
    }

    /** A list. */
    static Variation list(String dimension, Quantity kind, List<BigDecimal> values) {
        List<BigDecimal> sorted = values.stream().sorted().toList();
        return new Variation(dimension, kind, sorted, sorted.get(0), sorted.get(sorted.size() - 1), BigDecimal.ZERO);
    }

    /** A range. */
    static Variation range(String dimension, Quantity kind, BigDecimal from, BigDecimal to, BigDecimal step) {
        return new Variation(dimension, kind, List.of(), from, to, step);
    }

    /** Whether it is a list. */
    public boolean isList() {
        return !listed.isEmpty();
    }

    /** Whether it is a range without a step. */
    public boolean isOpen() {
        return !isList() && step.signum() == 0;
    }

    /** How many values it has, by its list or its step; the upper end counts where the steps meet it. */
    BigDecimal count() {
        return isList()
                ? BigDecimal.valueOf(listed.size())
                : to.subtract(from)
                        .divide(step, MathContext.DECIMAL128)
                        .add(SLACK)
                        .setScale(0, RoundingMode.FLOOR)
                        .add(BigDecimal.ONE);
    }

    /** Its values, ascending. */
    List<Double> values() {
        if (isList()) {
            return listed.stream().map(BigDecimal::doubleValue).toList();
        }
        return LongStream.range(0, count().longValueExact())
                .mapToObj(i -> from.add(step.multiply(BigDecimal.valueOf(i))).doubleValue())
                .toList();
    }

    /** Its unit: {@code mm}, {@code deg}, or nothing. */
    public String unit() {
        return switch (kind) {
            case LENGTH -> "mm";
            case ANGLE -> "deg";
            case NUMBER -> "";
        };
    }

    /** Says the same in one form, whatever was typed. */
    @Override
    public String toString() {
        String after = unit().isEmpty() ? "" : " " + unit();
        if (isList()) {
            return dimension + " = "
                    + String.join(
                            ", ",
                            listed.stream().map(each -> plain(each) + after).toList());
        }
        return dimension + " = " + plain(from) + after + " to " + plain(to) + after
                + (isOpen() ? "" : " step " + plain(step) + after);
    }

    private static String plain(BigDecimal value) {
        return value.signum() == 0 ? "0" : value.stripTrailingZeros().toPlainString();
    }
}
