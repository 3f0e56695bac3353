package darkrim.present.json;

import static org.assertj.core.api.Assertions.assertThat;

import com.networknt.schema.InputFormat;
import com.networknt.schema.Schema;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import darkrim.present.Cautions;
import darkrim.present.Results;
import darkrim.study.CheckResult;
import darkrim.study.CoarseHood;
import darkrim.study.irradiance.DarkProof;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.ObjectNode;

/** The JSON document against its published schema, and against the result that it tells of. */
class JsonResultTest {
    private static final JsonMapper MAPPER = JsonMapper.builder().build();
    private static final Schema SCHEMA = SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12)
            .getSchema(read(Path.of("docs/result.schema.json")), InputFormat.JSON);

    /** Every kind of condition and evidence: proof, ray, sampled interval, cells. */
    private static final CheckResult RESULT = Results.slit(
            "backs-dark: {surfaces: '{left,right}/back', direct: none}",
            "screen-dark: {surfaces: 'screen', direct: none}",
            "screen-dim: {surfaces: 'screen/front', direct: {at_most: 0.9, per: cell}}",
            "fronts-dim: {surfaces: '*/front', once_reflected: {at_most: 1e-6, per: surface}}",
            "pupil: {surfaces: 'left/front', pupil_seen: {at_least: 0.999}}");

    @Test
    void aResultFitsItsSchema() {
        assertThat(problems(json(RESULT))).isEmpty();
    }

    @Test
    void aResultOfADetectorBehindAnOpeningFitsItsSchema() {
        String yaml = read(Path.of("src/test/resources/layouts/small.yaml")) + "placement_error: 0.01\n";
        CheckResult result = Results.of(yaml, 3_000_000, 2);
        assertThat(result.feasibility()).isNotEmpty();
        assertThat(problems(json(result))).isEmpty();
        assertThat(MAPPER.readTree(json(result)).get("infeasible_openings").size())
                .isZero();
        JsonNode tight = MAPPER.readTree(json(Results.of(yaml.replace("0.01\n", "0.2\n"), 1000, 2)));
        assertThat(tight.get("verdict").asString()).isEqualTo("pass");
        assertThat(tight.get("infeasible_openings").get(0).asString()).isEqualTo("lid/opening");
    }

    @Test
    void sharesOfThePupilAndProvedBoundsFitTheSchema() {
        CheckResult result = Results.slit(
                "half: {surfaces: 'screen', pupil_seen: {at_least: 0.5}}",
                "whole: {surfaces: 'left/front', pupil_seen: {at_least: 0.5}}",
                "none: {surfaces: 'screen/back', once_reflected: none}",
                "dim: {surfaces: 'left/back', once_reflected: {at_most: 10}}");
        String json = json(result);
        assertThat(problems(json)).isEmpty();
        JsonNode requirements = MAPPER.readTree(json).get("requirements");
        JsonNode half = requirements.get(0).get("worst").get("evidence");
        assertThat(half.get("kind").asString()).isEqualTo("pupil_share");
        assertThat(half.get("lowest_mm")).hasSize(3);
        assertThat(half.get("hidden_by").size()).isPositive();
        JsonNode whole = requirements.get(1).get("worst").get("evidence");
        assertThat(whole.get("at_least").asDouble()).isEqualTo(1);
        assertThat(whole.get("lowest_mm").isNull()).isTrue();
        JsonNode none = requirements.get(2).get("worst");
        assertThat(none.get("verdict").asString()).isEqualTo("pass");
        assertThat(none.get("evidence").get("kind").asString()).isEqualTo("proved_bound");
        assertThat(none.get("evidence").get("at_most").asDouble()).isZero();
        assertThat(requirements
                        .get(3)
                        .get("worst")
                        .get("evidence")
                        .get("at_most")
                        .asDouble())
                .isBetween(1e-3, 10.0);
    }

    @Test
    void aDoubtHasAKindOfItsOwnThatFitsTheSchema() throws Exception {
        String json = json(CoarseHood.check("chord: 30", "{shelf,sill}/outside", "none"));
        // A user cannot ask for no samples at all.
        assertThat(problems(json.replaceAll("(\"most_samples\"\\s*:\\s*)0", "$11")))
                .isEmpty();
        assertThat(json).contains("\"dark_behind_facets\"").doesNotContain("\"proved_dark\"");
        JsonNode root = MAPPER.readTree(json);
        JsonNode outcome = root.get("requirements").get(0).get("outcomes").get(0);
        assertThat(outcome.get("evidence").get("clearance").get("mm").asDouble())
                .isPositive();
        // As earlier files have it: like any other proof, beside a verdict that is none.
        JsonNode earlier = MAPPER.readTree(json.replace("dark_behind_facets", "proved_dark"));
        for (JsonNode file : List.of(root, earlier)) {
            SavedDarkness saved = new SavedDarkness(file);
            assertThat(proofs(saved, file))
                    .containsEntry("shelf/outside", DarkProof.BEHIND_FACETS)
                    .containsEntry("sill/outside", DarkProof.BEHIND_FACETS);
        }
        JsonNode without = MAPPER.readTree(json(CoarseHood.check("chord: 0.01", "{shelf,sill}/outside", "none")));
        assertThat(proofs(new SavedDarkness(without), without)).containsEntry("shelf/outside", DarkProof.PROVED);
    }

    private static Map<String, DarkProof> proofs(SavedDarkness saved, JsonNode root) {
        Map<String, DarkProof> proofs = new HashMap<>();
        root.get("surfaces").forEach(surface -> proofs.put(surface.get("name").asString(), saved.of(surface)));
        return proofs;
    }

    @Test
    void aResultWithoutASampleFitsItsSchemaAndHoldsNoWordThatJsonDoesNotKnow() {
        CheckResult result = Results.of(
                Results.yaml("", "dim: {surfaces: '*/front', once_reflected: {at_most: 1e-6, per: surface}}"), 1000, 1);
        String json = json(result);
        assertThat(problems(json)).isEmpty();
        assertThat(json).doesNotContain("NaN").doesNotContain("Infinity");
        JsonNode surface = MAPPER.readTree(json).get("surfaces").get(0);
        assertThat(surface.get("direct").get("mean").isNull()).isTrue();
        assertThat(surface.get("direct").get("standard_error").isNull()).isTrue();
    }

    /** So that schema and document cannot drift: the schema refuses a new key in, and a lost key from, any of the objects. */
    @Test
    void theSchemaKnowsEveryKey() {
        ObjectNode whole = (ObjectNode) MAPPER.readTree(json(RESULT));
        ((ObjectNode) whole.get("layout").get("dimensions")).set("second", dimension());
        List<ObjectNode> objects = new ArrayList<>();
        collect(whole, objects);
        // Names of dimensions are the designer's.
        objects.remove(whole.get("layout").get("dimensions"));
        assertThat(objects.size()).isGreaterThan(40);
        for (ObjectNode object : objects) {
            object.put("surprise", 1);
            assertThat(problems(whole.toString())).as("new key in %s", object).isNotEmpty();
            object.remove("surprise");
            for (String key : List.copyOf(object.propertyNames())) {
                JsonNode value = object.remove(key);
                assertThat(problems(whole.toString())).as("lost key %s", key).isNotEmpty();
                object.set(key, value);
            }
        }
        assertThat(problems(whole.toString())).isEmpty();
    }

    @Test
    void theDocumentSaysWhatTheResultSays() {
        JsonNode document = MAPPER.readTree(json(RESULT));
        assertThat(document.get("verdict").asString()).isEqualTo("fail");
        assertThat(document.get("program").get("version").asString()).isEqualTo("1.2.3");
        assertThat(document.get("layout").get("sha256").asString())
                .isEqualTo(RESULT.layout().source().sha256());
        assertThat(document.get("layout")
                        .get("dimensions")
                        .get("slit")
                        .get("value")
                        .asDouble())
                .isEqualTo(4);
        JsonNode front = document.get("surfaces").get(0);
        assertThat(front.get("name").asString()).isEqualTo("screen/front");
        assertThat(front.get("area_mm2").asDouble()).isEqualTo(300);
        assertThat(front.get("direct").get("mean").asDouble())
                .isEqualTo(RESULT.judgement()
                        .surfaces()
                        .get(0)
                        .direct()
                        .irradiance()
                        .mean());
        assertThat(front.get("map").get("direct").get("mean")).hasSize(75);
        assertThat(document.get("requirements")).hasSize(5);
        assertThat(document.get("requirements").get(2).get("outcomes")).hasSize(75);
        assertThat(document.get("not_modelled")).hasSize(Cautions.NOT_MODELLED.size());
    }

    @Test
    void sharesOfTheLightPathsToAReceiverAddUpToOne() {
        double sum = 0;
        for (JsonNode path : MAPPER.readTree(json(RESULT)).get("light_paths")) {
            if (path.get("receiver").asString().equals("left/back")) {
                sum += path.get("share").asDouble();
            }
        }
        assertThat(sum).isEqualTo(1, org.assertj.core.api.Assertions.within(1e-9));
    }

    @Test
    void onlyTheTimingDiffersBetweenRunsAndNumbersOfThreads() {
        String yaml = Results.yaml("radiance: 2.5", "dim: {surfaces: '*/front', once_reflected: {at_most: 1e-6}}");
        ObjectNode one = (ObjectNode) MAPPER.readTree(json(Results.of(yaml, Results.FEW_SAMPLES, 1)));
        ObjectNode three = (ObjectNode) MAPPER.readTree(json(Results.of(yaml, Results.FEW_SAMPLES, 3)));
        one.remove("timing");
        three.remove("timing");
        assertThat(three.toString()).isEqualTo(one.toString());
    }

    private static JsonNode dimension() {
        return MAPPER.createObjectNode().put("value", 4.0).put("unit", "deg");
    }

    /** One object of each shape: of long lists the first two only. */
    private static void collect(JsonNode node, List<ObjectNode> objects) {
        if (node instanceof ObjectNode object) {
            objects.add(object);
            object.values().forEach(value -> collect(value, objects));
        } else if (node.isArray()) {
            for (int i = 0; i < Math.min(2, node.size()); i++) {
                collect(node.get(i), objects);
            }
        }
    }

    private static List<String> problems(String json) {
        return SCHEMA.validate(json, InputFormat.JSON).stream()
                .map(Object::toString)
                .toList();
    }

    private static String json(CheckResult result) {
        return JsonResult.of(result, "1.2.3");
    }

    private static String read(Path file) {
        try {
            return Files.readString(file);
        } catch (IOException problem) {
            throw new UncheckedIOException(problem);
        }
    }
}
