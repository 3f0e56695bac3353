package darkrim.present;

import darkrim.study.sweep.SweepResult;
import darkrim.study.sweep.Variation;
import darkrim.verdict.Plan;
import java.util.Optional;

/** A sheet about a sweep. */
abstract class SweepSheet extends ChartSheet {
    private final SweepResult result;

    SweepSheet(SweepResult result, String version) {
        super(
                result.layout(),
                String.join(
                        "; ",
                        result.variations().stream().map(Variation::toString).toList()),
                "Darkrim " + version + ", seed " + result.seed() + ", "
                        + Figures.count(
                                Plan.samplesOf(result.settings().points().batches()))
                        + " samples for each sampled number");
        this.result = result;
    }

    /** Name and unit of a dimension. */
    static String label(Variation variation) {
        return Printable.of(variation.dimension()) + (variation.unit().isEmpty() ? "" : ", " + variation.unit());
    }

    /** What is said of a sweep that did not come to its end. */
    final Optional<String> stopped() {
        return result.stopped()
                ? Optional.of("STOPPED before its end: points that were not reached are not drawn.")
                : Optional.empty();
    }

    final SweepResult result() {
        return result;
    }
}
