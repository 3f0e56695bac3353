package darkrim;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** docs/result-fields.md lists every field of every file of results, as the schemas say. */
class ResultFieldsPageTest {
    private static final Path PAGE = Path.of("docs/result-fields.md");
    /** What follows are the columns of comma-separated values, which another test checks. */
    private static final String BY_HAND = "\n<!-- What follows is written by hand;";

    private static final String TABLE = "| field | type | meaning |\n|---|---|---|\n";

    /** Run with {@code -Dwrite.docs=true} after a change of a schema of results. */
    @Test
    void thePageIsWhatTheSchemasSay() throws IOException {
        StringBuilder page =
                new StringBuilder("# Fields of results\n\nWritten by ResultFieldsPageTest with -Dwrite.docs=true"
                        + " from docs/*.schema.json. `a.b` is the field b within a, `a[]` one entry of the list a, `a.*` the\nvalue of"
                        + " any name within a. Each section begins with the units that hold where a field names none."
                        + " Columns of CSV: [below](#columns-of-csv).\n");
        for (Path file : schemas()) {
            JsonNode schema = JsonMapper.shared().readTree(Files.readString(file));
            page.append("\n## ")
                    .append(schema.path("title").asString())
                    .append("\n[")
                    .append(file.getFileName());
            page.append("](")
                    .append(file.getFileName())
                    .append("). ")
                    .append(schema.path("description").asString());
            page.append("\n\n").append(TABLE);
            rows(schema, "", page);
            for (Map.Entry<String, JsonNode> shared : schema.path("$defs").properties()) {
                page.append("\n### ")
                        .append(schema.path("title").asString())
                        .append(": ")
                        .append(shared.getKey());
                page.append("\n")
                        .append(described(shared.getValue()))
                        .append("\n\n")
                        .append(TABLE);
                page.append("| (itself) | ").append(type(shared.getValue())).append(" | |\n");
                rows(shared.getValue(), "", page);
            }
        }
        String old = Files.readString(PAGE);
        page.append(old.substring(old.indexOf(BY_HAND)));
        if (Boolean.getBoolean("write.docs")) {
            Files.writeString(PAGE, page);
        }
        assertThat(Files.readString(PAGE)).isEqualTo(page.toString());
    }

    /** Found by another way than that which writes the page: wherever "properties" stands. */
    @Test
    void noFieldIsLeftOut() throws IOException {
        String page = Files.readString(PAGE);
        Set<String> names = new TreeSet<>();
        for (Path file : schemas()) {
            collect(JsonMapper.shared().readTree(Files.readString(file)), names);
        }
        assertThat(names).hasSizeGreaterThan(100);
        assertThat(names).allSatisfy(name -> assertThat(page).containsPattern("[`.]" + name + "(\\[])*`"));
    }

    /** In the schema of layouts too, which editors show. */
    @Test
    void everyFieldHasAMeaning() throws IOException {
        List<String> without = new ArrayList<>();
        for (Path file : schemas()) {
            undescribed(JsonMapper.shared().readTree(Files.readString(file)), file.getFileName() + ":", without);
        }
        Path layout = Path.of("docs/layout.schema.json");
        undescribed(JsonMapper.shared().readTree(Files.readString(layout)), layout.getFileName() + ":", without);
        assertThat(without).isEmpty();
    }

    private static void undescribed(JsonNode node, String above, List<String> without) {
        for (Map.Entry<String, JsonNode> field : node.path("properties").properties()) {
            // What is said of a property in a condition is said where it is defined.
            if (described(field.getValue()).isBlank() && !above.endsWith("/if")) {
                without.add(above + "/" + field.getKey());
            }
        }
        if (node.isArray()) {
            node.forEach(each -> undescribed(each, above, without));
        } else {
            node.properties().forEach(each -> undescribed(each.getValue(), above + "/" + each.getKey(), without));
        }
    }

    private static void collect(JsonNode node, Set<String> names) {
        names.addAll(node.path("properties").propertyNames());
        node.forEach(child -> collect(child, names));
    }

    private static List<Path> schemas() throws IOException {
        try (Stream<Path> files = Files.list(Path.of("docs"))) {
            return files.filter(file -> file.toString().endsWith(".schema.json"))
                    .filter(file -> !file.endsWith("layout.schema.json"))
                    .sorted()
                    .toList();
        }
    }

    private static void rows(JsonNode node, String above, StringBuilder page) {
        for (Map.Entry<String, JsonNode> field : node.path("properties").properties()) {
            String name = above.isEmpty() ? field.getKey() : above + "." + field.getKey();
            page.append("| `").append(name).append("` | ").append(type(field.getValue()));
            page.append(" | ").append(described(field.getValue())).append(" |\n");
            rows(field.getValue(), name, page);
        }
        if (node.has("items")) {
            rows(node.path("items"), above + "[]", page);
        }
        if (node.path("additionalProperties").isObject()) {
            rows(node.path("additionalProperties"), above.isEmpty() ? "*" : above + ".*", page);
        }
        for (String choice : List.of("anyOf", "oneOf", "allOf")) {
            node.path(choice).forEach(one -> rows(one, above, page));
        }
    }

    private static String described(JsonNode node) {
        return node.path("description").asString("").replace("|", "\\|").replace("\n", " ");
    }

    private static String type(JsonNode node) {
        List<String> words = new ArrayList<>();
        if (node.has("$ref")) {
            words.add(node.path("$ref").asString().replace("#/$defs/", ""));
        } else if (node.has("const")) {
            words.add("`" + node.path("const") + "`");
        } else if (node.has("enum")) {
            node.path("enum").forEach(one -> words.add("`" + one + "`"));
        } else if (node.path("type").isArray()) {
            node.path("type").forEach(one -> words.add(one.asString()));
        } else if (node.has("type")) {
            words.add(node.path("type").asString());
        }
        for (String choice : List.of("anyOf", "oneOf", "allOf")) {
            node.path(choice).forEach(one -> words.add(type(one)));
        }
        String of = node.has("items") ? " of " + type(node.path("items")) : "";
        return String.join(" or ", words) + of;
    }
}
