package darkrim.reference;

import java.io.InputStream;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** The cases of src/test/resources/reference/cases.json, read once. */
public final class ReferenceCases {
    private static final List<ReferenceCase> ALL = read();

    private ReferenceCases() {}

    /** All cases. */
    public static List<ReferenceCase> all() {
        return ALL;
    }

    /**
     * The cases of a family.
     *
     * @param letter the first letter of the family, A to J
     */
    public static List<ReferenceCase> family(String letter) {
        return ALL.stream()
                .filter(each -> each.family().startsWith(letter + " "))
                .toList();
    }

    /** The case of a short name. */
    public static ReferenceCase byId(String id) {
        return ALL.stream().filter(each -> each.id().equals(id)).findFirst().orElseThrow();
    }

    /** The cases whose short names begin alike, such as {@code C05}. */
    public static List<ReferenceCase> beginning(String id) {
        return ALL.stream().filter(each -> each.id().startsWith(id)).toList();
    }

    private static List<ReferenceCase> read() {
        InputStream stream = ReferenceCases.class.getResourceAsStream("/reference/cases.json");
        JsonNode root = JsonMapper.shared().readTree(Objects.requireNonNull(stream, "reference/cases.json"));
        List<ReferenceCase> cases = new ArrayList<>();
        root.get("cases")
                .forEach(each -> cases.add(new ReferenceCase(
                        each.get("id").asString(),
                        each.get("family").asString(),
                        each.get("kind").asString(),
                        each.get("title").asString(),
                        each.get("geometry"),
                        values(each.get("value")),
                        each.get("source").asString())));
        return List.copyOf(cases);
    }

    private static List<Double> values(JsonNode value) {
        List<Double> values = new ArrayList<>();
        if (value.isArray()) {
            value.forEach(each -> values.add(each.asDouble()));
        } else {
            values.add(value.asDouble());
        }
        return List.copyOf(values);
    }
}
