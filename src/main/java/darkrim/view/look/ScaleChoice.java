package darkrim.view.look;

import java.util.Optional;

/**
 * How values become colours.
 *
 * @param logarithmic whether equal ratios are equal steps; otherwise equal differences
 * @param range the range chosen by hand; empty for the range of what is shown
 */
public record ScaleChoice(boolean logarithmic, Optional<Range> range) {
    /** Logarithmic over what is shown. */
    public static final ScaleChoice FIRST = new ScaleChoice(true, Optional.empty());

    /**
     * A range of relative irradiance.
     *
     * @param low its lower end, positive on a logarithmic scale
     * @param high its upper end
     */
    public record Range(double low, double high) {
        /**
         * @throws IllegalArgumentException if it is empty
         */
        public Range {
            if (!(low < high) || !(low >= 0) || !Double.isFinite(high)) {
                throw new IllegalArgumentException("a range runs from a value of at least 0 to a larger one");
            }
        }
    }
}
