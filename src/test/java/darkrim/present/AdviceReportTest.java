package darkrim.present;

import static org.assertj.core.api.Assertions.assertThat;

import darkrim.diagnostic.Findings;
import darkrim.study.Check;
import darkrim.study.Effort;
import darkrim.study.LayoutFamily;
import darkrim.study.MarginUnit;
import darkrim.study.RequirementMargin;
import darkrim.study.advice.Advice;
import darkrim.study.advice.AdviceSettings;
import darkrim.study.advice.AdviceStudy;
import darkrim.study.advice.SmallestChange;
import darkrim.verdict.Verdict;
import darkrim.verdict.Watch;
import java.nio.charset.StandardCharsets;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;

/** What advice says where margins are bounds, samples are few and dimensions are small. */
class AdviceReportTest {
    private static final String OPENING = """
            beam:
              pupil: {shape: rectangle, width: 40, height: 40, distance: 200}
            parts:
              plate: {kind: plate, size: 400, height: height - 0.001, thickness: 0.001, openings: {shape: rectangle, size: side}}
              strip: {kind: rectangle, width: 10, depth: 4, at: [35, 0, 0]}
            """;
    private static final String PIN = """
            title: A pin beside a slit
            dimensions: {side: 40 mm, height: 50 mm, pin: 35 mm}
            """ + OPENING + """
              post: {kind: tube, inner_diameter: 3, outer_diameter: 4, height: 4, at: [pin, 30, 0]}
            requirements:
              strip-dark: {surfaces: "strip/front", direct: none}
              post-dark: {surfaces: "post/outside", direct: none}
            """;
    private static final String RATIO = """
            title: A small number
            dimensions: {ratio: 0.0041, base: 10000 mm, side: base * ratio, height: 40 mm}
            """ + OPENING + """
            requirements:
              strip-dark: {surfaces: "strip/front", direct: none}
            """;
    private static final String WALL = """
            title: Wall and screen
            dimensions: {gap: 12 mm}
            beam:
              pupil: {shape: disc, diameter: 40, distance: 200}
            finishes:
              grey: {diffuse: 0.1}
            parts:
              screen: {kind: rectangle, width: 10, depth: 10, finish: absorber}
              wall: {kind: block, width: 2, depth: 20, height: 20, at: [gap, 0, 0], turn: {about: y, by: 10}, finish: grey}
            requirements:
              screen-clean: {surfaces: "screen/front", once_reflected: {at_most: LIMIT}}
            """;

    private static LayoutFamily family(String text) throws Exception {
        return LayoutFamily.of("test.yaml", text.getBytes(StandardCharsets.UTF_8));
    }

    private static Advice advice(String text, Optional<Long> samples, String... keep) throws Exception {
        AdviceSettings settings = new AdviceSettings(Set.of(keep), Map.of(), 2, Optional.empty(), samples);
        return new AdviceStudy(family(text), settings, Watch.NONE).run();
    }

    private static String report(Advice advice) {
        return new AdviceReport("1.0", Ink.PLAIN).of(advice);
    }

    @Test
    void aRoundPartWhoseClearanceIsOnlyABoundIsNoHindranceAndItsSlopeIsNotKnown() throws Exception {
        Advice advice = advice(PIN, Optional.empty());
        // The strip is dark up to a side of 35 mm; the post then is, too, and nothing tells by how much.
        assertThat(advice.proposal()).hasValueSatisfying(proposal -> {
            assertThat(proposal.check().judgement().verdict()).isEqualTo(Verdict.PASS);
            assertThat(proposal.margins().get(1).isBound()).isTrue();
        });
        assertThat(advice.slopes())
                .filteredOn(slope -> slope.requirement().equals("post-dark"))
                .hasSize(3)
                .allSatisfy(slope -> assertThat(slope.perUnit()).isNaN());
        assertThat(report(advice))
                .containsPattern("passes\\s+a\\s+full\\s+check")
                .containsPattern("\npost-dark +all +not known\n")
                .containsPattern("It\\s+may\\s+make\\s+all\\s+the\\s+difference");
    }

    @Test
    void theValuesThatArePrintedAreThoseThatPass() throws Exception {
        Advice advice = advice(RATIO, Optional.empty(), "base", "height");
        double ratio = advice.proposal().orElseThrow().values().get("ratio");
        String report = report(advice);
        // (a 200 + 20 * 40) / 160 = 30 at a side of 40 mm.
        assertThat(report).containsPattern("\nratio +0\\.0041 +" + ratio + " +-0\\.000\\d+ ");
        for (SmallestChange change : advice.changes()) {
            assertThat(report).contains(Figures.value(change.to()));
            Findings findings = new Findings();
            Map<String, Double> printed = Map.of("ratio", Double.parseDouble(Figures.value(change.to())));
            assertThat(Check.of(family(RATIO).with(printed, findings), findings, Effort.asAsked(), Watch.NONE)
                            .judgement()
                            .verdict())
                    .isEqualTo(Verdict.PASS);
        }
        assertThat(Figures.change(37, 37.1)).isEqualTo("+0.1");
        assertThat(Figures.change(0.0041, 0.004)).isEqualTo("-0.0001");
        assertThat(Figures.value(1200)).isEqualTo("1200");
    }

    @Test
    void whatOnlyWantsSamplesIsNotMendedByANewValue() throws Exception {
        Advice advice = advice(WALL.replace("LIMIT", "3.9e-3"), Optional.of(1000L));
        assertThat(advice.margins().get(0).verdict()).contains(Verdict.UNDECIDED);
        assertThat(advice.open()).containsExactly("screen-clean");
        assertThat(advice.proposal()).isEmpty();
        assertThat(report(advice))
                .containsPattern("more\\s+samples\\s+decide")
                .containsPattern("screen-clean +holds in a short look\n")
                .doesNotContain("none alone does")
                .doesNotContain("Proposal");
    }

    @Test
    void aBoundIsNeverToldLargerThanItIs() {
        assertThat(AdviceEffects.cell(margin(9.9986e-5, MarginUnit.RELATIVE_IRRADIANCE)))
                .isEqualTo(">= 9.99e-5");
        assertThat(AdviceEffects.cell(margin(0.2796, MarginUnit.MILLIMETRES))).isEqualTo(">= 0.279");
        assertThat(AdviceEffects.cell(margin(-20.0004, MarginUnit.MILLIMETRES))).isEqualTo("<= -20.000");
    }

    private static RequirementMargin margin(double margin, MarginUnit unit) {
        return new RequirementMargin("dark", Optional.of(Verdict.PASS), margin, 0, unit, true, "a", "", "");
    }
}
