package darkrim.assembly;

import static org.assertj.core.api.Assertions.assertThat;

import darkrim.diagnostic.Finding;
import darkrim.diagnostic.Findings;
import darkrim.layout.Layout;
import darkrim.layout.LayoutReader;
import darkrim.layout.Part;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.junit.jupiter.api.Test;

class FinishCheckTest {
    private static final String LIMIT = "once_reflected: {at_most: 1e-3}";

    private static Layout layout(String floor, String rules, String condition) {
        String text = """
                title: Floor and bars
                beam: {pupil: {shape: disc, diameter: 10, distance: 100}}
                finishes: {black: {diffuse: 0.04}}
                finish_rules: [%s]
                parts:
                  floor: {kind: rectangle, width: 20, depth: 20%s}
                  bar: {kind: block, width: 1, depth: 1, height: 1, at: [0, 0, 5], repeat: {count: [2, 1], step: [4, 0]}, finish: black}
                requirements:
                  floor-clean: {surfaces: floor/front, %s}
                """.formatted(rules, floor, condition);
        var reading = LayoutReader.read("case.yaml", text.getBytes(StandardCharsets.UTF_8));
        assertThat(reading.findings()).isEmpty();
        return reading.layout().orElseThrow();
    }

    private static List<String> findings(String floor, String rules, String condition) {
        Findings findings = new Findings();
        Assembly.of(layout(floor, rules, condition), findings);
        return findings.sorted().stream().map(Finding::toString).toList();
    }

    @Test
    void aForgottenFinishIsAWarningWhereReflectedLightIsLimited() {
        assertThat(findings("", "", LIMIT))
                .containsExactly(
                        "case.yaml:6:3: warning: part 'floor' states no finish, so floor/front and 1 more reflect nothing,"
                                + " yet once-reflected light is asked for, expected a finish, or 'finish: absorber' where nothing is"
                                + " meant [no-finish]");
    }

    @Test
    void aFinishThatAbsorbsOnPurposeIsNone() {
        assertThat(findings(", finish: absorber", "", LIMIT)).isEmpty();
        assertThat(findings(", finish: black", "", LIMIT)).isEmpty();
    }

    @Test
    void aRuleForAllSurfacesOfThePartIsEnoughAndOneForSomeIsNot() {
        assertThat(findings("", "{surfaces: 'floor/*', finish: black}", LIMIT)).isEmpty();
        assertThat(findings("", "{surfaces: 'floor/*', finish: absorber}", LIMIT))
                .isEmpty();
        assertThat(findings("", "{surfaces: floor/front, finish: black}", LIMIT))
                .singleElement()
                .asString()
                .contains("so floor/back reflects nothing");
    }

    @Test
    void whereNobodyAsksForReflectedLightItDoesNotMatter() {
        assertThat(findings("", "", "direct: {at_most: 2}")).isEmpty();
    }

    @Test
    void whereThereAreErrorsAForgottenFinishMayBeAMisspeltKey() {
        String text = """
                title: Floor
                beam: {pupil: {shape: disc, diameter: 10, distance: 100}}
                finishes: {black: {diffuse: 0.04}}
                parts:
                  floor: {kind: rectangle, width: 20, depth: 20, finsh: black}
                requirements:
                  floor-clean: {surfaces: floor/front, %s}
                """.formatted(LIMIT);
        var reading = LayoutReader.read("case.yaml", text.getBytes(StandardCharsets.UTF_8));
        Findings findings = new Findings();
        findings.addAll(reading.findings());
        Assembly.of(reading.layout().orElseThrow(), findings);
        assertThat(findings.sorted())
                .extracting(Finding::code)
                .as(findings.sorted().toString())
                .containsExactly("unknown-key");
    }

    @Test
    void theLayoutTellsAFinishNotStatedFromOneThatAbsorbs() {
        assertThat(layout("", "", LIMIT).parts().get(0).finish()).isEmpty();
        assertThat(layout(", finish: absorber", "", LIMIT).parts().get(0).finish())
                .contains(Part.NO_FINISH);
    }
}
