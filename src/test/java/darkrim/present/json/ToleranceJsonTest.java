package darkrim.present.json;

import static org.assertj.core.api.Assertions.assertThat;

import com.networknt.schema.InputFormat;
import com.networknt.schema.Schema;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import darkrim.study.journal.StudyRecord;
import darkrim.study.tolerance.EdgeLayout;
import darkrim.study.tolerance.RequirementTolerance;
import darkrim.study.tolerance.RequirementTolerance.WorseBuild;
import darkrim.study.tolerance.ToleranceResult;
import darkrim.study.tolerance.ToleranceSettings;
import darkrim.study.tolerance.Tolerances;
import darkrim.verdict.Verdict;
import darkrim.verdict.Watch;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** The JSON document of a tolerance study against its published schema, and against the study that it tells of. */
class ToleranceJsonTest {
    private static ToleranceResult study() throws Exception {
        return Tolerances.run(
                EdgeLayout.of("edge: {value: -2.6, tolerance: 0.1}\nheight: 10", ""),
                new ToleranceSettings(10, Optional.empty(), true, Optional.of(11L), 1),
                StudyRecord.none(),
                Watch.NONE,
                1);
    }

    /** The same with a build of which less can be said than of the worst case. */
    private static ToleranceResult with(ToleranceResult of, WorseBuild worse) {
        RequirementTolerance line = of.requirements().get(0);
        RequirementTolerance changed = new RequirementTolerance(
                line.requirement(),
                line.drawn(),
                line.slopes(),
                line.worst(),
                line.rootSumSquare(),
                line.yield(),
                Optional.of(worse),
                line.lesser(),
                line.sampled());
        return new ToleranceResult(
                of.drawn(),
                of.settings(),
                of.contributors(),
                List.of(changed),
                of.builds(),
                of.yield(),
                of.loosest(),
                of.stopped(),
                of.seconds());
    }

    private static JsonNode line(ToleranceResult result) throws Exception {
        String text = JsonResult.of(result, "1.0");
        Schema schema = SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12)
                .getSchema(Files.readString(Path.of("docs/tolerance.schema.json")), InputFormat.JSON);
        assertThat(schema.validate(text, InputFormat.JSON)).isEmpty();
        return JsonMapper.builder().build().readTree(text).get("requirements").get(0);
    }

    @Test
    void aBuildOfWhichLessCanBeSaidIsNamedWithItsVerdict() throws Exception {
        ToleranceResult study = study();
        assertThat(line(study).get("worse_build").isNull()).isTrue();
        assertThat(line(study).get("verdict").asString()).isEqualTo("pass");

        JsonNode open = line(with(study, new WorseBuild(7, Verdict.UNDECIDED)));
        assertThat(open.get("worse_build").get("build").asInt()).isEqualTo(7);
        assertThat(open.get("worse_build").get("verdict").asString()).isEqualTo("undecided");
        assertThat(open.get("verdict").asString()).isEqualTo("undecided");
        assertThat(open.get("broken_by_build").isNull()).isTrue();

        JsonNode broken = line(with(study, new WorseBuild(3, Verdict.FAIL)));
        assertThat(broken.get("verdict").asString()).isEqualTo("fail");
        assertThat(broken.get("broken_by_build").asInt()).isEqualTo(3);
    }

    @Test
    void aMarginSaysWhatSetsItOrThatItMayBeLarger() throws Exception {
        ToleranceResult study = study();
        JsonNode drawn = line(study).get("as_drawn");
        assertThat(drawn.get("value").asDouble())
                .isEqualTo(study.requirements().get(0).drawn().margin())
                .isPositive();
        assertThat(drawn.get("capped").asBoolean())
                .isEqualTo(drawn.get("set_by").asString().isEmpty());
    }
}
