package darkrim.layout;

import darkrim.layout.form.Key;
import darkrim.layout.form.Kind;
import darkrim.layout.form.Measure;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;

/** The reference of all keys of a layout file as a page of Markdown: a section for each mapping, a row for each key. */
final class LayoutReference {
    private static final String HEAD =
            "| key | what it is | value | where left out | example |\n|---|---|---|---|---|\n";

    private final KeyExamples examples;
    private final StringBuilder page = new StringBuilder();
    /** Mappings by title, in the order in which they are first named. */
    private final Map<String, Kind> sections = new LinkedHashMap<>();

    private LayoutReference(KeyExamples examples) {
        this.examples = examples;
    }

    /** The page without its head. */
    static String of(KeyExamples examples) {
        LayoutReference reference = new LayoutReference(examples);
        reference.section(LayoutKeys.LAYOUT);
        Set<String> written = new LinkedHashSet<>();
        while (written.size() < reference.sections.size()) {
            String next = reference.sections.keySet().stream()
                    .filter(title -> !written.contains(title))
                    .findFirst()
                    .orElseThrow();
            written.add(next);
            if (reference.sections.get(next) instanceof Kind.Variants variants) {
                reference.section(variants);
            } else {
                reference.section((Kind.Structure) reference.sections.get(next));
            }
        }
        return reference.page.toString();
    }

    private void section(Kind.Structure structure) {
        heading(2, structure.name());
        rows(structure, structure.keys());
        exactlyOne(structure);
    }

    private void section(Kind.Variants variants) {
        heading(2, variants.name());
        page.append(variants.sentence())
                .append(" The key `")
                .append(variants.selector())
                .append("` decides: ");
        page.append(variants.words().stream()
                .map(word -> "[" + word + "](#" + anchor(variants, word) + ")")
                .collect(Collectors.joining(", ")));
        page.append(variants.fallback()
                .map(word -> "; `" + word + "` where it is left out.\n")
                .orElse(".\n"));
        List<Key> common = variants.cases().get(0).structure().keys().stream()
                .filter(key -> variants.cases().stream()
                        .allMatch(one -> one.structure().keys().contains(key)))
                .toList();
        if (!common.isEmpty()) {
            page.append("All of them have these keys:\n\n");
            rows(variants.cases().get(0).structure(), common);
        }
        for (Kind.Case one : variants.cases()) {
            heading(3, variants.name() + " " + one.word());
            rows(
                    one.structure(),
                    one.structure().keys().stream()
                            .filter(key -> !common.contains(key))
                            .toList());
            exactlyOne(one.structure());
        }
    }

    private void exactlyOne(Kind.Structure structure) {
        if (!structure.exactlyOneOf().isEmpty()) {
            page.append("\nExactly one of ")
                    .append(structure.exactlyOneOf().stream()
                            .map(key -> "`" + key + "`")
                            .collect(Collectors.joining(", ")))
                    .append(" must be given.\n");
        }
    }

    private void heading(int level, String words) {
        page.append('\n').append("#".repeat(level)).append(' ').append(words).append('\n');
    }

    private void rows(Kind.Structure structure, List<Key> keys) {
        page.append(HEAD);
        for (Key key : keys) {
            String left = key.required()
                    ? "an error"
                    : key.fallback().map(LayoutReference::fallback).orElse("nothing");
            page.append("| `")
                    .append(key.name())
                    .append("` | ")
                    .append(key.sentence())
                    .append(" | ")
                    .append(words(key.kind()))
                    .append(" | ")
                    .append(structure.exactlyOneOf().contains(key.name()) ? "see below" : left)
                    .append(" | ")
                    .append(examples.of(structure, key)
                            .map(yaml -> "`" + yaml + "`")
                            .orElse(""))
                    .append(" |\n");
        }
    }

    private static String fallback(String yaml) {
        return switch (yaml) {
            case "{}" -> "the defaults of its keys";
            case "\"\"" -> "empty";
            default -> "`" + yaml + "`";
        };
    }

    private String words(Kind kind) {
        if (kind instanceof Kind.Either either) {
            return either.kinds().stream().map(this::words).collect(Collectors.joining(", or "));
        }
        if (kind instanceof Kind.Numeric numeric) {
            return number(numeric);
        }
        if (kind instanceof Kind.ListOf list) {
            return "a list of " + list.count() + ": each " + words(list.item());
        }
        if (kind instanceof Kind.Named named) {
            return "names, each with " + words(named.item());
        }
        if (kind instanceof Kind.Choice choice) {
            return choice.words().stream().map(word -> "`" + word + "`").collect(Collectors.joining(", "));
        }
        if (kind instanceof Kind.Structure structure) {
            return link(structure.name(), structure);
        }
        if (kind instanceof Kind.Variants variants) {
            return link(variants.name(), variants);
        }
        return kind.expected();
    }

    private static String number(Kind.Numeric numeric) {
        if (numeric.measure().isEmpty()) {
            return numeric.expected();
        }
        Measure measure = numeric.measure().get();
        String unit = measure.equals(Measure.LENGTH) ? " mm" : measure.equals(Measure.ANGLE) ? " deg" : "";
        return measure + " " + numeric.range().describe(unit);
    }

    private String link(String name, Kind kind) {
        sections.putIfAbsent(name, kind);
        return "[" + name + "](#" + name + ")";
    }

    private static String anchor(Kind.Variants variants, String word) {
        return variants.name() + "-" + word;
    }
}
