package darkrim.layout;

import darkrim.layout.form.Key;
import darkrim.layout.form.Kind;
import darkrim.layout.form.Node;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;

/** The first short value of each key in a layout, for a page that shows every key with an example. */
final class KeyExamples {
    private static final int LONGEST = 60;

    /** By the name of the structure and the key. */
    private final Map<String, String> found = new HashMap<>();

    /** By the name and kind of the key, wherever it stands. */
    private final Map<Map.Entry<String, Kind>, String> elsewhere = new HashMap<>();

    private KeyExamples() {}

    /** The examples that a layout holds. */
    static KeyExamples of(Node layout) {
        KeyExamples examples = new KeyExamples();
        examples.walk(layout, LayoutKeys.LAYOUT);
        return examples;
    }

    /** An example of a key, as YAML; empty where the layout has none that is short. */
    Optional<String> of(Kind.Structure structure, Key key) {
        String own = found.getOrDefault(structure.name() + " " + key.name(), elsewhere.get(at(key)));
        return Optional.ofNullable(own).map(yaml -> word(key.name()) + ": " + yaml);
    }

    private static Map.Entry<String, Kind> at(Key key) {
        return Map.entry(key.name(), key.kind());
    }

    private void walk(Node node, Kind kind) {
        if (kind instanceof Kind.Either either) {
            either.kinds().forEach(one -> walk(node, one));
        } else if (kind instanceof Kind.ListOf list && node instanceof Node.Items items) {
            items.items().forEach(item -> walk(item, list.item()));
        } else if (node instanceof Node.Mapping mapping) {
            mapping(mapping, kind);
        }
    }

    private void mapping(Node.Mapping mapping, Kind kind) {
        if (kind instanceof Kind.Named named) {
            mapping.entries().forEach(entry -> walk(entry.value(), named.item()));
        } else if (kind instanceof Kind.Variants variants) {
            Optional<String> word = mapping.entries().stream()
                    .filter(entry -> entry.key().equals(variants.selector()))
                    .map(entry -> yaml(entry.value()))
                    .findFirst()
                    .or(variants::fallback);
            variants.cases().stream()
                    .filter(one -> word.filter(one.word()::equals).isPresent())
                    .forEach(one -> mapping(mapping, one.structure()));
        } else if (kind instanceof Kind.Structure structure) {
            for (Node.Entry entry : mapping.entries()) {
                structure.key(entry.key()).ifPresent(key -> {
                    String yaml = yaml(entry.value());
                    if (yaml.length() <= LONGEST) {
                        found.putIfAbsent(structure.name() + " " + key.name(), yaml);
                        elsewhere.putIfAbsent(at(key), yaml);
                    }
                    walk(entry.value(), key.kind());
                });
            }
        }
    }

    private static String yaml(Node node) {
        if (node instanceof Node.Mapping mapping) {
            return mapping.entries().stream()
                    .map(entry -> word(entry.key()) + ": " + yaml(entry.value()))
                    .collect(Collectors.joining(", ", "{", "}"));
        }
        if (node instanceof Node.Items items) {
            return items.items().stream().map(KeyExamples::yaml).collect(Collectors.joining(", ", "[", "]"));
        }
        Node.Scalar scalar = (Node.Scalar) node;
        return scalar.style() == Node.Style.WORDS ? word(scalar.text()) : scalar.text();
    }

    /** In quotes where YAML asks for them. */
    private static String word(String text) {
        return text.matches("[A-Za-z0-9][^:#\\[\\]{},\"]*") ? text : '"' + text + '"';
    }
}
