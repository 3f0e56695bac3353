package darkrim.shadow;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import darkrim.geom.Ring;
import darkrim.reference.ReferenceCase;
import darkrim.reference.ReferenceCases;
import darkrim.reference.ReferenceScalar;
import darkrim.reference.Validation;
import darkrim.scene.Beam;
import darkrim.scene.Scene;
import darkrim.scene.Surface;
import java.util.List;
import java.util.Optional;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.apache.commons.geometry.euclidean.threed.rotation.QuaternionRotation;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

@ExtendWith(Validation.class)
class MarginsTest {
    private static Margins margins(Scene scene) {
        return new Margins(scene, TestParts.tree(scene));
    }

    private static Margin shadow(Scene scene, String surface) {
        return margins(scene).shadow(scene.surface(surface).orElseThrow());
    }

    private static Margin pupil(Scene scene, String surface) {
        return margins(scene).pupil(scene.surface(surface).orElseThrow());
    }

    /** Rays over the pupil's far rim and an edge at height h and x = 0 land at r h / (H - h). */
    @ParameterizedTest
    @CsvSource({"0, 0.25", "0, 3", "27.3, 0.25", "27.3, 3", "0, -0.4", "27.3, -1.5"})
    void theShadowMarginBehindAKnifeEdgeIsThatOfTheGrazingRay(double turnDegrees, double margin) {
        QuaternionRotation turn = QuaternionRotation.fromAxisAngle(Vector3D.Unit.PLUS_Z, Math.toRadians(turnDegrees));
        double start = 20 * 50 / 150.0 + margin;
        Scene scene = new TestParts()
                .placed(turn::apply)
                .sheet("knife", 0, 90, -90, 90, 50)
                .sheet("face", start, start + 5, -3, 3, 0)
                .build(Beam.of(TestParts.pupilAt(200, Ring.disc(20))));
        Margin found = shadow(scene, "face");
        assertThat(found.millimetres()).isCloseTo(margin, within(1e-6));
        assertThat(found.setBy()).isEqualTo("knife");
        assertThat(found.capped()).isFalse();
        Vector3D end = turn.inverse().apply(found.line().orElseThrow().to());
        assertThat(end.getX()).isCloseTo(20 * 50 / 150.0, within(1e-3));
    }

    /** At the corner of an opening the lit zone ends in an arc: circle of radius r h / (H - h) about the corner's image. */
    @Test
    void theShadowMarginAtTheCornerOfAnOpeningIsTheDistanceFromTheArc() {
        double h = 20;
        double height = 200;
        double scale = height / (height - h);
        double arc = 15 * h / (height - h);
        Scene scene = new TestParts()
                .plate(
                        "lid",
                        new double[] {-90, 90, -90, 90},
                        List.of(new double[] {-10, 10, -10, 10}),
                        new double[][] {{h + 1, 0}, {h, 0}})
                .sheet("face", 12.5, 14, 13, 15, 0)
                .build(Beam.of(TestParts.pupilAt(height, Ring.disc(15))));
        Margin found = shadow(scene, "face");
        double expected = Math.hypot(12.5 - 10 * scale, 13 - 10 * scale) - arc;
        assertThat(found.millimetres()).isCloseTo(expected, within(1e-6));
        assertThat(found.setBy()).contains("lid/opening[0]");
    }

    @ParameterizedTest
    @ValueSource(doubles = {0.1, 2})
    void theDarkClearanceIsTheDistanceFromTheGrazingPlane(double margin) {
        // The plane of the grazing rays runs from the edge of the shadow to the far rim of the pupil, 200 up and 20 to
        // the other side.
        double edge = 20 * 50 / 150.0;
        Scene scene = new TestParts()
                .sheet("knife", 0, 90, -90, 90, 50)
                .sheet("face", edge + margin, edge + margin + 5, -3, 3, 0)
                .build(Beam.of(TestParts.pupilAt(200, Ring.disc(20))));
        Margin clearance = margins(scene).clearance(scene.surface("face").orElseThrow());
        double expected = margin * 200 / Math.hypot(200, edge + 20);
        assertThat(clearance.millimetres()).isCloseTo(expected, within(1e-6));
        assertThat(clearance.capped()).isFalse();
        assertThat(clearance.setBy()).isEqualTo("knife");
        // Nearest to the light is the side of the face at x = edge + margin.
        Vector3D nearest = margins(scene)
                .nearestPoint(
                        scene.surface("face").orElseThrow(),
                        clearance.line().orElseThrow().to());
        assertThat(nearest.getX()).isCloseTo(edge + margin, within(0.02));
    }

    @Test
    void linesOfOneOpeningAreThoseOfTheReferenceCases() {
        for (ReferenceCase reference : ReferenceCases.beginning("I01")) {
            double height = reference.parameter("H");
            double h = reference.parameter("h");
            double a = reference.parameter("a");
            double outer = reference.parameter("outerDieEdge");
            Scene scene = new TestParts()
                    .sheet("lid", a, 200, -200, 200, h)
                    .sheet("die", outer - 3, outer, -3, 3, 0)
                    .sheet("beyond", 60, 61, -3, 3, 0)
                    .build(Beam.of(TestParts.pupilAt(height, Ring.disc(reference.parameter("r")))));
            line(reference, 2, "margin of the seen pupil", pupil(scene, "die").millimetres());
            Margins far = new Margins(scene, TestParts.tree(scene), new ProofSettings(1e-5, 3000, 1e-6), 100);
            double margin = far.shadow(scene.surface("beyond").orElseThrow()).millimetres();
            line(reference, 1, "margin of darkness", 60 - margin);
        }
    }

    @Test
    void linesOfABarAreThoseOfTheReferenceCases() {
        for (ReferenceCase reference : ReferenceCases.beginning("I02")) {
            double b = reference.parameter("barHalfWidth");
            double gap = reference.parameter("gap");
            Scene scene = new TestParts()
                    .sheet("bar", -b, b, -200, 200, reference.parameter("h"))
                    .sheet("die", gap / 2, gap / 2 + 20, -10, 10, 0)
                    .sheet("middle", -0.5, 0.5, -3, 3, 0)
                    .build(Beam.of(TestParts.pupilAt(reference.parameter("H"), Ring.disc(reference.parameter("r")))));
            double[] lines = reference.answers();
            line(reference, 2, "margin of the seen pupil", pupil(scene, "die").millimetres());
            if (lines[1] > 0.5) {
                // Half of the umbra lies beyond either side of the strip.
                line(
                        reference,
                        1,
                        "margin of darkness",
                        0.5 + shadow(scene, "middle").millimetres());
            }
        }
    }

    @Test
    void offCentreAndThickOpeningsLandWhereTheReferenceCasesSay() {
        for (ReferenceCase reference : ReferenceCases.beginning("I03")) {
            double[] lines = reference.answers();
            double xp = reference.parameter("xp");
            Scene scene = new TestParts()
                    .sheet("left", -200, reference.parameter("x1") - xp, -200, 200, reference.parameter("h"))
                    .sheet("right", reference.parameter("x2") - xp, 200, -200, 200, reference.parameter("h"))
                    .sheet("field", -1 - xp, 1 - xp, -1, 1, 0)
                    .sheet("dark-", lines[0] - xp - 4, lines[0] - xp - 2, -1, 1, 0)
                    .sheet("dark+", lines[3] - xp + 2, lines[3] - xp + 4, -1, 1, 0)
                    .build(Beam.of(TestParts.pupilAt(reference.parameter("H"), Ring.disc(reference.parameter("r")))));
            boolean left = -lines[1] < lines[2];
            double nearer = 1 + pupil(scene, "field").millimetres();
            line(reference, left ? 1 : 2, "margin of the seen pupil", left ? -nearer : nearer);
            line(
                    reference,
                    0,
                    "margin of darkness",
                    lines[0] - 2 + shadow(scene, "dark-").millimetres());
            line(
                    reference,
                    3,
                    "margin of darkness",
                    lines[3] + 2 - shadow(scene, "dark+").millimetres());
        }
        for (ReferenceCase reference : ReferenceCases.beginning("I04")) {
            double[] lines = reference.answers();
            double a = reference.parameter("a");
            double h = reference.parameter("h");
            Scene scene = new TestParts()
                    .block("plate", a, 200, -200, 200, h, h + reference.parameter("thickness"))
                    .sheet("field", lines[0] - 5, lines[0] - 1, -1, 1, 0)
                    .sheet("dark", lines[1] + 2, lines[1] + 4, -1, 1, 0)
                    .build(Beam.of(TestParts.pupilAt(reference.parameter("H"), Ring.disc(reference.parameter("r")))));
            line(
                    reference,
                    0,
                    "margin of the seen pupil",
                    lines[0] - 1 + pupil(scene, "field").millimetres());
            line(
                    reference,
                    1,
                    "margin of darkness",
                    lines[1] + 2 - shadow(scene, "dark").millimetres());
        }
    }

    @Test
    void aTiltedBaffleMovesItsLinesAsTheReferenceCasesSay() {
        for (ReferenceCase reference : ReferenceCases.beginning("I05")) {
            double[] tilts = reference.parameters("tiltDeg");
            double a = reference.parameter("a");
            double h = reference.parameter("h");
            for (int i = 0; i < tilts.length; i++) {
                double tilt = Math.toRadians(tilts[i]);
                Vector3D out = Vector3D.of(Math.cos(tilt), 0, Math.sin(tilt));
                Vector3D y = Vector3D.of(0, 200, 0);
                Vector3D middle = Vector3D.of(0, 0, h);
                Vector3D near = middle.add(out.multiply(a));
                Vector3D far = middle.add(out.multiply(100));
                Vector3D nearLeft = middle.subtract(out.multiply(a));
                Vector3D farLeft = middle.subtract(out.multiply(100));
                double[] lines = java.util.Arrays.copyOfRange(reference.answers(), 4 * i, 4 * i + 4);
                Scene scene = new TestParts()
                        .sheet("right", near.subtract(y), far.subtract(y), far.add(y), near.add(y))
                        .sheet("left", farLeft.subtract(y), nearLeft.subtract(y), nearLeft.add(y), farLeft.add(y))
                        .sheet("field", lines[1] + 2, lines[2] - 1, -1, 1, 0)
                        .sheet("dark-", lines[0] - 4, lines[0] - 2, -1, 1, 0)
                        .sheet("dark+", lines[3] + 2, lines[3] + 4, -1, 1, 0)
                        .build(Beam.of(
                                TestParts.pupilAt(reference.parameter("H"), Ring.disc(reference.parameter("r")))));
                line(
                        reference,
                        4 * i + 2,
                        "margin of the seen pupil",
                        lines[2] - 1 + pupil(scene, "field").millimetres());
                line(
                        reference,
                        4 * i,
                        "margin of darkness",
                        lines[0] - 2 + shadow(scene, "dark-").millimetres());
                line(
                        reference,
                        4 * i + 3,
                        "margin of darkness",
                        lines[3] + 2 - shadow(scene, "dark+").millimetres());
            }
        }
    }

    /** A line where light ends or the whole pupil begins to be seen, mm, found by a margin. */
    private static void line(ReferenceCase reference, int index, String way, double got) {
        Validation.requireExact(new ReferenceScalar(reference, index), way, got, 1e-6);
    }

    /**
     * h {@literal <=} N (d - 2t), derived: the overspill of a distant pupil of f-number N reaches h / N beyond the fully lit zone. The pupil
     * is 1e6 mm away; its distance moves the lines by the share h / H of their distance from the axis, so all of them lie near the axis:
     * less than 0.6 mm x 1.6e-6.
     */
    @ParameterizedTest
    @CsvSource({"4, 0.4, 0.1", "2, 0.5, 0.05", "7.1, 0.3, 0.1"})
    void theFeasibilityRuleComesOutForADistantPupil(double fNumber, double d, double t) {
        double h = fNumber * (d - 2 * t);
        double distance = 1e6;
        double radius = distance / (2 * fNumber);
        // The opening is set so that it just does not vignette when it stands t too far in.
        double opening = h / (2 * fNumber) + t;
        for (double shift : new double[] {-t, t}) {
            Scene scene = new TestParts()
                    .sheet("lid", opening + shift, 40, -40, 40, h)
                    .sheet("pixels", -5, 0, -1, 1, 0)
                    .sheet("edge", d, d + 1, -1, 1, 0)
                    .build(Beam.of(TestParts.pupilAt(distance, Ring.disc(radius))));
            assertThat(pupil(scene, "pixels").millimetres()).isCloseTo(t + shift, within(1e-6));
            assertThat(shadow(scene, "edge").millimetres()).isCloseTo(t - shift, within(1e-6));
        }
    }

    @Test
    void theLeastClearanceOfManyIsTheLeastOfEach() {
        Scene scene = MosaicTest.mosaic(18.44, 2.2);
        Margins margins = margins(scene);
        List<Surface> edges = scene.surfaces().stream()
                .filter(surface -> surface.name().matches("mosaic/.*/edge/[+-][xy]"))
                .toList();
        Margins.Least least = margins.leastClearance(edges, () -> false).orElseThrow();
        double expected = edges.stream()
                .mapToDouble(surface -> margins.clearance(surface).millimetres())
                .min()
                .orElseThrow();
        assertThat(least.margin().millimetres()).isCloseTo(expected, within(3e-6));
        assertThat(margins.clearance(least.surface()).millimetres()).isCloseTo(expected, within(3e-6));
        assertThat(margins.leastClearance(edges, () -> true)).isEmpty();
        assertThat(margins.leastClearance(List.of(), () -> false)).isEmpty();
    }

    /** A guess says where to begin, and nothing else: also one that is wrong by far, or names what is not there. */
    @ParameterizedTest
    @ValueSource(doubles = {-3, 0, 0.2, 100})
    void aWrongGuessChangesNoMargin(double guessed) {
        Margins margins = margins(MosaicTest.mosaic(18.44, 2.2));
        Margins wide = margins(MosaicTest.mosaic(19.3, 2.2));
        List<Surface> edges = named(MosaicTest.mosaic(18.44, 2.2), "mosaic/.*/edge/[+-][xy]");
        List<Surface> pixels = named(MosaicTest.mosaic(18.44, 2.2), "mosaic/.*/active");
        List<Surface> lit = edges.stream()
                .filter(surface -> wide.shadow(surface).millimetres() < 0)
                .toList();
        assertThat(lit).hasSizeGreaterThan(1);
        for (Surface first : List.of(edges.get(0), edges.get(edges.size() - 1), pixels.get(pixels.size() - 1))) {
            Optional<MarginGuess> guess = Optional.of(new MarginGuess(first.name(), guessed));
            assertThat(millimetres(margins.leastClearance(edges, guess, () -> false)))
                    .isCloseTo(millimetres(margins.leastClearance(edges, () -> false)), within(2e-6));
            assertThat(millimetres(margins.leastPupil(pixels, guess, () -> false)))
                    .isCloseTo(millimetres(margins.leastPupil(pixels, Optional.empty(), () -> false)), within(1e-7));
            assertThat(millimetres(wide.deepestIntrusion(lit, guess, () -> false)))
                    .isCloseTo(millimetres(wide.deepestIntrusion(lit, () -> false)), within(1e-7));
        }
    }

    private static List<Surface> named(Scene scene, String pattern) {
        return scene.surfaces().stream()
                .filter(surface -> surface.name().matches(pattern))
                .toList();
    }

    private static double millimetres(Optional<Margins.Least> least) {
        return least.orElseThrow().margin().millimetres();
    }

    @Test
    void theLeastPupilMarginOfManyIsTheLeastOfEach() {
        // Seeing all of the pupil, and with the lid so high that none does.
        for (double height : new double[] {2.2, 6}) {
            Scene scene = MosaicTest.mosaic(18.44, height);
            Margins margins = margins(scene);
            List<Surface> pixels = named(scene, "mosaic/.*/active");
            double expected = pixels.stream()
                    .mapToDouble(surface -> margins.pupil(surface).millimetres())
                    .min()
                    .orElseThrow();
            assertThat(millimetres(margins.leastPupil(pixels, Optional.empty(), () -> false)))
                    .as("lid at %s", height)
                    .isCloseTo(expected, within(1e-7));
        }
    }

    @Test
    void aLitSurfaceHasNoClearanceAndItsShadowMarginSaysHowFarLightReachesIn() {
        double edge = 20 * 50 / 150.0;
        Scene scene = new TestParts()
                .sheet("knife", 0, 90, -90, 90, 50)
                .sheet("slightly", edge - 0.04, edge + 5, -3, 3, 0)
                .sheet("deeply", edge - 0.7, edge + 5, -8, -4, 0)
                .build(Beam.of(TestParts.pupilAt(200, Ring.disc(20))));
        Margins margins = margins(scene);
        List<Surface> lit = List.of(
                scene.surface("slightly").orElseThrow(), scene.surface("deeply").orElseThrow());
        assertThat(margins.clearance(lit.get(0)).millimetres()).isZero();
        Margins.Least deepest = margins.deepestIntrusion(lit, () -> false).orElseThrow();
        assertThat(deepest.surface().name()).isEqualTo("deeply");
        assertThat(deepest.margin().millimetres()).isCloseTo(-0.7, within(1e-6));
    }

    @Test
    void theMarginsOfAMosaicNameTheKnifeEdge() {
        Scene scene = MosaicTest.mosaic(18.44, 2.2);
        // The lower edge of the lid's bevels is at z = 2.2, the top of the die's edge at -0.001; the widened face comes
        // to light above the lid.
        Margin margin = shadow(scene, "mosaic/die[1,1]/edge/+x");
        Margin pupil = pupil(scene, "mosaic/die[1,1]/active");
        double clearance = margins(scene)
                .clearance(scene.surface("mosaic/die[1,1]/edge/+x").orElseThrow())
                .millimetres();
        assertThat(margin.millimetres()).isPositive();
        assertThat(margin.setBy()).contains("lid/opening");
        assertThat(pupil.millimetres()).isNegative();
        assertThat(pupil.setBy()).contains("lid/opening[0]");
        // Moved by the way to the edge of the bar, (40.2 / 2 - 18.44) - 0.9, the face comes under the opening.
        assertThat(clearance).isCloseTo(0.76, within(2e-6));
    }
}
