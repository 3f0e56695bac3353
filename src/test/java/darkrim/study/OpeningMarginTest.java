package darkrim.study;

import static org.assertj.core.api.Assertions.assertThat;

import darkrim.assembly.Assembly;
import darkrim.diagnostic.Findings;
import darkrim.diagnostic.UnusableInput;
import darkrim.layout.Layout;
import darkrim.layout.LayoutReader;
import darkrim.layout.LayoutReading;
import darkrim.scene.Scene;
import darkrim.scene.SceneFactory;
import darkrim.scene.Surface;
import darkrim.shadow.FullyLitProof;
import darkrim.shadow.OpeningMargin;
import darkrim.shadow.OpeningMargin.Extent;
import darkrim.shadow.OpeningMargin.Room;
import darkrim.shadow.ProofSettings;
import darkrim.trace.FacetTree;
import darkrim.verdict.Verdict;
import darkrim.verdict.Watch;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

/** Margins of an opening against layouts in which the opening is drawn that much larger or smaller: read, built and proved anew. */
class OpeningMarginTest {
    private static final double MICROMETRE = 1e-3;
    private static final Effort FEW = new Effort(2, Optional.empty(), Optional.of(1000L));

    /** A rectangular opening by its four sides, over a detector with its middle at the origin. */
    private record Sides(double left, double right, double low, double high) {
        Sides moved(List<String> names, double by) {
            return new Sides(
                    left - (names.contains("-x") ? by : 0),
                    right + (names.contains("+x") ? by : 0),
                    low - (names.contains("-y") ? by : 0),
                    high + (names.contains("+y") ? by : 0));
        }
    }

    private static String text(String knifeEdge, String pupil, double height, Sides sides) {
        return String.format(
                Locale.ROOT,
                """
                title: One die behind one opening
                beam:
                  pupil: %s
                parts:
                  detector:
                    kind: detectors
                    pixels: 1000
                    pixel_pitch: 0.01
                    die: {margin: 0.5, thickness: 0.2}
                    readout: {ledge: 1, thickness: 0.5}
                    carrier: {margin: 2, thickness: 2}
                  lid:
                    kind: plate
                    diameter: 60
                    height: %.17g
                    thickness: 0.8
                    openings: {shape: rectangle, size: [%.17g, %.17g], centre: [%.17g, %.17g]%s}
                requirements:
                  edges-dark: {surfaces: "detector/die/edge/*", direct: none}
                """,
                pupil,
                height,
                sides.right - sides.left,
                sides.high - sides.low,
                (sides.left + sides.right) / 2,
                (sides.low + sides.high) / 2,
                knifeEdge);
    }

    private static Layout layout(String text) {
        LayoutReading reading = LayoutReader.read("opening.yaml", text.getBytes(StandardCharsets.UTF_8));
        assertThat(reading.findings()).isEmpty();
        return reading.layout().orElseThrow();
    }

    private static CheckResult check(String text) throws UnusableInput {
        return Check.of(layout(text), new Findings(), FEW, Watch.NONE);
    }

    private static Verdict verdict(String text) throws UnusableInput {
        Effort effort = new Effort(2, Optional.empty(), Optional.of(1000L), MarginScope.NONE);
        return Check.of(layout(text), new Findings(), effort, Watch.NONE)
                .judgement()
                .verdict();
    }

    private static boolean seesAll(String text) {
        Layout layout = layout(text);
        Scene scene = SceneFactory.of(layout, Assembly.of(layout, new Findings()));
        FacetTree tree = FacetTree.build(scene.copyCorners(), scene.copyPlanes(), scene.bound());
        Surface active = scene.surface("detector/die/active").orElseThrow();
        return new FullyLitProof(scene, tree, new ProofSettings(1e-5, 3000, 1e-6))
                .of(active)
                .proved();
    }

    private static void tryByRedrawing(CheckResult result, Sides sides, Redraw redraw) throws UnusableInput {
        assertThat(result.margins().openings()).hasSize(9);
        for (OpeningMargin margin : result.margins().openings()) {
            Room outward = margin.outward().orElseThrow();
            String what = margin + " of " + redraw.text(sides);
            assertThat(outward.atLeast()).as(what).isFalse();
            double out = outward.millimetres();
            assertThat(verdict(redraw.text(sides.moved(margin.sides(), out - MICROMETRE))))
                    .as(what)
                    .isEqualTo(Verdict.PASS);
            assertThat(verdict(redraw.text(sides.moved(margin.sides(), out + MICROMETRE))))
                    .as(what)
                    .isEqualTo(Verdict.FAIL);
            double in = margin.inward().orElseThrow().millimetres();
            assertThat(seesAll(redraw.text(sides.moved(margin.sides(), -(in - MICROMETRE)))))
                    .as(what)
                    .isTrue();
            assertThat(seesAll(redraw.text(sides.moved(margin.sides(), -(in + MICROMETRE)))))
                    .as(what)
                    .isFalse();
        }
    }

    /** Writes a layout with the opening elsewhere. */
    private interface Redraw {
        String text(Sides sides);
    }

    @Test
    void anOpeningMovedByItsMarginLessAMicrometreKeepsTheProofAndAMicrometreMoreLosesIt() throws UnusableInput {
        Sides sides = new Sides(-5.2, 5.22, -5.21, 5.23);
        Redraw redraw = moved -> text(
                ", knife_edge: {land: 0.05, bevel: 30, toward: pupil}",
                "{shape: disc, diameter: 40, distance: 320}",
                0.8,
                moved);
        tryByRedrawing(check(redraw.text(sides)), sides, redraw);
    }

    /** Openings of all kinds, nine margins each. */
    @Test
    void openingsMadeByChanceKeepTheirMargins() throws UnusableInput {
        SplittableRandom random = new SplittableRandom(11);
        int tried = 0;
        for (int i = 0; i < 12; i++) {
            String knifeEdge = List.of(
                            "",
                            ", knife_edge: {land: 0.1, bevel: 20, toward: pupil}",
                            ", knife_edge: {land: 0.02, bevel: 35, toward: detector}")
                    .get(random.nextInt(3));
            String pupil = List.of(
                            "{shape: disc, diameter: 30, distance: 320}",
                            "{shape: disc, diameter: 24, hole: 6, distance: 250, shift: [3, -2]}",
                            "{shape: rectangle, width: 30, height: 18, distance: 300}",
                            "{shape: disc, diameter: 30, distance: 320, tilt: [8, -5]}")
                    .get(random.nextInt(4));
            double height = 0.3 + 0.6 * random.nextDouble();
            Sides sides = new Sides(
                    -5.15 - 0.08 * random.nextDouble(),
                    5.15 + 0.08 * random.nextDouble(),
                    -5.15 - 0.08 * random.nextDouble(),
                    5.15 + 0.08 * random.nextDouble());
            Redraw redraw = moved -> text(knifeEdge, pupil, height, moved);
            CheckResult result = check(redraw.text(sides));
            if (result.judgement().verdict() == Verdict.PASS) {
                tried++;
                tryByRedrawing(result, sides, redraw);
            }
        }
        assertThat(tried).isGreaterThan(6);
    }

    /** An edge of a die that is lit becomes dark when the opening is made smaller by what its margin says. */
    @Test
    void anOpeningThatIsTooLargeIsMendedByItsNegativeMargin() throws UnusableInput {
        Sides sides = new Sides(-5.4, 5.6, -5.4, 5.4);
        Redraw redraw = moved -> text("", "{shape: disc, diameter: 40, distance: 320}", 0.8, moved);
        CheckResult result = check(redraw.text(sides));
        assertThat(result.judgement().verdict()).isEqualTo(Verdict.FAIL);
        OpeningMargin whole = result.margins().openings().stream()
                .filter(margin -> margin.extent() == Extent.WHOLE)
                .findFirst()
                .orElseThrow();
        double out = whole.outward().orElseThrow().millimetres();
        assertThat(out).isNegative();
        assertThat(verdict(redraw.text(sides.moved(whole.sides(), out - MICROMETRE))))
                .isEqualTo(Verdict.PASS);
        assertThat(verdict(redraw.text(sides.moved(whole.sides(), out + MICROMETRE))))
                .isEqualTo(Verdict.FAIL);
    }

    /** Above a ledge the lid leaves the last of the work to the die: what is proved is less than what is true, and says so. */
    @Test
    void whereNoRayConfirmsTheLimitTheMarginIsALowerBound() throws UnusableInput {
        Sides sides = new Sides(-5.2, 5.22, -5.21, 5.23);
        String edges = "edges-dark: {surfaces: \"detector/die/edge/*\"";
        Redraw redraw = moved -> text("", "{shape: disc, diameter: 40, distance: 320}", 1.55, moved)
                .replace(edges, "ledges-dark: {surfaces: \"detector/die/ledge/*\"");
        OpeningMargin side = check(redraw.text(sides)).margins().openings().get(0);
        assertThat(side.sides()).containsExactly("-y");
        Room room = side.outward().orElseThrow();
        assertThat(room.atLeast()).isTrue();
        assertThat(room.surface()).isEqualTo("detector/die/ledge/-y");
        // True limit: the line from the far rim of the pupil, 20 mm, past the lid to the edge of the die at 5.5 mm.
        double limit = (5.5 * (320 - 1.55) - 20 * 1.55) / 320 - 5.21;
        assertThat(room.millimetres()).isBetween(limit - 0.02, limit);
        assertThat(verdict(redraw.text(sides.moved(side.sides(), room.millimetres() - MICROMETRE))))
                .isEqualTo(Verdict.PASS);
    }

    @Test
    void aRoundOpeningIsMovedAsAWhole() throws UnusableInput {
        String round = text("", "{shape: disc, diameter: 40, distance: 320}", 0.8, new Sides(-7, 7, -7, 7))
                .replaceAll("openings: .*", "openings: {shape: disc, diameter: 14.6}")
                .replace("margin: 0.5, thickness: 0.2", "margin: 3, thickness: 0.2");
        List<OpeningMargin> margins = check(round).margins().openings();
        assertThat(margins).hasSize(1);
        assertThat(margins.get(0).sides()).isEmpty();
        // The edge of the die faces outward at x = 8: light grazes it as soon as the opening reaches beyond it. The
        // corners of the
        // polygon around the opening lie farther out than the circle, by less than 2e-3 mm.
        assertThat(margins.get(0).outward().orElseThrow().millimetres()).isBetween(8 - 7.3 - 2e-3, 8 - 7.3);
    }
}
