package darkrim.verdict;

import darkrim.layout.Requirement;
import darkrim.layout.Requirement.LightClass;
import darkrim.light.Estimate;
import darkrim.light.Tally;
import darkrim.scene.Surface;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;

/** What proofs decide of requirements, so that sampling need not. */
final class Settled {
    /** A sampled lower bound above a proved upper one: nothing but a mistake in the program does that more often than this. */
    private static final double CERTAIN = 1e-12;

    private final Proofs proofs;
    private final Measurements measured;

    /**
     * @param proofs what was proved
     * @param measured what was sampled: the values that stand beside the proofs
     */
    Settled(Proofs proofs, Measurements measured) {
        this.proofs = proofs;
        this.measured = measured;
    }

    Proofs proofs() {
        return proofs;
    }

    /** Whether a condition is about direct light, so that a proof of darkness may decide it. */
    static boolean asksForDirect(Requirement.Condition condition) {
        return condition instanceof Requirement.NoDirect
                || (condition instanceof Requirement.AtMost most && most.light() == LightClass.DIRECT);
    }

    /**
     * Whether proof decides a condition for a surface, or leaves it undecided for good. Darkness is about direct light only: once-reflected light
     * may still reach what is dark.
     */
    boolean decides(Requirement.Condition condition, Surface surface) {
        if (condition instanceof Requirement.AtMost most) {
            return most.light() == LightClass.DIRECT
                    ? darkness(surface) instanceof Evidence.ProvedDark
                    : proofs.bound(surface).orElse(Double.POSITIVE_INFINITY) <= forSurface(most, surface);
        }
        return true;
    }

    /** The class of light of which only sampling tells the value; empty where the value is known to be 0, or exact. */
    Optional<LightClass> sampledValue(Requirement.Condition condition, Surface surface) {
        if (condition instanceof Requirement.PupilSeen) {
            return Optional.empty();
        }
        if (asksForDirect(condition)) {
            return darkness(surface) instanceof Evidence.ProvedDark ? Optional.empty() : Optional.of(LightClass.DIRECT);
        }
        return proofs.bound(surface).orElse(Double.POSITIVE_INFINITY) == 0
                ? Optional.empty()
                : Optional.of(LightClass.ONCE_REFLECTED);
    }

    /** The bound on the mean over a whole surface that makes a limit hold: no cell of n can get more than n times that mean. */
    static double forSurface(Requirement.AtMost most, Surface surface) {
        return most.per() == Requirement.Per.CELL
                ? most.limit() / surface.grid().orElseThrow().count()
                : most.limit();
    }

    /** What is decided: one outcome for the surface or, where cells are asked for and the proof tells them apart, for each cell. */
    List<Outcome> outcomes(Requirement.Condition condition, Surface surface) {
        if (condition instanceof Requirement.PupilSeen seen) {
            return List.of(pupil(seen, surface));
        }
        if (condition instanceof Requirement.AtMost most && most.light() == LightClass.ONCE_REFLECTED) {
            return reflected(most, surface);
        }
        Evidence evidence = darkness(surface);
        Estimate direct = measured.tally(surface, LightClass.DIRECT).irradiance();
        double value = evidence instanceof Evidence.ProvedDark ? 0 : direct.samples() == 0 ? Double.NaN : direct.mean();
        return List.of(new Outcome(surface, Outcome.WHOLE, verdict(evidence), value, evidence));
    }

    private Evidence darkness(Surface surface) {
        return proofs.darkness(surface).orElseThrow();
    }

    private static Verdict verdict(Evidence evidence) {
        if (evidence instanceof Evidence.ProvedDark) {
            return Verdict.PASS;
        }
        return evidence instanceof Evidence.WitnessRay ? Verdict.FAIL : Verdict.UNDECIDED;
    }

    private Outcome pupil(Requirement.PupilSeen asked, Surface surface) {
        Evidence.ExactShare share = proofs.share(surface, asked.share());
        Verdict verdict = share.atLeast() >= asked.share()
                ? Verdict.PASS
                : share.atMost() < asked.share() ? Verdict.FAIL : Verdict.UNDECIDED;
        // Far below the lowest point that was found there may be others: what is proved is then the number to hold on
        // to.
        double value = verdict == Verdict.PASS && !share.isNear() ? share.atLeast() : share.atMost();
        boolean known = share.isWhole() || share.lowest().isPresent();
        return new Outcome(surface, Outcome.WHOLE, verdict, known ? value : Double.NaN, share);
    }

    private List<Outcome> reflected(Requirement.AtMost most, Surface surface) {
        Tally tally = measured.tally(surface, LightClass.ONCE_REFLECTED);
        double bound = proofs.bound(surface).orElseThrow();
        if (most.per() == Requirement.Per.SURFACE) {
            return List.of(reflected(surface, Outcome.WHOLE, tally.irradiance(), bound));
        }
        int count = surface.grid().orElseThrow().count();
        return IntStream.range(0, count)
                .mapToObj(cell -> reflected(surface, cell, tally.cells().get(cell), bound * count))
                .toList();
    }

    private static Outcome reflected(Surface surface, int cell, Estimate estimate, double bound) {
        double value = bound == 0 ? 0 : estimate.samples() == 0 ? Double.NaN : estimate.mean();
        return new Outcome(surface, cell, Verdict.PASS, value, new Evidence.ProvedBound(bound));
    }

    /**
     * Holds samples against proofs.
     *
     * @throws IllegalStateException if they contradict each other
     */
    void refuseContradictions() {
        proofs.dark().forEach((surface, evidence) -> {
            double mean =
                    measured.tally(surface, LightClass.DIRECT).irradiance().mean();
            if (evidence instanceof Evidence.ProvedDark && mean > 0) {
                throw contradiction(surface, "dark, yet a ray reaches it");
            }
        });
        proofs.mostReflected().forEach((surface, bound) -> {
            Estimate estimate =
                    measured.tally(surface, LightClass.ONCE_REFLECTED).irradiance();
            boolean none = bound == 0 && estimate.mean() > 0;
            if (none || new ConfidenceSequence(CERTAIN).lower(estimate, 1) > bound) {
                throw contradiction(surface, "to get less once-reflected light than rays bring to it");
            }
        });
    }

    private static IllegalStateException contradiction(Surface surface, String what) {
        return new IllegalStateException("surface " + surface.name() + " is proved " + what
                + ": please report this layout, and do not trust this result");
    }
}
