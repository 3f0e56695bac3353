package darkrim.study.tolerance;

import java.util.List;

/**
 * How much looser, or tighter, all tolerances together could be.
 *
 * @param factor the greatest factor on all tolerances with which enough of the same builds still pass; 0 if none was found
 * @param beyond the least factor looked at with which too few pass; infinite where none was found
 * @param wanted share of all builds that must pass
 * @param allowed how many of these builds may fail
 * @param yield what share of all builds passes with the factor; of no build, and from 0 to 1, where none was found
 * @param stopped whether the search was stopped before it was done
 */
public record LoosestFactor(
        double factor, double beyond, double wanted, int allowed, YieldInterval yield, boolean stopped) {
    /** Deviations that are as many times as large. */
    static List<Double> scaled(List<Double> deviations, double factor) {
        return deviations.stream().map(deviation -> deviation * factor + 0.0).toList();
    }
}
