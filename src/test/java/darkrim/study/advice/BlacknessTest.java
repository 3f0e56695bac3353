package darkrim.study.advice;

import static org.assertj.core.api.Assertions.assertThat;

import darkrim.diagnostic.Findings;
import darkrim.study.Check;
import darkrim.study.CheckResult;
import darkrim.study.Effort;
import darkrim.study.LayoutFamily;
import darkrim.verdict.Verdict;
import darkrim.verdict.Watch;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** How black a finish must be, against checks with the finish changed. */
class BlacknessTest {
    /** A lit wall beside a screen. */
    private static final String TEXT = """
            title: Wall and screen
            beam:
              pupil: {shape: disc, diameter: 40, distance: 200}
            finishes:
              grey: {diffuse: 0.1}
            parts:
              screen: {kind: rectangle, width: 10, depth: 10}
              wall: {kind: block, width: 2, depth: 20, height: 20, at: [12, 0, 0], turn: {about: y, by: 10}, finish: grey}
            requirements:
              screen-clean: {surfaces: "screen/front", once_reflected: {at_most: 2.0e-3}}
            """;

    private static CheckResult check(String text) throws Exception {
        LayoutFamily family = LayoutFamily.of("wall.yaml", text.getBytes(StandardCharsets.UTF_8));
        Findings findings = new Findings();
        return Check.of(family.with(Map.of(), findings), findings, Effort.asAsked(), Watch.NONE);
    }

    @Test
    void aLimitIsMetJustBelowTheReflectanceAndBrokenJustAboveIt() throws Exception {
        List<Blackness> all = Blackness.of(check(TEXT));
        assertThat(all).hasSize(1);
        Blackness black = all.get(0);
        assertThat(black.finish()).isEqualTo("grey");
        assertThat(black.low()).isLessThan(black.most());
        assertThat(black.high()).isGreaterThan(black.most());
        assertThat(black.high()).isLessThan(1);
        // Three standard errors either way, and a tenth for the sampling of the check itself.
        String below = TEXT.replace("diffuse: 0.1", "diffuse: " + 0.9 * black.low());
        String above = TEXT.replace("diffuse: 0.1", "diffuse: " + 1.1 * black.high());
        assertThat(check(below).judgement().verdict()).isEqualTo(Verdict.PASS);
        assertThat(check(above).judgement().verdict()).isEqualTo(Verdict.FAIL);
    }
}
