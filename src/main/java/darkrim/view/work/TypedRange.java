package darkrim.view.work;

import darkrim.layout.Quantity;
import darkrim.view.look.ScaleChoice.Range;
import java.util.Optional;

/** The range of a scale as it is typed: two plain numbers. */
public final class TypedRange {
    private TypedRange() {}

    /**
     * Reads a range.
     *
     * @param low its lower end
     * @param high its upper end
     * @param logarithmic whether equal ratios are equal steps, which no range from 0 has
     * @return the range of relative irradiance; empty if one is no number, or both are no range of such a scale
     */
    public static Optional<Range> of(String low, String high, boolean logarithmic) {
        Optional<Double> from = TypedValue.of(low, Quantity.NUMBER);
        Optional<Double> to = TypedValue.of(high, Quantity.NUMBER);
        boolean good = from.isPresent()
                && to.isPresent()
                && from.get() < to.get()
                && (logarithmic ? from.get() > 0 : from.get() >= 0);
        return good ? Optional.of(new Range(from.get(), to.get())) : Optional.empty();
    }
}
