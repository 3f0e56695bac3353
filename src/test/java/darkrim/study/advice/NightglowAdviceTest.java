package darkrim.study.advice;

import static org.assertj.core.api.Assertions.assertThat;

import darkrim.diagnostic.Findings;
import darkrim.study.Check;
import darkrim.study.Effort;
import darkrim.study.LayoutFamily;
import darkrim.study.MarginScope;
import darkrim.verdict.Verdict;
import darkrim.verdict.Watch;
import java.nio.file.Path;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledIfSystemProperty;

/**
 * The first drawing of the shipped layout and its repair by advice; with -Dlong=true. Every build runs the same advice on the jar, as docs/advise.md
 * shows it, and {@link AdviceStudyTest} does this on small layouts.
 */
@EnabledIfSystemProperty(named = "long", matches = "true")
class NightglowAdviceTest {
    @Test
    void theProposalAppliedToTheFailingRevisionMakesItPass() throws Exception {
        LayoutFamily family = LayoutFamily.of(Path.of("geometries/nightglow-a.yaml"));
        AdviceSettings settings = new AdviceSettings(
                Set.of("pupil_distance", "die_spacing", "wall_tilt"),
                Map.of(),
                Runtime.getRuntime().availableProcessors(),
                Optional.empty(),
                Optional.empty());
        Advice advice = new AdviceStudy(family, settings, Watch.NONE).run();
        assertThat(advice.wanting())
                .extracting(figure -> figure.requirement())
                .containsExactly("edges-dark", "ledges-dark", "carriers-dark", "pixels-clean");
        Map<String, Double> values = advice.proposal().orElseThrow().values();
        Findings findings = new Findings();
        assertThat(Check.of(
                                family.with(values, findings),
                                findings,
                                Effort.asAsked().with(MarginScope.NONE),
                                Watch.NONE)
                        .judgement()
                        .verdict())
                .isEqualTo(Verdict.PASS);
        // Feasibility without placement error: the upper edge of the lid stays below N d = 320 / 45 * 0.67 mm.
        double edge = values.getOrDefault("lid_height", 3.8) + values.getOrDefault("lid_thickness", 1.2);
        assertThat(edge).isLessThan(320 / 45.0 * 0.67);
    }
}
