package darkrim.study;

import darkrim.layout.Requirement;
import darkrim.scene.Scene;
import darkrim.shadow.Margin;
import darkrim.shadow.Margins;
import darkrim.trace.FacetTree;
import darkrim.verdict.Evidence;
import darkrim.verdict.Outcome;
import darkrim.verdict.RequirementResult;
import darkrim.verdict.Verdict;
import java.util.List;
import java.util.Optional;

/**
 * The least margin of a requirement over its surfaces; negative where it is broken by as much.
 *
 * <ul>
 *   <li>No direct light: the shadow margin, mm.
 *   <li>Share of the pupil: the pupil margin, mm; it asks for the whole pupil, whatever share is required, and so is on the safe side.
 *   <li>A limit on light: the limit less the value, in relative irradiance.
 * </ul>
 *
 * @param requirement name of the requirement
 * @param verdict what the check says; empty where no such layout exists
 * @param margin the margin; NaN where it is not known, negative infinity where no such layout exists
 * @param capped whether the search ended before a limit was found: the margin is then at least this far from 0
 * @param where the surface that has it, or cell of its map
 * @param setBy what sets it: surfaces that meet at an edge; empty where that is not known
 * @param impossible why no such layout exists; otherwise empty
 */
public record RequirementMargin(
        String requirement,
        Optional<Verdict> verdict,
        double margin,
        boolean capped,
        String where,
        String setBy,
        String impossible) {

    /** No such layout exists. */
    static RequirementMargin impossible(String requirement, String why) {
        return new RequirementMargin(
                requirement, Optional.empty(), Double.NEGATIVE_INFINITY, false, "", "", why);
    }

    /** The margin of what was checked. */
    static RequirementMargin of(RequirementResult result, Scene scene) {
        Requirement requirement = result.requirement();
        boolean geometric = !(requirement.condition() instanceof Requirement.AtMost);
        Margins margins = geometric
                ? new Margins(scene, FacetTree.build(scene.copyCorners(), scene.copyPlanes(), scene.bound()))
                : null;
        Found least = new Found(Double.NaN, false, "", "");
        boolean share = requirement.condition() instanceof Requirement.PupilSeen;
        for (Outcome outcome : share ? result.outcomes() : candidates(result.outcomes())) {
            Found found = geometric
                    ? exact(outcome, margins, requirement.condition())
                    : sampled(outcome, (Requirement.AtMost) requirement.condition());
            if (Double.isNaN(least.margin) || found.margin < least.margin) {
                least = found;
            }
        }
        return new RequirementMargin(
                requirement.name(),
                Optional.of(result.verdict()),
                least.margin,
                least.capped,
                least.where,
                least.setBy,
                "");
    }

    /** Whether the margin is a number that can be compared with that of another layout. */
    public boolean isKnown() {
        return Double.isFinite(margin) && !capped;
    }

    private record Found(double margin, boolean capped, String where, String setBy) {}

    /** Where some fail, the least margin is among them. */
    private static List<Outcome> candidates(List<Outcome> outcomes) {
        List<Outcome> failed = outcomes.stream()
                .filter(outcome -> outcome.verdict() == Verdict.FAIL)
                .toList();
        return failed.isEmpty() ? outcomes : failed;
    }

    private static Found exact(Outcome outcome, Margins margins, Requirement.Condition condition) {
        Margin margin = condition instanceof Requirement.NoDirect
                ? margins.shadow(outcome.surface())
                : margins.pupil(outcome.surface());
        return new Found(margin.millimetres(), margin.capped(), outcome.where(), margin.setBy());
    }

    private static Found sampled(Outcome outcome, Requirement.AtMost limit) {
        return outcome.evidence() instanceof Evidence.ProvedBound bound
                ? new Found(limit.limit() - bound.atMost(), true, outcome.where(), "")
                : new Found(limit.limit() - outcome.value(), false, outcome.where(), "");
    }
}
