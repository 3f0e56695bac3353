package darkrim.study.tolerance;

import darkrim.study.LayoutFamily;
import darkrim.study.MarginScope;
import darkrim.study.PointCheck;
import darkrim.study.PointSettings;
import darkrim.verdict.Plan;
import java.util.List;
import java.util.Optional;

/**
 * How a tolerance study goes about it.
 *
 * @param builds number of sampled builds, at least 1
 * @param wantedYield share of builds that must pass, above 0 and below 1; without it the worst case is judged
 * @param withMargins whether the margins of every build are measured
 * @param seed seed instead of the layout's
 * @param batches batches of samples that each sampled number gets in each build
 */
public record ToleranceSettings(
        int builds, Optional<Double> wantedYield, boolean withMargins, Optional<Long> seed, int batches) {
    /** Builds where nothing is said. */
    public static final int BUILDS = 200;
    /** Batches of samples where nothing is said. */
    public static final int BATCHES = 16;

    /** Checks the numbers. */
    public ToleranceSettings {
        if (builds < 1 || wantedYield.filter(share -> !(share > 0 && share < 1)).isPresent()) {
            throw new IllegalArgumentException("expected at least one build, and a yield between 0 and 1");
        }
    }

    /** Checks layouts for their verdicts, and margins where one is asked for. */
    PointCheck check(LayoutFamily family) {
        return new PointCheck(family, seed, batches);
    }

    /** Checks builds. */
    PointCheck checkOfBuilds(LayoutFamily family) {
        MarginScope scope = withMargins ? MarginScope.REQUIREMENTS : MarginScope.NONE;
        return new PointCheck(family, seed, new PointSettings(batches, Plan.Measured.UNDECIDED, scope));
    }

    /**
     * What tells this study from any other: the same words, the same results.
     *
     * @param family the layout
     * @param version version of the program
     */
    public List<String> study(LayoutFamily family, String version) {
        return List.of(
                "Darkrim tolerance study in work",
                "version " + version,
                family.identity(),
                "seed " + seed.orElse(family.written().sampling().seed()),
                "batches " + batches,
                "builds " + builds,
                "yield " + wantedYield.map(String::valueOf).orElse("not asked"),
                "margins of builds " + (withMargins ? "measured" : "not measured"));
    }
}
