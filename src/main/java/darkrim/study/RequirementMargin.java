package darkrim.study;

import darkrim.layout.Requirement;
import darkrim.scene.Scene;
import darkrim.scene.Surface;
import darkrim.shadow.Margin;
import darkrim.shadow.Margins;
import darkrim.trace.FacetTree;
import darkrim.verdict.Evidence;
import darkrim.verdict.LightMargin;
import darkrim.verdict.Outcome;
import darkrim.verdict.RequirementResult;
import darkrim.verdict.Verdict;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * The least margin of a requirement over its surfaces; negative where it is broken by as much. Every study means this by a margin.
 *
 * <ul>
 *   <li>No direct light: the dark clearance, mm; where a flat surface is lit, its shadow margin. docs/margins.md says what they promise. Not known
 *       where the requirement is undecided or no lit surface is flat; where a dimension is dragged and a proof is in doubt, the clearance behind facets.
 *   <li>Share of the pupil: the pupil margin, mm; it asks for the whole pupil, whatever share is required, and so is on the safe side.
 *   <li>Clearance: the least distance less what is asked, mm; what touches or overlaps has no depth.
 *   <li>A limit on light: the limit less the value, in relative irradiance; capped where the value was only proved to be within a bound. Not known
 *       where the requirement is undecided because a proof of darkness is in doubt.
 * </ul>
 *
 * @param requirement name of the requirement
 * @param verdict what the check says; empty where no such layout exists
 * @param margin the margin; NaN where it is not known, negative infinity where no such layout exists
 * @param standardError its standard error; 0 where it is exact or not known
 * @param unit what both are measured in
 * @param capped whether the search ended before a limit was found: the margin is then at least this far from 0
 * @param where the surface that has it, or cell of its map
 * @param setBy what sets it: surfaces that meet at an edge, a surface on which light lies, or a rim; empty where that is not known
 * @param impossible why no such layout exists; otherwise empty
 */
public record RequirementMargin(
        String requirement,
        Optional<Verdict> verdict,
        double margin,
        double standardError,
        MarginUnit unit,
        boolean capped,
        String where,
        String setBy,
        String impossible) {

    /** No such layout exists. */
    static RequirementMargin impossible(Requirement requirement, String why) {
        return of(requirement, Optional.empty(), new Found(Double.NEGATIVE_INFINITY, 0, false, "", ""), why);
    }

    /** The verdict is known, the margin is not. */
    public static RequirementMargin unmeasured(RequirementResult result) {
        return of(result.requirement(), Optional.of(result.verdict()), Found.NOTHING, "");
    }

    /** The margins of all requirements of what was checked, in the order of the layout. */
    public static List<RequirementMargin> of(CheckResult result) {
        Margins margins = search(result.scene());
        return result.judgement().requirements().stream()
                .map(each -> of(each, margins))
                .toList();
    }

    /** The margin of what was checked. */
    public static RequirementMargin of(RequirementResult result, Scene scene) {
        // A limit on light needs no search, and so no tree over the facets.
        return result.requirement().condition() instanceof Requirement.AtMost limit
                ? of(result.requirement(), Optional.of(result.verdict()), sampled(result, limit), "")
                : of(result, search(scene));
    }

    /** The margin in mm that a search found elsewhere; not known where it found none. */
    public static RequirementMargin of(RequirementResult result, Optional<Margins.Least> least) {
        if (result.requirement().condition() instanceof Requirement.Clearance asked) {
            return of(result.requirement(), Optional.of(result.verdict()), apart(result, asked), "");
        }
        return of(
                result.requirement(),
                Optional.of(result.verdict()),
                least.map(found -> Found.of(found.surface(), found.margin())).orElse(Found.NOTHING),
                "");
    }

    private static Margins search(Scene scene) {
        return new Margins(scene, FacetTree.build(scene.corners(), scene.copyPlanes(), scene.bound()));
    }

    private static RequirementMargin of(RequirementResult result, Margins margins) {
        Requirement.Condition condition = result.requirement().condition();
        Found least = condition instanceof Requirement.Clearance clearance
                ? apart(result, clearance)
                : condition instanceof Requirement.AtMost limit
                        ? sampled(result, limit)
                        : condition instanceof Requirement.PupilSeen ? pupil(result, margins) : dark(result, margins);
        return of(result.requirement(), Optional.of(result.verdict()), least, "");
    }

    private static RequirementMargin of(
            Requirement requirement, Optional<Verdict> verdict, Found found, String impossible) {
        return new RequirementMargin(
                requirement.name(),
                verdict,
                found.margin,
                found.error,
                MarginUnit.of(requirement),
                found.capped,
                found.where,
                found.setBy,
                impossible);
    }

    /** The same of a requirement whose proof of darkness is in doubt: a clearance behind facets is known then, the light is not. */
    public RequirementMargin inDoubt(RequirementResult result) {
        return unit == MarginUnit.RELATIVE_IRRADIANCE
                ? unmeasured(result)
                : new RequirementMargin(
                        requirement,
                        Optional.of(result.verdict()),
                        margin,
                        standardError,
                        unit,
                        capped,
                        where,
                        setBy,
                        impossible);
    }

    /** Whether the margin is a number that can be compared with that of another layout. */
    public boolean isKnown() {
        return Double.isFinite(margin) && !capped;
    }

    /** Whether it is only known to be at least this far from 0: capped, or in mm and without an edge that explains where the room ends. */
    public boolean isBound() {
        return capped || (unit == MarginUnit.MILLIMETRES && margin >= 0 && setBy.isEmpty());
    }

    /** Whether the requirement holds. */
    public boolean holds() {
        return verdict.filter(found -> found == Verdict.PASS).isPresent();
    }

    private record Found(double margin, double error, boolean capped, String where, String setBy) {
        private static final Found NOTHING = new Found(Double.NaN, 0, false, "", "");

        private static Found of(Surface surface, Margin margin) {
            return new Found(margin.millimetres(), 0, margin.capped(), surface.name(), margin.setBy());
        }

        private static Found of(Surface surface, LightMargin margin) {
            boolean capped = margin.atLeast() || margin.millimetres() <= -Margins.FARTHEST;
            return new Found(margin.millimetres(), 0, capped, surface.name(), margin.setBy());
        }
    }

    private static Found pupil(RequirementResult result, Margins margins) {
        return result.outcomes().stream()
                .map(outcome -> Found.of(outcome.surface(), margins.pupil(outcome.surface())))
                .min(Comparator.comparingDouble(Found::margin))
                .orElse(Found.NOTHING);
    }

    /** Of direct light: what the check found, if it looked for margins; else by a search. */
    private static Found dark(RequirementResult result, Margins margins) {
        if (result.verdict() == Verdict.UNDECIDED) {
            return Found.NOTHING;
        }
        List<Outcome> counting = result.outcomes().stream()
                .filter(outcome -> outcome.verdict() == result.verdict())
                .toList();
        Optional<Outcome> known = new RequirementResult(result.requirement(), result.verdict(), counting).leastMargin();
        if (known.isPresent()) {
            return Found.of(
                    known.get().surface(), known.get().evidence().margin().orElseThrow());
        }
        List<Surface> surfaces = counting.stream().map(Outcome::surface).toList();
        Optional<Margins.Least> least = result.verdict() == Verdict.PASS
                ? margins.leastClearance(surfaces, () -> false)
                : margins.deepestIntrusion(
                        surfaces.stream().filter(margins::isFlat).toList(), () -> false);
        return least.map(found -> Found.of(found.surface(), found.margin())).orElse(Found.NOTHING);
    }

    private static Found apart(RequirementResult result, Requirement.Clearance asked) {
        Outcome worst = result.worst();
        String other = worst.evidence() instanceof Evidence.Distance distance ? distance.second() : "";
        return new Found(worst.value() - asked.atLeast(), 0, false, worst.where(), other);
    }

    private static Found sampled(RequirementResult result, Requirement.AtMost limit) {
        if (result.isDarknessInDoubt()) {
            return Found.NOTHING;
        }
        return result.outcomes().stream()
                .map(outcome -> sampled(outcome, limit.limit()))
                .min(Comparator.comparingDouble(Found::margin))
                .orElse(Found.NOTHING);
    }

    private static Found sampled(Outcome outcome, double limit) {
        if (outcome.evidence() instanceof Evidence.ProvedBound bound) {
            return new Found(limit - bound.atMost(), 0, bound.atMost() > 0, outcome.where(), "");
        }
        double error = outcome.evidence() instanceof Evidence.Sampled sampled
                ? sampled.estimate().standardError()
                : 0;
        return new Found(limit - outcome.value(), error, false, outcome.where(), "");
    }
}
