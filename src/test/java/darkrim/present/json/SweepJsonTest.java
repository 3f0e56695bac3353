package darkrim.present.json;

import static org.assertj.core.api.Assertions.assertThat;

import com.networknt.schema.InputFormat;
import com.networknt.schema.Schema;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import darkrim.study.LayoutFamily;
import darkrim.study.sweep.SweepResult;
import darkrim.study.sweep.Sweeps;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.ObjectNode;

/** The JSON document of a sweep against its published schema, and against the sweep that it tells of. */
class SweepJsonTest {
    private static final JsonMapper MAPPER = JsonMapper.builder().build();
    private static final LayoutFamily FAMILY = Sweeps.slit(
            "dark: {surfaces: screen, direct: none}",
            "mean: {surfaces: screen/front, direct: {at_most: 0.003}}",
            "reflected: {surfaces: screen/front, once_reflected: {at_most: 1.0e-3}}",
            "seen: {surfaces: screen/front, pupil_seen: {at_least: 0.5}}");

    private static Schema schema() throws Exception {
        return SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12)
                .getSchema(Files.readString(Path.of("docs/study.schema.json")), InputFormat.JSON);
    }

    @Test
    void everyKindOfSweepFitsTheSchema() throws Exception {
        for (SweepResult result : new SweepResult[] {
            Sweeps.run(FAMILY, Sweeps.grid(FAMILY, "slit = -30, 1, 4")),
            Sweeps.run(FAMILY, Sweeps.design(FAMILY, Optional.empty(), Optional.of(1.0), "slit = 1 to 5 step 2")),
            Sweeps.run(FAMILY, Sweeps.design(FAMILY, Optional.of(3), Optional.empty(), "slit = 1 to 5"))
        }) {
            assertThat(schema().validate(JsonResult.of(result, "1.0"), InputFormat.JSON))
                    .isEmpty();
        }
    }

    @Test
    void theSchemaSeesAWrongDocument() throws Exception {
        SweepResult result = Sweeps.run(FAMILY, Sweeps.grid(FAMILY, "slit = 1, 4"));
        ObjectNode document = (ObjectNode) MAPPER.readTree(JsonResult.of(result, "1.0"));
        document.put("more", 1);
        assertThat(schema().validate(document.toString(), InputFormat.JSON)).isNotEmpty();
    }

    @Test
    void theDocumentTellsOfTheSweep() throws Exception {
        SweepResult result = Sweeps.run(FAMILY, Sweeps.grid(FAMILY, "slit = -30, 1, 4"));
        JsonNode document = MAPPER.readTree(JsonResult.of(result, "1.0"));
        assertThat(document.get("points")).hasSize(3);
        JsonNode none = document.get("points").get(0);
        assertThat(none.get("verdict").isNull()).isTrue();
        assertThat(none.get("impossible_because").asString())
                .isEqualTo(result.points().get(0).impossible());
        JsonNode last = document.get("points").get(2).get("requirements").get(1);
        assertThat(last.get("value").asDouble())
                .isEqualTo(result.points().get(2).lines().get(1).figure().value());
        assertThat(last.get("change").asDouble())
                .isEqualTo(result.points().get(2).lines().get(1).change());
        assertThat(document.get("turns").size()).isEqualTo(result.turns().size());
    }
}
