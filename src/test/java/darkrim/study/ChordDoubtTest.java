package darkrim.study;

import static org.assertj.core.api.Assertions.assertThat;

import darkrim.diagnostic.Findings;
import darkrim.diagnostic.UnusableInput;
import darkrim.layout.LayoutReader;
import darkrim.layout.LayoutReading;
import darkrim.verdict.Verdict;
import darkrim.verdict.Watch;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A proof on facets counts only with more clearance than their distance from curved surfaces may cost. */
class ChordDoubtTest {
    private static CheckResult check(String mesh, String surfaces) throws UnusableInput {
        return CoarseHood.check(mesh, surfaces, "none");
    }

    /** The chord that the clearance of the shelf is worth: by similar triangles the light behind an edge that is off by t comes nearer by t 200 / 170. */
    private static double mostChord() throws UnusableInput {
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
        return clearance * 170 / 200;
    }

    @Test
    void aClearanceThatTheFacetsMayCostIsNoProof() throws UnusableInput {
        double most = mostChord();
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
    void aLimitOfDirectLightThatOnlyAProofOfDarknessMeetsIsInTheSameDoubt() throws UnusableInput {
        String limit = "{at_most: 1.0e-9}";
        double most = mostChord();
        assertThat(CoarseHood.check("chord: " + most * 0.999, "shelf/outside", limit)
                        .judgement()
                        .verdict())
                .isEqualTo(Verdict.PASS);
        CheckResult beyond = CoarseHood.check("chord: " + most * 1.001, "shelf/outside", limit);
        assertThat(beyond.judgement().verdict()).isEqualTo(Verdict.UNDECIDED);
        assertThat(beyond.warnings()).extracting("code").contains("mesh-tolerance", "within-tolerance");
    }

    /** Numbers beside a verdict must not say that it holds. */
    @Test
    void ofADarknessInDoubtNoNumberIsKnown() throws UnusableInput {
        String limit = "{at_most: 1.0e-3}";
        double most = mostChord();
        CheckResult within = CoarseHood.check("chord: " + most * 0.999, "shelf/outside", limit);
        assertThat(figure(within).value()).isZero();
        assertThat(figure(within).margin()).isEqualTo(1e-3);
        CheckResult beyond = CoarseHood.check("chord: " + most * 1.001, "shelf/outside", limit);
        RequirementFigure figure = figure(beyond);
        assertThat(figure.verdict()).isEqualTo(Verdict.UNDECIDED);
        assertThat(figure.value()).isNaN();
        assertThat(figure.lower()).isNaN();
        assertThat(figure.upper()).isNaN();
        assertThat(figure.margin()).isNaN();
        assertThat(figure.samples()).isEmpty();
        assertThat(RequirementMargin.of(beyond).get(0).margin()).isNaN();
        assertThat(beyond.judgement().requirements().get(0).worst().value()).isNaN();
        assertThat(figure(check("chord: " + most * 1.001, "shelf/outside")).upper())
                .isNaN();
    }

    private static RequirementFigure figure(CheckResult result) {
        return new FigureReading(result, MarginScope.NONE).all().get(0);
    }

    /** What fails is not called undecided, and what is named is what is in doubt, not what is lit. */
    @Test
    void aDoubtBesideAFailureIsNamedAsSuch() throws UnusableInput {
        CheckResult result = check("chord: 30", "{shelf/outside,hood/**}");
        assertThat(result.judgement().verdict()).isEqualTo(Verdict.FAIL);
        String message = result.warnings().stream()
                .filter(each -> each.code().equals("within-tolerance"))
                .findFirst()
                .orElseThrow()
                .message();
        assertThat(message)
                .startsWith("requirement dark fails, and there is a doubt besides: ")
                .doesNotContain("not decided");
        String named = message.replaceFirst(".*besides: ", "").replaceFirst(" is dark.*", "");
        assertThat(result.judgement().requirements().get(0).outcomes())
                .filteredOn(outcome -> outcome.surface().name().equals(named))
                .singleElement()
                .matches(outcome -> outcome.isDarknessInDoubt());
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

    /** A plate with a hole of radius 10 mm in twelve sides: they turn by 30 deg, so that none of its faces looks curved. */
    private static String coarsePlate() {
        StringBuilder text = new StringBuilder("solid a\n");
        for (int i = 0; i < 12; i++) {
            String[][] at = new String[2][4];
            for (int end = 0; end < 2; end++) {
                double angle = 2 * Math.PI * (i + end) / 12;
                for (int k = 0; k < 4; k++) {
                    double radius = k < 2 ? 10 : 30;
                    at[end][k] =
                            "vertex " + radius * Math.cos(angle) + " " + radius * Math.sin(angle) + " " + k % 2 + "\n";
                }
            }
            // Around the profile: inside below, inside above, outside above, outside below.
            int[] around = {0, 1, 3, 2};
            for (int k = 0; k < 4; k++) {
                int from = around[k];
                int to = around[(k + 1) % 4];
                for (String[] facet :
                        new String[][] {{at[0][from], at[1][to], at[1][from]}, {at[0][from], at[0][to], at[1][to]}}) {
                    text.append("facet normal 0 0 0\nouter loop\n" + String.join("", facet) + "endloop\nendfacet\n");
                }
            }
        }
        return text.append("endsolid a\n").toString();
    }

    @Test
    void aToleranceThatIsStatedCountsThoughNoFaceLooksCurved(@TempDir Path folder) throws Exception {
        Files.writeString(folder.resolve("plate.stl"), coarsePlate());
        // Light reaches 0.5 mm beyond an edge: to 10.2 mm past the middle of a side, to 10.5 past the true edge; the
        // wire
        // begins at 10.3.
        String text = """
                title: t
                beam: {pupil: {shape: disc, diameter: 10, distance: 300}}
                parts:
                  plate: {kind: mesh, file: plate.stl, unit: mm, %s at: [0, 0, 10]}
                  wire: {kind: block, width: 1, depth: 1, height: 0.1, at: [0, 10.8, 0]}
                requirements: {dark: {surfaces: wire/+z, direct: none}}
                """;
        assertThat(verdict(folder, text.formatted("turn: {about: z, by: 15},"))).isEqualTo(Verdict.PASS);
        assertThat(verdict(folder, text.formatted("turn: {about: z, by: 15}, chord: 0.35,")))
                .isEqualTo(Verdict.UNDECIDED);
    }

    private static Verdict verdict(Path folder, String text) throws UnusableInput {
        LayoutReading reading =
                LayoutReader.read(folder.resolve("l.yaml").toString(), text.getBytes(StandardCharsets.UTF_8));
        assertThat(reading.findings()).isEmpty();
        return Check.of(
                        reading.layout().orElseThrow(),
                        new Findings(),
                        new Effort(2, Optional.empty(), Optional.of(0L), MarginScope.NONE),
                        Watch.NONE)
                .judgement()
                .verdict();
    }
}
