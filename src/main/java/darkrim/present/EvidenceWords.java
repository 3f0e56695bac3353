package darkrim.present;

import darkrim.light.Estimate;
import darkrim.study.irradiance.DarkProof;
import darkrim.verdict.Evidence;
import darkrim.verdict.LightMargin;
import darkrim.verdict.Outcome;
import darkrim.verdict.Verdict;
import java.util.List;
import java.util.Optional;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/** Evidence in words. */
public final class EvidenceWords {
    private EvidenceWords() {}

    /**
     * Why a verdict is what it is, a few words without a full stop.
     *
     * @param outcome the verdict with its evidence
     * @param confidence confidence of all sampled verdicts together, 0 to 1
     */
    public static String of(Outcome outcome, double confidence) {
        if (passesUnmeasured(outcome)) {
            return "never more than " + Figures.atMost(((Evidence.Sampled) outcome.evidence()).upper())
                    + ", whatever the samples say";
        }
        return of(outcome.evidence(), confidence);
    }

    /** Whether the largest sample that is possible is within the limit, so that none had to be taken. */
    static boolean passesUnmeasured(Outcome outcome) {
        return outcome.verdict() == Verdict.PASS
                && outcome.evidence() instanceof Evidence.Sampled sampled
                && sampled.estimate().samples() < 2
                && sampled.estimate().largest() > 0;
    }

    /** What evidence says by itself. */
    static String of(Evidence evidence, double confidence) {
        if (evidence instanceof Evidence.ProvedDark dark) {
            return DarkProof.PROVED.words() + clearance(dark.clearance());
        }
        if (evidence instanceof Evidence.DarkBehindFacets dark) {
            return DarkProof.BEHIND_FACETS.words() + clearance(dark.clearance())
                    + "; not proved for the curved surfaces they stand for";
        }
        if (evidence instanceof Evidence.WitnessRay ray) {
            return "lit: ray from the pupil at " + point(ray.onPupil()) + " to " + point(ray.onSurface()) + ", "
                    + Figures.length(ray.length()) + " mm"
                    + ray.intrusion().map(margin -> ", " + margin(margin)).orElse("");
        }
        if (evidence instanceof Evidence.OpenArea open) {
            return "neither proved dark nor found lit: " + Figures.three(open.area()) + " mm2 ("
                    + Figures.percent(open.fraction()) + " of its area) left open";
        }
        if (evidence instanceof Evidence.ExactShare share) {
            return share(share);
        }
        if (evidence instanceof Evidence.ProvedBound bound) {
            return bound(bound.atMost());
        }
        if (evidence instanceof Evidence.Distance distance) {
            return distance(distance);
        }
        return sampled((Evidence.Sampled) evidence, confidence);
    }

    private static String clearance(Optional<LightMargin> found) {
        return found.map(margin -> ", " + margin(margin)).orElse("");
    }

    /** A margin, such as {@code clearance 0.199 mm, set by lid/opening/land/-y}. */
    public static String margin(LightMargin margin) {
        String setBy = margin.setBy().isEmpty() ? "" : ", set by " + EdgeName.of(margin.setBy());
        if (margin.millimetres() < 0) {
            // A margin that is rounded to 0 has no sign to take off.
            String depth = Figures.margin(margin.millimetres()).replace("-", "");
            return "light reaches " + (margin.atLeast() ? "at most " : "") + depth + " mm in" + setBy;
        }
        if (margin.isUnexplained()) {
            return "clearance at least " + Figures.margin(margin.millimetres()) + " mm, no edge found that sets it";
        }
        return margin.atLeast()
                ? "clearance at least " + Figures.margin(margin.millimetres()) + " mm"
                : "clearance " + Figures.margin(margin.millimetres()) + " mm" + setBy;
    }

    /** A proved upper bound of once-reflected light. */
    static String bound(double atMost) {
        return atMost == 0 ? "proved to get none" : "never more than " + Figures.atMost(atMost) + ", proved";
    }

    /** A distance with its two points, such as {@code 0.812 mm, from (1, 2, 3) to (1, 2, 3.81)}. */
    private static String distance(Evidence.Distance distance) {
        String raised = distance.raised().isPresent()
                ? ", " + Figures.length(distance.raised().getAsDouble()) + " mm before the end of the way"
                : "";
        if (distance.overlap()) {
            return "run into one another at " + point(distance.onFirst()) + raised;
        }
        String takenOff = distance.takenOff() > 0
                ? ", " + Figures.length(distance.takenOff()) + " mm for coatings and round faces taken off"
                : "";
        if (distance.onFirst().equals(distance.onSecond())) {
            return "touch or run into one another at " + point(distance.onFirst()) + raised;
        }
        return Figures.margin(distance.millimetres()) + " mm, from " + point(distance.onFirst()) + " to "
                + point(distance.onSecond()) + raised + takenOff;
    }

    private static String share(Evidence.ExactShare share) {
        if (share.isWhole()) {
            return "whole pupil seen from every point, proved";
        }
        if (share.lowest().isEmpty()) {
            return "not looked at";
        }
        if (share.atMost() == 0) {
            return "nothing of the pupil seen from " + point(share.lowest().get())
                    + ", exact (covered, in shadow, facing away or outside the field)" + hiddenBy(share);
        }
        return (share.isNear() ? "least " : "lowest found ") + Figures.share(share.atMost()) + " at "
                + point(share.lowest().get()) + ", exact; "
                + (share.atLeast() > 0
                        ? "nowhere below " + Figures.shareAtLeast(share.atLeast()) + ", proved"
                        : "no lower bound proved")
                + hiddenBy(share);
    }

    private static String hiddenBy(Evidence.ExactShare share) {
        List<String> names = share.hiddenBy().stream().map(Printable::of).toList();
        return names.isEmpty() ? "" : "; first in the way there: " + String.join(", ", names);
    }

    private static String sampled(Evidence.Sampled sampled, double confidence) {
        Estimate estimate = sampled.estimate();
        if (estimate.largest() == 0) {
            return "nothing that reflects can send light there";
        }
        if (estimate.samples() < 2) {
            return "not measured: the check ended before its turn (--samples allows more)";
        }
        String samples = Figures.counted(estimate.samples(), "sample");
        if (estimate.mean() == 0) {
            return "no light in " + samples + ": at most " + Figures.atMost(sampled.upper());
        }
        return "between " + Figures.atLeast(sampled.lower()) + " and " + Figures.atMost(sampled.upper()) + " at "
                + Figures.confidence(confidence) + ", " + samples;
    }

    /** Coordinates in mm, such as {@code (1.018, 20.1, -0.175)}. */
    public static String point(Vector3D point) {
        return "(" + Figures.length(point.getX()) + ", " + Figures.length(point.getY()) + ", "
                + Figures.length(point.getZ()) + ")";
    }
}
