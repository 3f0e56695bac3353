package darkrim.study.sweep;

import darkrim.present.Results;
import darkrim.study.LayoutFamily;
import darkrim.study.LocalThreads;
import darkrim.study.MarginScope;
import darkrim.study.PointSettings;
import darkrim.study.journal.StudyRecord;
import darkrim.verdict.Watch;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Small sweeps, for tests. */
public final class Sweeps {
    private Sweeps() {}

    /** The slit between two flags, with requirements. */
    public static LayoutFamily slit(String... requirements) {
        return family(Results.yaml("", requirements));
    }

    /** A layout. */
    public static LayoutFamily family(String yaml) {
        try {
            return LayoutFamily.of("slit.yaml", yaml.getBytes(StandardCharsets.UTF_8));
        } catch (darkrim.diagnostic.UnusableInput unusable) {
            throw new AssertionError(unusable.getMessage(), unusable);
        }
    }

    /** A grid. */
    public static Design grid(LayoutFamily family, String... vary) throws Exception {
        return design(family, Optional.empty(), Optional.empty(), vary);
    }

    /** A design. */
    public static Design design(LayoutFamily family, Optional<Integer> spread, Optional<Double> refine, String... vary)
            throws Exception {
        VariationReader reader = new VariationReader(family);
        List<Variation> variations = new ArrayList<>();
        for (String each : vary) {
            variations.add(reader.read(each));
        }
        Design design = new Design(variations, spread, refine);
        design.check(false);
        return design;
    }

    /** Every value at few samples. */
    public static SweepSettings settings(Design design) {
        return new SweepSettings(design, Optional.empty(), PointSettings.values(4, MarginScope.REQUIREMENTS));
    }

    /** Runs a sweep that keeps nothing. */
    public static SweepResult run(LayoutFamily family, Design design) throws Exception {
        return run(family, settings(design), StudyRecord.none(), Watch.NONE, 2);
    }

    /** Runs a sweep. */
    public static SweepResult run(
            LayoutFamily family, SweepSettings settings, StudyRecord<SweepPoint> record, Watch watch, int threads)
            throws Exception {
        try (LocalThreads workers = new LocalThreads(threads)) {
            return new SweepStudy(family, settings).run(workers, record, watch);
        }
    }
}
