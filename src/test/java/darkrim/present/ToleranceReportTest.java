package darkrim.present;

import static org.assertj.core.api.Assertions.assertThat;

import com.networknt.schema.InputFormat;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import darkrim.present.json.JsonResult;
import darkrim.study.LayoutFamily;
import darkrim.study.MarginUnit;
import darkrim.study.RequirementMargin;
import darkrim.study.journal.StudyRecord;
import darkrim.study.tolerance.Build;
import darkrim.study.tolerance.EdgeLayout;
import darkrim.study.tolerance.ToleranceResult;
import darkrim.study.tolerance.ToleranceSettings;
import darkrim.study.tolerance.Tolerances;
import darkrim.verdict.Verdict;
import darkrim.verdict.Watch;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** What reports, tables and documents say of tolerance studies whose builds say something else than the drawn layout. */
class ToleranceReportTest {
    private static ToleranceResult study(LayoutFamily family, int builds) throws Exception {
        ToleranceSettings settings = new ToleranceSettings(builds, Optional.empty(), true, Optional.of(1L), 1);
        return Tolerances.run(family, settings, StudyRecord.none(), Watch.NONE, 2);
    }

    private static LayoutFamily changed(LayoutFamily family, String from, String to) throws Exception {
        String text = new String(family.content(), StandardCharsets.UTF_8);
        assertThat(text).contains(from);
        return LayoutFamily.of("changed.yaml", text.replace(from, to).getBytes(StandardCharsets.UTF_8));
    }

    @Test
    void aPassDoesNotSayThatBuildsBeyondTheTolerancesHold() throws Exception {
        // Lit from 0.3 above the drawn edge on: within the tolerance dark, 1.2 standard deviations out lit.
        ToleranceResult result = study(
                EdgeLayout.of("edge: {value: -2.6, tolerance: 0.25, distribution: normal, sigmas: 1}\nheight: 10", ""),
                40);
        long bad = result.builds().stream()
                .filter(build -> build.verdict() != Verdict.PASS)
                .count();
        assertThat(result.verdict()).isEqualTo(Verdict.PASS);
        assertThat(bad).isPositive();
        List<Build> within = result.builds().stream()
                .filter(build -> build.isWithin(result.contributors()))
                .toList();
        assertThat(ToleranceReport.sentence(result))
                .contains("in all " + within.size() + " builds sampled within them")
                .endsWith("of " + (40 - within.size()) + " builds beyond them " + bad + (bad == 1 ? " does" : " do")
                        + " not hold.");
    }

    @Test
    void buildsWhosePartsRunIntoOneAnotherAreTold() throws Exception {
        String text = """
                title: Two blocks
                dimensions: {gap: {value: 0.02 mm, tolerance: 0.3}}
                beam:
                  pupil: {shape: disc, diameter: 20, distance: 200}
                parts:
                  left: {kind: block, width: 10, depth: 10, height: 2, at: [-5 - gap / 2, 0, 0]}
                  right: {kind: block, width: 10, depth: 10, height: 2, at: [5 + gap / 2, 0, 0]}
                requirements:
                  dark: {surfaces: left/-z, direct: none}
                """;
        ToleranceResult result = study(LayoutFamily.of("blocks.yaml", text.getBytes(StandardCharsets.UTF_8)), 12);
        assertThat(result.warned()).isNotEmpty().hasSizeLessThan(12);
        assertThat(new ToleranceReport("1.0", Ink.PLAIN).of(result).replaceAll("\\s+", " "))
                .contains("comes with " + result.warned().size() + " builds; build "
                        + result.warned().get(0).number() + ": ")
                .contains("run into one another");
        String json = JsonResult.of(result, "1.0");
        assertThat(json).contains("\"first_build\"").contains("run into one another");
        assertThat(SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12)
                        .getSchema(Files.readString(Path.of("docs/tolerance.schema.json")), InputFormat.JSON)
                        .validate(json, InputFormat.JSON))
                .isEmpty();
    }

    @Test
    void samplesWithoutAHitAreNotExact() throws Exception {
        LayoutFamily family = changed(
                EdgeLayout.of("edge: {value: -2.31, tolerance: 0.02}\nheight: 10", ""),
                "direct: none",
                "direct: {at_most: 0.01}");
        ToleranceResult result = study(family, 12);
        List<String> lines = BuildsCsv.of(result).lines().toList();
        int sampled = 0;
        for (Build build : result.builds()) {
            boolean dark = -2.31 + build.deviations().get(0) < -2.3;
            String line = lines.get(build.number());
            assertThat(line).endsWith((dark ? ",exact" : ",sampled") + ",,");
            boolean none = build.result().figure("dark").orElseThrow().value() == 0;
            sampled += !dark && none ? 1 : 0;
        }
        assertThat(sampled).as("builds that are lit but for no sample").isPositive();
    }

    @Test
    void aBoundFromAboveIsRoundedUp() {
        RequirementMargin lit = new RequirementMargin(
                "dark", Optional.of(Verdict.FAIL), -0.123456, 0, MarginUnit.MILLIMETRES, true, "screen/front", "", "");
        assertThat(MarginWords.of(lit)).isEqualTo("<= -0.123");
        assertThat(MarginWords.withUnit(lit)).isEqualTo("<= -0.123 mm");
    }
}
