package darkrim.present;

import static org.assertj.core.api.Assertions.assertThat;

import darkrim.layout.ThermalShape;
import darkrim.light.Estimate;
import darkrim.verdict.Evidence;
import darkrim.verdict.LightMargin;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Test;

class EvidenceWordsTest {
    /** A new kind needs words in {@link EvidenceWords}, a row in docs/result.schema.json, and a test here. */
    @Test
    void theseAreAllKindsOfEvidence() {
        assertThat(Evidence.class.getPermittedSubclasses())
                .containsExactlyInAnyOrder(
                        Evidence.ProvedDark.class,
                        Evidence.DarkBehindFacets.class,
                        Evidence.WitnessRay.class,
                        Evidence.OpenArea.class,
                        Evidence.ExactShare.class,
                        Evidence.ProvedBound.class,
                        Evidence.Distance.class,
                        Evidence.Sampled.class);
    }

    @Test
    void aDistanceNamesItsTwoPointsAndWhatWasTakenOff() {
        Evidence.Distance apart = new Evidence.Distance(
                0.81999,
                ThermalShape.WARM,
                "lid/underside",
                Vector3D.of(1, 2, 3),
                "post/+z",
                Vector3D.of(1, 2, 2.15),
                OptionalDouble.of(7),
                false,
                0.03);
        assertThat(words(apart))
                .isEqualTo("0.819 mm, from (1, 2, 3) to (1, 2, 2.15), 7 mm before the end of the way, 0.03 mm for"
                        + " coatings and round faces taken off");
    }

    @Test
    void partsThatMeetAreSaidTo() {
        Vector3D at = Vector3D.of(1, 2, 3);
        assertThat(words(new Evidence.Distance(
                        0, ThermalShape.COLD, "a", at, "b", at, OptionalDouble.empty(), false, 0)))
                .isEqualTo("touch or run into one another at (1, 2, 3)");
        assertThat(words(
                        new Evidence.Distance(0, ThermalShape.COLD, "a", at, "b", at, OptionalDouble.empty(), true, 0)))
                .isEqualTo("run into one another at (1, 2, 3)");
    }

    /** What is less than a nanometre is rounding, on either side of 0. */
    @Test
    void anIntrusionThatIsRoundedAwayIsStillANumber() {
        assertThat(EvidenceWords.margin(new LightMargin(-4e-7, false, "", Optional.empty())))
                .isEqualTo("light reaches 0.000 mm in");
        assertThat(EvidenceWords.margin(new LightMargin(-0.0121, false, "", Optional.empty())))
                .isEqualTo("light reaches 0.013 mm in");
    }

    @Test
    void aProofSaysSo() {
        assertThat(words(new Evidence.ProvedDark(1e-6))).isEqualTo("proved dark");
        assertThat(words(new Evidence.DarkBehindFacets(1e-6, Optional.empty())))
                .isEqualTo("dark behind the facets; not proved for the curved surfaces they stand for");
    }

    @Test
    void aClearanceIsRoundedDownAndNamesTheEdgeOnce() {
        LightMargin margin = new LightMargin(
                0.3199, false, "mosaic/die[1,1]/edge/-y, mosaic/die[1,1]/rim/-y", Optional.of(Vector3D.ZERO));
        assertThat(words(new Evidence.ProvedDark(1e-6).with(margin)))
                .isEqualTo("proved dark, clearance 0.319 mm, set by mosaic/die[1,1]/{edge,rim}/-y");
        assertThat(words(new Evidence.ProvedDark(1e-6).with(LightMargin.noLess(20))))
                .isEqualTo("proved dark, clearance at least 20.000 mm");
    }

    @Test
    void lightThatReachesInIsSaidWithTheRay() {
        LightMargin margin = new LightMargin(-0.15, false, "lid/top, walls/inside/+x", Optional.empty());
        Evidence ray = new Evidence.WitnessRay(Vector3D.of(300, 0, 400), Vector3D.ZERO).with(margin);
        assertThat(words(ray))
                .isEqualTo("lit: ray from the pupil at (300, 0, 400) to (0, 0, 0), 500 mm, light reaches 0.150 mm in, "
                        + "set by lid/top, walls/inside/+x");
    }

    @Test
    void aRayCanBeDrawn() {
        // 3-4-5 triangle scaled by 100.
        Evidence ray = new Evidence.WitnessRay(Vector3D.of(300, 0, 400), Vector3D.of(0, 0, 0));
        assertThat(words(ray)).isEqualTo("lit: ray from the pupil at (300, 0, 400) to (0, 0, 0), 500 mm");
    }

    @Test
    void aClearanceThatNoEdgeSetsMayBeLarger() {
        assertThat(EvidenceWords.margin(new LightMargin(0, false, "", Optional.empty())))
                .isEqualTo("clearance at least 0.000 mm, no edge found that sets it");
        assertThat(EvidenceWords.margin(LightMargin.noLess(0.2))).isEqualTo("clearance at least 0.200 mm");
        assertThat(EvidenceWords.margin(new LightMargin(-0.1, false, "", Optional.empty())))
                .isEqualTo("light reaches 0.100 mm in");
    }

    @Test
    void anOpenAreaIsNeitherDarkNorLit() {
        assertThat(words(new Evidence.OpenArea(0.1234, 0.034)))
                .isEqualTo("neither proved dark nor found lit: 0.123 mm2 (3.4 % of its area) left open");
    }

    @Test
    void aShareOfThePupilNamesItsLowestPointAndWhatIsProved() {
        Vector3D point = Vector3D.of(1.068, -39.132, 0);
        assertThat(words(new Evidence.ExactShare(0.9930999, 0.9931234, Optional.of(point))))
                .isEqualTo("least 0.993123 at (1.068, -39.132, 0), exact; nowhere below 0.993099, proved");
        assertThat(words(new Evidence.ExactShare(0, 0.5, Optional.of(point))))
                .isEqualTo("lowest found 0.5 at (1.068, -39.132, 0), exact; no lower bound proved");
        // Two thousandths between the bounds: the point need not be the worst.
        assertThat(words(new Evidence.ExactShare(0.5, 0.502, Optional.of(point))))
                .isEqualTo("lowest found 0.502 at (1.068, -39.132, 0), exact; nowhere below 0.5, proved");
        assertThat(words(new Evidence.ExactShare(0, 0, Optional.of(point))))
                .isEqualTo("nothing of the pupil seen from (1.068, -39.132, 0), exact "
                        + "(covered, in shadow, facing away or outside the field)");
        assertThat(words(new Evidence.ExactShare(0.5, 0.5, Optional.of(point), List.of("lid/wall", "field limit"))))
                .isEqualTo("least 0.5 at (1.068, -39.132, 0), exact; nowhere below 0.5, proved; "
                        + "first in the way there: lid/wall, field limit");
        assertThat(words(Evidence.ExactShare.WHOLE)).isEqualTo("whole pupil seen from every point, proved");
        assertThat(words(Evidence.ExactShare.UNKNOWN)).isEqualTo("not looked at");
    }

    @Test
    void aProvedBoundIsRoundedUpAndZeroIsNone() {
        assertThat(words(new Evidence.ProvedBound(3.0901e-4))).isEqualTo("never more than 3.10e-4, proved");
        assertThat(words(new Evidence.ProvedBound(0))).isEqualTo("proved to get none");
    }

    @Test
    void aMeanStandsBetweenItsBounds() {
        Estimate estimate = new Estimate(1000, 2e-6, 1e-12, 1);
        assertThat(words(new Evidence.Sampled(estimate, 1.2349e-6, 3.4001e-6, 1e-4, 3)))
                .isEqualTo("between 1.23e-6 and 3.41e-6 at 99.9 %, 1,000 samples");
    }

    @Test
    void noLightInTheSamplesGivesAnUpperBoundAndNotZero() {
        Estimate estimate = new Estimate(1_048_576, 0, 0, 1);
        assertThat(words(new Evidence.Sampled(estimate, 0, 2.1e-6, 1e-4, 3)))
                .isEqualTo("no light in 1,048,576 samples: at most 2.10e-6");
    }

    @Test
    void whereNothingCanSendLightNoSampleIsNeeded() {
        assertThat(words(new Evidence.Sampled(Estimate.none(0), 0, 0, 1e-4, 1)))
                .isEqualTo("nothing that reflects can send light there");
    }

    @Test
    void whatWasNotMeasuredIsNotCalledDark() {
        assertThat(words(new Evidence.Sampled(Estimate.none(1), 0, 1, 1e-4, 1)))
                .isEqualTo("not measured: the check ended before its turn (--samples allows more)");
    }

    private static String words(Evidence evidence) {
        return EvidenceWords.of(evidence, 0.999);
    }
}
