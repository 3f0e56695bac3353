package darkrim.study;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import darkrim.assembly.Assembly;
import darkrim.diagnostic.Findings;
import darkrim.layout.Layout;
import darkrim.scene.SceneFactory;
import darkrim.verdict.Verdict;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Test;

/** Layouts with some dimensions at other values. */
class PointCheckTest {
    private static final Path B = Path.of("geometries/nightglow-b.yaml");

    private static PointCheck check() throws Exception {
        return new PointCheck(LayoutFamily.of(B), Optional.empty(), 16);
    }

    private static double[] corners(Layout layout) {
        return SceneFactory.of(layout, Assembly.of(layout, new Findings())).copyCorners();
    }

    @Test
    void theLayoutAsWrittenIsTheSameWhenItsValuesAreChosen() throws Exception {
        LayoutFamily family = LayoutFamily.of(B);
        Layout chosen = family.with(Map.of("opening", 37.0, "wall_tilt", 4.0), new Findings());
        assertThat(corners(chosen)).isEqualTo(corners(family.written()));
        assertThat(chosen.source().sha256()).isEqualTo(family.written().source().sha256());
    }

    @Test
    void aFormulaFollowsWhatItIsReckonedFrom() throws Exception {
        LayoutFamily family = LayoutFamily.of(B);
        Layout higher = family.with(Map.of("lid_height", 2.0), new Findings());
        // edge_height: lid_height + lid_thickness = 2.0 + 0.8
        assertThat(higher.dimensions().get("edge_height").value()).isEqualTo(2.8);
        Layout set = family.with(Map.of("edge_height", 3.0), new Findings());
        assertThat(set.dimensions().get("edge_height").value()).isEqualTo(3.0);
        assertThat(set.dimensions().get("lid_height").value()).isEqualTo(1.6);
    }

    @Test
    void aDimensionInAnotherUnitTakesMillimetres() throws Exception {
        String text = Files.readString(B).replace("value: 37.00 mm", "value: 3.7 cm");
        LayoutFamily family = LayoutFamily.of("centimetres.yaml", text.getBytes(StandardCharsets.UTF_8));
        Layout inMillimetres = LayoutFamily.of(B).with(Map.of("opening", 37.5), new Findings());
        assertThat(corners(family.with(Map.of("opening", 37.5), new Findings())))
                .isEqualTo(corners(inMillimetres));
    }

    @Test
    void theVerdictIsThatOfACheck() throws Exception {
        PointResult result = check().at(Map.of());
        assertThat(result.verdict()).contains(Verdict.PASS);
        assertThat(result.figures())
                .hasSize(8)
                .allSatisfy(figure -> assertThat(figure.verdict()).isEqualTo(Verdict.PASS));
    }

    @Test
    void aWiderOpeningLightsTheEdges() throws Exception {
        PointResult result = check().at(Map.of("opening", 38.8));
        assertThat(result.verdict()).contains(Verdict.FAIL);
        assertThat(result.figure("edges-dark").orElseThrow().verdict()).isEqualTo(Verdict.FAIL);
    }

    @Test
    void aLayoutThatCannotBeIsAResultWithItsReason() throws Exception {
        PointResult result = check().at(Map.of("opening", -1.0));
        assertThat(result.verdict()).isEmpty();
        assertThat(result.impossible()).contains("nightglow-b.yaml:").contains("opening");
    }

    @Test
    void aPointHasTheSameBitsInAnyThread() throws Exception {
        PointCheck check = check();
        Map<String, Double> chosen = Map.of("wall_tilt", 2.0);
        PointResult alone = check.at(chosen);
        assertThat(IntStream.range(0, 4).parallel().mapToObj(i -> check.at(chosen)))
                .allMatch(alone::equals);
    }

    @Test
    void aShiftedPartStandsWhereItWouldIfItWereDrawnThere() throws Exception {
        LayoutFamily family = LayoutFamily.of(B);
        PartOffset offset = new PartOffset(Vector3D.of(0.25, -0.5, 0), Vector3D.ZERO);
        Layout shifted = family.with(Map.of(), Map.of("lid", offset), new Findings());
        String text = Files.readString(B).replace("  lid:\n", "  lid:\n    at: [0.25, -0.5, 0]\n");
        LayoutFamily drawn = LayoutFamily.of("drawn.yaml", text.getBytes(StandardCharsets.UTF_8));
        assertThat(corners(shifted)).isEqualTo(corners(drawn.written())).isNotEqualTo(corners(family.written()));
    }

    @Test
    void aTiltedPartTurnsAboutItsOwnOrigin() throws Exception {
        String text = Files.readString(B).replace("  lid:\n", "  lid:\n    at: [3, 5, 0]\n");
        String turned = text.replace("    at: [3, 5, 0]\n", "    at: [3, 5, 0]\n    turn: {about: z, by: 2}\n");
        LayoutFamily family = LayoutFamily.of("a.yaml", text.getBytes(StandardCharsets.UTF_8));
        LayoutFamily drawn = LayoutFamily.of("b.yaml", turned.getBytes(StandardCharsets.UTF_8));
        PartOffset offset = new PartOffset(Vector3D.ZERO, Vector3D.of(0, 0, 2));
        Layout tilted = family.with(Map.of(), Map.of("lid", offset), new Findings());
        assertThat(corners(tilted)).containsExactly(corners(drawn.written()), within(1e-12));
    }

    @Test
    void aPartThatDoesNotExistIsAMistakeOfTheCaller() {
        assertThatThrownBy(() -> check().at(Map.of(), Map.of("no_such", PartOffset.NONE)))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("no_such");
    }

    @Test
    void anUnknownDimensionIsAMistakeOfTheCaller() {
        assertThatThrownBy(() -> check().at(Map.of("no_such", 1.0)))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("no_such");
    }

    /** The post ends 2 mm below the lid; what is asked goes with a dimension, not with what the file has for it. */
    @Test
    void aMarginIsThatOfWhatIsAskedWithTheChosenValues() throws Exception {
        String text = """
                title: t
                dimensions: {gap: 1}
                beam: {pupil: {shape: disc, diameter: 10, distance: 200}}
                parts:
                  lid:  {kind: plate, size: [40, 40], height: 5, thickness: 1}
                  post: {kind: block, width: 2, depth: 2, height: 3, at: [6, 0, 0]}
                requirements:
                  apart: {between: [lid, post], clearance: {at_least: gap}}
                """;
        LayoutFamily family = LayoutFamily.of("t.yaml", text.getBytes(StandardCharsets.UTF_8));
        PointCheck check = new PointCheck(family, Optional.empty(), PointSettings.values(1, MarginScope.REQUIREMENTS));
        for (double gap : new double[] {1, 1.5, 3}) {
            RequirementMargin alone = check.margin(Map.of("gap", gap), Map.of(), "apart");
            assertThat(alone.margin()).isEqualTo(2 - gap);
            assertThat(alone.verdict()).hasValue(gap <= 2 ? Verdict.PASS : Verdict.FAIL);
            assertThat(check.at(Map.of("gap", gap)).margins()).containsExactly(alone);
        }
    }
}
