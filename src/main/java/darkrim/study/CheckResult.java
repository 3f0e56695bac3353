package darkrim.study;

import darkrim.assembly.Feasibility;
import darkrim.diagnostic.Finding;
import darkrim.layout.Layout;
import darkrim.layout.SamplingSpec;
import darkrim.scene.Scene;
import darkrim.verdict.Judgement;
import java.util.List;
import java.util.Optional;

/**
 * A layout with all that was found.
 *
 * @param layout what the designer wrote
 * @param effort seed, confidence and budget that were used
 * @param scene the scene that was judged
 * @param feasibility a line for each opening, before any ray
 * @param chordError greatest distance between a round face and its facets, mm; 0 where nothing is round
 * @param judgement requirements and surfaces with what was found
 * @param margins how far direct light is from where it must not be; the judgement's evidence tells those of surfaces too
 * @param warnings what deserves attention in the layout
 * @param timing how long the steps took; the only part that differs between runs
 * @param cooldown what the cool-down does, where that was looked at
 */
public record CheckResult(
        Layout layout,
        SamplingSpec effort,
        Scene scene,
        List<Feasibility> feasibility,
        double chordError,
        Judgement judgement,
        DirectMargins margins,
        List<Finding> warnings,
        Timing timing,
        Optional<CooldownResult> cooldown) {
    /** Without a look at what a cool-down does. */
    public CheckResult(
            Layout layout,
            SamplingSpec effort,
            Scene scene,
            List<Feasibility> feasibility,
            double chordError,
            Judgement judgement,
            DirectMargins margins,
            List<Finding> warnings,
            Timing timing) {
        this(layout, effort, scene, feasibility, chordError, judgement, margins, warnings, timing, Optional.empty());
    }

    /** Whether the work was stopped before all was looked at: what is decided holds, what is missing was not looked at. */
    public boolean stopped() {
        return judgement.stopped() || margins.stopped();
    }

    /** The same with what the cool-down does. */
    CheckResult with(CooldownResult other, List<Finding> otherWarnings, Timing otherTiming) {
        return new CheckResult(
                layout,
                effort,
                scene,
                feasibility,
                chordError,
                judgement,
                margins,
                otherWarnings,
                otherTiming,
                Optional.of(other));
    }

    /** Copies the lists. */
    public CheckResult {
        feasibility = List.copyOf(feasibility);
        warnings = List.copyOf(warnings);
    }

    /**
     * How long the steps took, s.
     *
     * @param proofs proving darkness
     * @param margins measuring margins, all threads together: other work goes on beside it
     * @param whole from reading the file to the last verdict
     */
    public record Timing(double proofs, double margins, double whole) {}
}
