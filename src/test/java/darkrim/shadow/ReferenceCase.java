package darkrim.shadow;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.ObjectMapper;

/** A case of reference/cases.json: published or independently derived values, each with its source. */
record ReferenceCase(JsonNode node) {
    static List<ReferenceCase> family(String prefix) {
        try (InputStream in = ReferenceCase.class.getResourceAsStream("/reference/cases.json")) {
            List<ReferenceCase> cases = new ArrayList<>();
            for (JsonNode node : new ObjectMapper().readTree(in).get("cases")) {
                if (node.get("id").asString().startsWith(prefix)) {
                    cases.add(new ReferenceCase(node));
                }
            }
            return cases;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    String id() {
        return node.get("id").asString();
    }

    String kind() {
        return node.get("kind").asString();
    }

    JsonNode geometry() {
        return node.get("geometry");
    }

    double parameter(String name) {
        return geometry().get("params").get(name).asDouble();
    }

    double[] parameters(String name) {
        return numbers(geometry().get("params").get(name));
    }

    double[] values() {
        return numbers(node.get("value"));
    }

    static double[] numbers(JsonNode node) {
        if (!node.isArray()) {
            return new double[] {node.asDouble()};
        }
        double[] values = new double[node.size()];
        for (int i = 0; i < values.length; i++) {
            values[i] = node.get(i).asDouble();
        }
        return values;
    }

    static Vector3D vector(JsonNode node) {
        return Vector3D.of(numbers(node));
    }

    @Override
    public String toString() {
        return id();
    }
}
