package darkrim.present;

import darkrim.layout.Requirement;
import darkrim.layout.Requirement.LightClass;
import darkrim.light.Estimate;
import darkrim.study.CheckResult;
import darkrim.study.irradiance.DarkProof;
import darkrim.verdict.Evidence;
import darkrim.verdict.Outcome;
import darkrim.verdict.RequirementResult;
import darkrim.verdict.SurfaceResult;
import darkrim.verdict.Verdict;
import java.util.Optional;
import java.util.OptionalDouble;

/** The numbers of a result as they are shown. */
public final class Values {
    private final CheckResult result;

    Values(CheckResult result) {
        this.result = result;
    }

    /** Value and error of an outcome. */
    String of(Outcome outcome) {
        SurfaceResult surface =
                result.judgement().surfaces().get(outcome.surface().index());
        return of(outcome, surface.darkness(), surface.direct().irradiance());
    }

    /**
     * Value and error of an outcome.
     *
     * @param outcome the outcome
     * @param darkness what the proof of darkness says of its surface
     * @param direct sampled direct light on its surface
     */
    public static String of(Outcome outcome, Optional<Evidence> darkness, Estimate direct) {
        if (outcome.isDarknessInDoubt()) {
            return DarkProof.BEHIND_FACETS.words();
        }
        if (outcome.evidence() instanceof Evidence.Sampled sampled) {
            return EvidenceWords.passesUnmeasured(outcome)
                    ? "at most " + Figures.atMost(sampled.upper())
                    : sampled(sampled.estimate());
        }
        if (outcome.evidence() instanceof Evidence.ExactShare share) {
            return share.isWhole() ? "whole pupil" : share(outcome, share);
        }
        if (outcome.evidence() instanceof Evidence.ProvedBound bound) {
            return bound(bound.atMost());
        }
        if (outcome.evidence() instanceof Evidence.Distance distance) {
            return Figures.margin(distance.millimetres()) + " mm";
        }
        return direct(darkness, direct);
    }

    private static String share(Outcome outcome, Evidence.ExactShare share) {
        if (share.lowest().isEmpty()) {
            return "not looked at";
        }
        if (outcome.verdict() == Verdict.PASS && !share.isNear()) {
            return "proved >= " + Figures.shareAtLeast(share.atLeast());
        }
        return (share.isNear() ? "least " : "least <= ") + Figures.share(share.atMost());
    }

    private static String bound(double atMost) {
        return atMost == 0 ? "proved none" : "proved <= " + Figures.atMost(atMost);
    }

    /** What is known of once-reflected light on a whole surface beside the evidence of an outcome; empty where nothing is. */
    String beside(Outcome outcome) {
        if (outcome.cell() != Outcome.WHOLE) {
            return "";
        }
        SurfaceResult surface =
                result.judgement().surfaces().get(outcome.surface().index());
        if (outcome.evidence() instanceof Evidence.ProvedBound bound && bound.atMost() > 0) {
            Estimate estimate = surface.onceReflected().irradiance();
            return estimate.samples() < 2 ? "; not sampled" : "; sampled " + sampled(estimate);
        }
        boolean reflected = outcome.evidence() instanceof Evidence.Sampled sampled
                && sampled.estimate().equals(surface.onceReflected().irradiance());
        return reflected && surface.mostReflected().isPresent()
                ? "; " + EvidenceWords.bound(surface.mostReflected().getAsDouble())
                : "";
    }

    /** Value and error of a class of light on a surface. */
    String of(SurfaceResult surface, LightClass light) {
        if (light == LightClass.ONCE_REFLECTED) {
            return surface.mostReflected().orElse(1) == 0
                    ? "proved none"
                    : sampled(surface.onceReflected().irradiance());
        }
        return direct(surface.darkness(), surface.direct().irradiance());
    }

    private static String direct(Optional<Evidence> darkness, Estimate estimate) {
        DarkProof proof = DarkProof.of(darkness);
        if (proof != DarkProof.NONE) {
            return proof.words();
        }
        if (darkness.orElse(null) instanceof Evidence.WitnessRay && estimate.mean() == 0) {
            return estimate.samples() == 0 ? "lit, not measured" : "lit in a spot";
        }
        return sampled(estimate);
    }

    private static String sampled(Estimate estimate) {
        if (estimate.largest() == 0) {
            return "none possible";
        }
        return estimate.samples() < 2 ? "not measured" : measured(estimate);
    }

    /** The mean of at least two samples with its error. */
    static String measured(Estimate estimate) {
        if (estimate.mean() == 0) {
            return "none seen";
        }
        return estimate.variance() == 0
                ? Figures.three(estimate.mean()) + " in all samples"
                : Figures.withError(estimate.mean(), estimate.standardError());
    }

    /** Irradiance in W/m2 for a relative irradiance of 1, where the beam has a radiance. */
    OptionalDouble unit() {
        OptionalDouble radiance = result.scene().beam().radiance();
        return radiance.isEmpty()
                ? radiance
                : OptionalDouble.of(result.scene().referenceIrradiance() * radiance.getAsDouble());
    }

    /** An estimate of relative irradiance in W/m2; empty where there is none. */
    String absolute(Estimate estimate, double unit) {
        return estimate.mean() == 0 ? "" : Figures.three(estimate.mean() * unit);
    }

    /** The confidence of all sampled verdicts together, 0 to 1. */
    double confidence() {
        return result.effort().confidence();
    }

    /** Whether every surface of a requirement is proved dark. */
    static boolean isAllDark(RequirementResult result) {
        return result.outcomes().stream().allMatch(outcome -> outcome.evidence() instanceof Evidence.ProvedDark);
    }

    /** Whether the whole pupil is proved to be seen from every surface of a requirement, or no once-reflected light to reach any. */
    static boolean isAllWholeOrNone(RequirementResult result) {
        return result.outcomes().stream()
                .allMatch(outcome -> (outcome.evidence() instanceof Evidence.ExactShare share && share.isWhole())
                        || (outcome.evidence() instanceof Evidence.ProvedBound bound && bound.atMost() == 0));
    }

    /** Whether a requirement is about once-reflected light. */
    static boolean isReflected(Requirement requirement) {
        return requirement.condition() instanceof Requirement.AtMost most && most.light() == LightClass.ONCE_REFLECTED;
    }
}
