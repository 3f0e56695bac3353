package darkrim.layout.form;

import darkrim.diagnostic.Findings;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * Reads a mapping with fixed keys.
 *
 * @param reader reads the values
 * @param findings receives unknown and missing keys
 * @param where which part of the file it is, for messages
 */
record StructureReader(FormReader reader, Findings findings, String where) {
    /** Digits, perhaps with a unit: what YAML makes a key of within braces when a number has a decimal comma. */
    private static final Pattern AFTER_A_COMMA = Pattern.compile("[0-9]+([eE][-+]?[0-9]+)? *[a-z]*");

    /**
     * @param mapping the mapping
     * @param structure its keys
     * @param variant the word that selected the structure; empty where there is none
     * @param selector the key that held the word
     */
    Fields read(Node.Mapping mapping, Kind.Structure structure, String variant, Optional<String> selector) {
        Map<String, Value> values = new LinkedHashMap<>();
        List<String> given = new ArrayList<>();
        Set<String> present = mapping.entries().stream().map(Node.Entry::key).collect(Collectors.toSet());
        boolean complete = true;
        reader.enclosing().enter(structure, place(), present);
        for (Node.Entry entry : mapping.entries()) {
            if (selector.filter(entry.key()::equals).isPresent()) {
                continue;
            }
            Optional<Key> key = structure.key(entry.key());
            if (key.isEmpty()) {
                reportUnknown(entry, structure, variant, selector, present);
                continue;
            }
            given.add(entry.key());
            Optional<Value> value = reader.read(entry.value(), key.get().kind(), path(entry.key()));
            value.ifPresent(found -> values.put(entry.key(), found));
            complete &= value.isPresent();
        }
        reader.enclosing().leave();
        complete &= checkChoice(mapping, structure, given);
        Set<String> needed = new TreeSet<>();
        given.stream().map(structure.needed()::get).filter(Objects::nonNull).forEach(needed::add);
        needed.removeAll(given);
        for (Key key : structure.keys()) {
            if (!given.contains(key.name())) {
                if (key.required() || needed.contains(key.name())) {
                    complete = false;
                    findings.error(
                            "missing-key",
                            mapping.place(),
                            "the key '" + key.name() + "' is missing in " + place() + ", expected "
                                    + key.kind().expected());
                }
                key.fallback()
                        .flatMap(yaml -> reader.fallback(yaml, key.kind(), mapping.place()))
                        .ifPresent(value -> values.put(key.name(), value));
            }
        }
        return new Fields(variant, values, complete, mapping.place());
    }

    private void reportUnknown(
            Node.Entry entry,
            Kind.Structure structure,
            String variant,
            Optional<String> selector,
            Set<String> present) {
        if (entry.key().equals("<<")) {
            findings.error(
                    "merge", entry.keyPlace(), "merging with '<<' is not supported, expected the keys themselves");
            return;
        }
        if (AFTER_A_COMMA.matcher(entry.key()).matches()) {
            findings.error(
                    "unknown-key",
                    entry.keyPlace(),
                    "unknown key '" + Wording.shortened(entry.key()) + "' in " + place()
                            + ", a number; if it follows a decimal comma, expected a point: 0.5, not 0,5");
            return;
        }
        List<String> names = Stream.concat(
                        selector.stream(), structure.keys().stream().map(Key::name))
                .filter(name -> !present.contains(name))
                .toList();
        String holder =
                variant.isEmpty() ? place() : place() + ", which is of " + selector.orElse("kind") + " " + variant;
        if (selector.isPresent() && !present.contains(selector.get())) {
            holder += " because the key '" + selector.get() + "' is not given";
        }
        findings.error(
                "unknown-key",
                entry.keyPlace(),
                "unknown key '" + Wording.shortened(entry.key()) + "' in " + holder + ", "
                        + suggestion(entry.key(), structure, names));
    }

    private String suggestion(String word, Kind.Structure structure, List<String> names) {
        return keyWithWord(word, structure, names)
                .or(() -> Wording.didYouMean(word, names))
                .or(() -> reader.enclosing()
                        .holderOf(word)
                        .map(holder ->
                                "did you mean the '" + word + "' of " + holder + ", outside of " + place() + "?"))
                .orElseGet(() -> names.isEmpty() ? "expected no further key" : Wording.suggestion(word, names));
    }

    /** For the word of a key in place of the key, as in {@code turn: {y: 90}}. */
    private static Optional<String> keyWithWord(String word, Kind.Structure structure, List<String> names) {
        return structure.keys().stream()
                .filter(key -> names.contains(key.name()) && takes(key.kind(), word))
                .findFirst()
                .map(key -> "did you mean '" + key.name() + ": " + word + "'?");
    }

    private static boolean takes(Kind kind, String word) {
        if (kind instanceof Kind.Either either) {
            return either.kinds().stream().anyMatch(each -> takes(each, word));
        }
        return kind instanceof Kind.Choice choice && choice.words().contains(word);
    }

    private boolean checkChoice(Node.Mapping mapping, Kind.Structure structure, List<String> given) {
        List<String> choice = structure.exactlyOneOf();
        List<String> chosen = given.stream().filter(choice::contains).toList();
        if (choice.isEmpty() || chosen.size() == 1) {
            return true;
        }
        findings.error(
                "one-of",
                mapping.place(),
                place() + " has " + (chosen.isEmpty() ? "none" : chosen.size()) + " of the keys "
                        + String.join(", ", choice) + ", expected exactly one");
        return false;
    }

    private String place() {
        return where.isEmpty() ? "the layout" : where;
    }

    private String path(String key) {
        return where.isEmpty() ? key : where + "." + key;
    }
}
