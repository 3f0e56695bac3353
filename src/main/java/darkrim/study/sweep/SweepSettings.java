package darkrim.study.sweep;

import darkrim.study.LayoutFamily;
import darkrim.study.PointCheck;
import darkrim.study.PointSettings;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * What a sweep is asked to do.
 *
 * @param design which points
 * @param seed seed instead of the layout's
 * @param points how each is checked
 */
public record SweepSettings(Design design, Optional<Long> seed, PointSettings points) {
    /** Batches of each number, at least: the errors of what is compared from point to point are found from the batches. */
    public static final int LEAST_BATCHES = 8;

    /** The seed that is used. */
    public long seedFor(LayoutFamily family) {
        return seed.orElse(family.written().sampling().seed());
    }

    PointCheck check(LayoutFamily family) {
        return new PointCheck(family, seed, points);
    }

    /**
     * What tells this study from any other: the same words, the same results.
     *
     * @param family the layouts
     * @param version version of the program
     */
    public List<String> study(LayoutFamily family, String version) {
        List<String> words = new ArrayList<>(List.of(
                "Darkrim sweep in work",
                "version " + version,
                family.identity(),
                "seed " + seedFor(family),
                "batches " + points.batches(),
                "margins " + points.margins()));
        words.addAll(design.words());
        return words;
    }
}
