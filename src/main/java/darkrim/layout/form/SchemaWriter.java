package darkrim.layout.form;

import darkrim.diagnostic.Findings;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/** Turns the table of kinds and keys into a JSON Schema, draft 2020-12, as nested maps and lists in a fixed order. */
public final class SchemaWriter {
    private final Map<String, Map<String, Object>> definitions = new TreeMap<>();

    /**
     * The schema of a whole file.
     *
     * @param root its keys
     * @param title title of the schema
     * @param description what it is for
     */
    public static Map<String, Object> schema(Kind.Structure root, String title, String description) {
        SchemaWriter writer = new SchemaWriter();
        Map<String, Object> schema = new LinkedHashMap<>();
        schema.put("$schema", "https://json-schema.org/draft/2020-12/schema");
        schema.put("title", title);
        schema.put("description", description);
        schema.putAll(writer.structure(root, Map.of()));
        schema.put("$defs", writer.definitions);
        return schema;
    }

    private Map<String, Object> of(Kind kind) {
        if (kind instanceof Kind.Numeric numeric) {
            return defined(numeric.name(), NumericSchema.of(numeric));
        }
        if (kind instanceof Kind.Structure structure) {
            return defined(structure.name(), structure(structure, Map.of()));
        }
        if (kind instanceof Kind.Variants variants) {
            return defined(variants.name(), variants(variants));
        }
        Map<String, Object> schema = new LinkedHashMap<>();
        if (kind instanceof Kind.Text text) {
            schema.put("type", text.numberToo() ? List.of("string", "number") : "string");
            schema.put("pattern", text.letters().pattern());
        } else if (kind instanceof Kind.Whole whole) {
            schema.put("type", "integer");
            schema.put("minimum", whole.least());
            schema.put("maximum", whole.most());
        } else if (kind instanceof Kind.Flag) {
            schema.put("type", "boolean");
        } else if (kind instanceof Kind.Choice choice) {
            schema.put("enum", choice.words());
        } else if (kind instanceof Kind.ListOf list) {
            schema.put("type", "array");
            schema.put("items", of(list.item()));
            schema.put("minItems", list.least());
            schema.put("maxItems", list.most());
        } else if (kind instanceof Kind.Named named) {
            schema.put("type", "object");
            schema.put("propertyNames", Map.of("pattern", named.letters().pattern()));
            schema.put("additionalProperties", of(named.item()));
            schema.put("minProperties", named.least());
            schema.put("maxProperties", named.most());
        } else if (kind instanceof Kind.Either either) {
            schema.put("anyOf", either.kinds().stream().map(this::of).toList());
        }
        return schema;
    }

    /** Defines a schema once and refers to it. */
    private Map<String, Object> defined(String name, Map<String, Object> schema) {
        Map<String, Object> before = definitions.putIfAbsent(name, schema);
        if (before != null && !before.equals(schema)) {
            throw new IllegalStateException("two kinds are named " + name);
        }
        return Map.of("$ref", "#/$defs/" + name);
    }

    /** @param first properties before those of its keys */
    private Map<String, Object> structure(Kind.Structure structure, Map<String, Object> first) {
        Map<String, Object> properties = new LinkedHashMap<>(first);
        List<String> required = new ArrayList<>();
        for (Key key : structure.keys()) {
            Map<String, Object> property = new LinkedHashMap<>();
            property.put("description", key.sentence());
            property.putAll(of(key.kind()));
            key.fallback().ifPresent(yaml -> property.put("default", json(yaml)));
            properties.put(key.name(), property);
            if (key.required()) {
                required.add(key.name());
            }
        }
        Map<String, Object> schema = new LinkedHashMap<>();
        schema.put("type", "object");
        schema.put("properties", properties);
        if (!required.isEmpty()) {
            schema.put("required", required);
        }
        schema.put("additionalProperties", false);
        if (!structure.exactlyOneOf().isEmpty()) {
            schema.put(
                    "oneOf",
                    structure.exactlyOneOf().stream()
                            .map(name -> Map.of("required", List.of(name)))
                            .toList());
        }
        if (!structure.needed().isEmpty()) {
            Map<String, Object> needed = new LinkedHashMap<>();
            structure.needed().forEach((key, other) -> needed.put(key, List.of(other)));
            schema.put("dependentRequired", needed);
        }
        return schema;
    }

    private Map<String, Object> variants(Kind.Variants variants) {
        Map<String, Object> selector = new LinkedHashMap<>();
        selector.put("description", variants.sentence());
        selector.put("enum", variants.words());
        variants.fallback().ifPresent(word -> selector.put("default", word));
        List<Object> cases = new ArrayList<>();
        for (Kind.Case each : variants.cases()) {
            Map<String, Object> chosen = new LinkedHashMap<>();
            chosen.put("description", variants.sentence());
            chosen.put("const", each.word());
            Map<String, Object> condition = new LinkedHashMap<>();
            condition.put("properties", Map.of(variants.selector(), Map.of("const", each.word())));
            if (variants.fallback().filter(each.word()::equals).isEmpty()) {
                condition.put("required", List.of(variants.selector()));
            }
            Map<String, Object> rule = new LinkedHashMap<>();
            rule.put("if", condition);
            rule.put(
                    "then",
                    defined(each.structure().name(), structure(each.structure(), Map.of(variants.selector(), chosen))));
            cases.add(rule);
        }
        Map<String, Object> schema = new LinkedHashMap<>();
        schema.put("type", "object");
        schema.put("properties", Map.of(variants.selector(), selector));
        if (variants.fallback().isEmpty()) {
            schema.put("required", List.of(variants.selector()));
        }
        schema.put("allOf", cases);
        return schema;
    }

    private static Object json(String yaml) {
        return json(YamlText.parse("default", yaml.getBytes(StandardCharsets.UTF_8), new Findings())
                .orElseThrow());
    }

    private static Object json(Node node) {
        if (node instanceof Node.Items list) {
            return list.items().stream().map(SchemaWriter::json).toList();
        }
        if (node instanceof Node.Scalar scalar) {
            return switch (scalar.style()) {
                case FLAG -> Boolean.valueOf(scalar.text());
                case NUMBER -> new BigDecimal(scalar.text());
                default -> scalar.text();
            };
        }
        return Map.of();
    }
}
