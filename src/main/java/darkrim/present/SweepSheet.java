package darkrim.present;

import darkrim.study.sweep.SweepResult;
import darkrim.study.sweep.Variation;
import darkrim.verdict.Plan;

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

    final SweepResult result() {
        return result;
    }
}
