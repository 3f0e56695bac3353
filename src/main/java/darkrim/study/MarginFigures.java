package darkrim.study;

import darkrim.layout.Requirement;
import darkrim.scene.Scene;
import darkrim.shadow.Margin;
import darkrim.shadow.Margins;
import darkrim.trace.FacetTree;
import darkrim.verdict.Evidence;
import darkrim.verdict.Outcome;
import darkrim.verdict.RequirementResult;
import java.util.List;

/**
 * The margin of each requirement of a check. Of no direct light: what the check found, docs/margins.md. Of the pupil: the least pupil margin of
 * its flat surfaces, which is about the whole pupil whatever share is asked. Of a limit: the limit less the value.
 */
public final class MarginFigures {
    private MarginFigures() {}

    /** The margins, in the order of the layout. */
    public static List<MarginFigure> of(CheckResult result) {
        return result.judgement().requirements().stream()
                .map(each -> of(each, result.scene()))
                .toList();
    }

    private static MarginFigure of(RequirementResult result, Scene scene) {
        Requirement.Condition condition = result.requirement().condition();
        if (result.outcomes().isEmpty()) {
            return figure(result, Double.NaN, 0, true, "");
        }
        if (condition instanceof Requirement.NoDirect) {
            return result.leastMargin()
                    .map(least -> figure(
                            result,
                            least.evidence().margin().orElseThrow().millimetres(),
                            0,
                            true,
                            least.surface().name()))
                    .orElseGet(() -> figure(result, Double.NaN, 0, true, ""));
        }
        if (condition instanceof Requirement.PupilSeen) {
            return pupil(result, scene);
        }
        Outcome worst = result.worst();
        double limit = ((Requirement.AtMost) condition).limit();
        double error = worst.evidence() instanceof Evidence.Sampled sampled
                ? sampled.estimate().standardError()
                : 0;
        return figure(result, limit - worst.value(), error, false, worst.where());
    }

    private static MarginFigure pupil(RequirementResult result, Scene scene) {
        Margins margins = new Margins(scene, FacetTree.build(scene.corners(), scene.copyPlanes(), scene.bound()));
        double least = Double.NaN;
        String where = "";
        for (Outcome outcome : result.outcomes()) {
            if (margins.isFlat(outcome.surface())) {
                Margin margin = margins.pupil(outcome.surface());
                if (!(margin.millimetres() >= least)) {
                    least = margin.millimetres();
                    where = outcome.surface().name();
                }
            }
        }
        return figure(result, least, 0, true, where);
    }

    private static MarginFigure figure(
            RequirementResult result, double margin, double error, boolean millimetres, String where) {
        return new MarginFigure(result.requirement().name(), result.verdict(), margin, error, millimetres, where);
    }
}
