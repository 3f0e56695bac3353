package darkrim.study;

import static org.assertj.core.api.Assertions.assertThat;

import darkrim.diagnostic.Findings;
import darkrim.diagnostic.UnusableInput;
import darkrim.layout.LayoutReader;
import darkrim.layout.LayoutReading;
import darkrim.verdict.Verdict;
import darkrim.verdict.Watch;
import java.nio.charset.StandardCharsets;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** A proof on facets counts only with more clearance than their distance from curved surfaces may cost. */
class ChordDoubtTest {
    /** A shelf below a mesh whose top is 170 mm below the pupil; the shelf's underside is 200 mm below it. */
    private static CheckResult check(String chord, String surfaces) throws UnusableInput {
        String text = """
                title: t
                finishes: {black: {diffuse: 0.04}}
                beam: {pupil: {shape: disc, diameter: 30, distance: 200}}
                parts:
                  shelf: {kind: tube, inner_diameter: 42, outer_diameter: 46, base: 0, height: 1, finish: black}
                  hood: {kind: mesh, file: hood.stl, unit: mm, %s, finish: black}
                requirements: {dark: {surfaces: "%s", direct: none}}
                """.formatted(chord, surfaces);
        LayoutReading reading = LayoutReader.read("geometries/step/l.yaml", text.getBytes(StandardCharsets.UTF_8));
        assertThat(reading.findings()).isEmpty();
        return Check.of(
                reading.layout().orElseThrow(),
                new Findings(),
                new Effort(2, Optional.empty(), Optional.of(0L), MarginScope.NONE),
                Watch.NONE);
    }

    @Test
    void aClearanceThatTheFacetsMayCostIsNoProof() throws UnusableInput {
        double clearance = check("chord: 0.01", "shelf/outside")
                .judgement()
                .requirements()
                .get(0)
                .leastMargin()
                .orElseThrow()
                .evidence()
                .margin()
                .orElseThrow()
                .millimetres();
        // By similar triangles the light behind an edge that is off by t comes nearer by t 200 / 170.
        double most = clearance * 170 / 200;
        CheckResult within = check("chord: " + most * 0.999, "shelf/outside");
        assertThat(within.judgement().verdict()).isEqualTo(Verdict.PASS);
        assertThat(within.warnings())
                .extracting("code")
                .contains("mesh-tolerance")
                .doesNotContain("within-tolerance");
        CheckResult beyond = check("chord: " + most * 1.001, "shelf/outside");
        assertThat(beyond.judgement().verdict()).isEqualTo(Verdict.UNDECIDED);
        assertThat(beyond.warnings()).extracting("code").contains("mesh-tolerance", "within-tolerance");
    }

    @Test
    void aCurvedFaceThatAllButFacesThePupilIsNotProvedDarkByItsFacets() throws UnusableInput {
        // The wall stands upright, 11 mm beside the pupil at 170 to 186 mm: so the pupil is 3.3 deg behind them; facets
        // turn by 3 deg.
        String wall = "hood/outside[0,0,22]";
        assertThat(check("chord: 0.01", wall).judgement().verdict()).isEqualTo(Verdict.UNDECIDED);
        // Facets that turn by less against each other leave no doubt, unless the chord is wide.
        assertThat(check("chord: 0.01, crease: 3.1", wall).judgement().verdict())
                .isEqualTo(Verdict.PASS);
    }

    @Test
    void withoutCurvedFacesOrAToleranceNothingIsTakenBack() throws UnusableInput {
        CheckResult unstated = check("crease: 20", "shelf/outside");
        assertThat(unstated.judgement().verdict()).isEqualTo(Verdict.PASS);
        assertThat(unstated.warnings())
                .extracting("code")
                .contains("mesh-chord")
                .doesNotContain("mesh-tolerance");
    }
}
