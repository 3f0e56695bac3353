package darkrim.study;

import darkrim.layout.Requirement;
import darkrim.scene.Scene;
import darkrim.scene.Surface;
import darkrim.shadow.Margin;
import darkrim.shadow.Margins;
import darkrim.trace.FacetTree;
import darkrim.verdict.Evidence;
import darkrim.verdict.Outcome;
import darkrim.verdict.RequirementResult;
import darkrim.verdict.Verdict;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * The least margin of a requirement over its surfaces; negative where it is broken by as much.
 *
 * <ul>
 *   <li>No direct light: the dark clearance, mm; where a flat surface is lit, its shadow margin. docs/margins.md says what they promise.
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
        return new RequirementMargin(requirement, Optional.empty(), Double.NEGATIVE_INFINITY, false, "", "", why);
    }

    /** The margin of what was checked. */
    static RequirementMargin of(RequirementResult result, Scene scene) {
        Requirement requirement = result.requirement();
        Found least = requirement.condition() instanceof Requirement.AtMost limit
                ? sampled(result, limit)
                : exact(
                        result,
                        new Margins(scene, FacetTree.build(scene.corners(), scene.copyPlanes(), scene.bound())));
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

    private record Found(double margin, boolean capped, String where, String setBy) {
        private static final Found NOTHING = new Found(Double.NaN, false, "", "");

        private static Found of(Surface surface, Margin margin) {
            return new Found(margin.millimetres(), margin.capped(), surface.name(), margin.setBy());
        }
    }

    private static Found exact(RequirementResult result, Margins margins) {
        List<Surface> all = result.outcomes().stream().map(Outcome::surface).toList();
        if (result.requirement().condition() instanceof Requirement.PupilSeen) {
            return all.stream()
                    .map(surface -> Found.of(surface, margins.pupil(surface)))
                    .min(Comparator.comparingDouble(Found::margin))
                    .orElse(Found.NOTHING);
        }
        List<Surface> lit = result.outcomes().stream()
                .filter(outcome -> outcome.verdict() == Verdict.FAIL)
                .map(Outcome::surface)
                .toList();
        Optional<Margins.Least> least = switch (result.verdict()) {
            case PASS -> margins.leastClearance(all, () -> false);
            case FAIL ->
                margins.deepestIntrusion(lit.stream().filter(margins::isFlat).toList(), () -> false);
            case UNDECIDED -> Optional.empty();
        };
        return least.map(found -> Found.of(found.surface(), found.margin())).orElse(Found.NOTHING);
    }

    private static Found sampled(RequirementResult result, Requirement.AtMost limit) {
        return result.outcomes().stream()
                .map(outcome -> outcome.evidence() instanceof Evidence.ProvedBound bound
                        ? new Found(limit.limit() - bound.atMost(), true, outcome.where(), "")
                        : new Found(limit.limit() - outcome.value(), false, outcome.where(), ""))
                .min(Comparator.comparingDouble(Found::margin))
                .orElse(Found.NOTHING);
    }
}
