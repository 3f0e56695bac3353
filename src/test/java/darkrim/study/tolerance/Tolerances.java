package darkrim.study.tolerance;

import darkrim.diagnostic.UnusableInput;
import darkrim.study.LayoutFamily;
import darkrim.study.LocalThreads;
import darkrim.study.WorkersLost;
import darkrim.study.journal.StudyRecord;
import darkrim.verdict.Watch;
import java.io.IOException;

/** Tolerance studies by threads, for tests. */
public final class Tolerances {
    private Tolerances() {}

    /** Runs a study. */
    public static ToleranceResult run(
            LayoutFamily family, ToleranceSettings settings, StudyRecord<Looked> record, Watch watch, int threads)
            throws UnusableInput {
        try (LocalThreads workers = new LocalThreads(threads)) {
            return ToleranceStudy.of(family, settings, workers, record, watch);
        } catch (WorkersLost | IOException impossible) {
            throw new AssertionError(impossible);
        }
    }
}
