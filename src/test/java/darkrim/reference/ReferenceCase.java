package darkrim.reference;

import java.util.ArrayList;
import java.util.List;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import tools.jackson.databind.JsonNode;

/**
 * A case with a known answer.
 *
 * @param id short name such as {@code B02a}
 * @param family such as {@code B pupil irradiance}
 * @param kind what the value is: {@code E} irradiance, {@code F_el} configuration factor, and so on
 * @param title what it is about
 * @param geometry what stands where, mm, as in cases.json
 * @param values the answers; a single one for most cases
 * @param source where the answer comes from
 */
public record ReferenceCase(
        String id, String family, String kind, String title, JsonNode geometry, List<Double> values, String source) {

    /** The only answer. */
    public double value() {
        if (values.size() != 1) {
            throw new IllegalStateException(id + " has " + values.size() + " answers");
        }
        return values.get(0);
    }

    /** The answers as plain numbers. */
    public double[] answers() {
        return values.stream().mapToDouble(Double::doubleValue).toArray();
    }

    /** One of the parameters of the geometry. */
    public double parameter(String name) {
        return geometry.get("params").get(name).asDouble();
    }

    /** One of the parameters of the geometry that has several values. */
    public double[] parameters(String name) {
        return numbers(geometry.get("params").get(name));
    }

    /** One number, or a list of numbers. */
    public static double[] numbers(JsonNode node) {
        double[] numbers = new double[node.isArray() ? node.size() : 1];
        for (int i = 0; i < numbers.length; i++) {
            numbers[i] = (node.isArray() ? node.get(i) : node).asDouble();
        }
        return numbers;
    }

    /** Three coordinates as a vector. */
    public static Vector3D vector(JsonNode three) {
        return Vector3D.of(numbers(three));
    }

    /** The points of a receiver of type point or points, mm. */
    public List<Vector3D> receiverPoints() {
        JsonNode receiver = geometry.get("receiver");
        if (receiver.has("position")) {
            return List.of(vector(receiver.get("position")));
        }
        List<Vector3D> points = new ArrayList<>();
        receiver.get("positions").forEach(position -> points.add(vector(position)));
        return points;
    }

    /** Shown as the name of a test. */
    @Override
    public String toString() {
        return id + " " + title;
    }
}
