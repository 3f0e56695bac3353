package darkrim.layout.form;

import darkrim.diagnostic.Findings;
import darkrim.diagnostic.Place;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * Reads a tree of nodes against the table of kinds and keys: what fits becomes values, what does not becomes findings.
 */
public final class FormReader {
    /** Characters of a whole number; the largest that is ever allowed has 16 digits. */
    private static final int LONGEST_WHOLE = 40;

    private final Findings findings;
    private final List<Amount> amounts = new ArrayList<>();
    private final EnclosingKeys enclosing = new EnclosingKeys();

    /**
     * @param findings receives what does not fit
     */
    public FormReader(Findings findings) {
        this.findings = findings;
    }

    /** All numbers that were read, in the order of the file; they have no values yet. */
    public List<Amount> amounts() {
        return Collections.unmodifiableList(amounts);
    }

    /**
     * Reads a node as a kind.
     *
     * @param node the node
     * @param kind what is expected
     * @param where which part of the file it is, for messages, such as {@code parts.lid}
     * @return the value; empty, with a finding, if the node does not fit
     */
    public Optional<Value> read(Node node, Kind kind, String where) {
        if (node instanceof Node.Scalar scalar && scalar.style() == Node.Style.UNREADABLE) {
            return Optional.empty();
        }
        if (kind instanceof Kind.Either either) {
            return readEither(node, either, where);
        }
        if (kind instanceof Kind.Structure structure && node instanceof Node.Mapping mapping) {
            return Optional.of(
                    new StructureReader(this, findings, where).read(mapping, structure, "", Optional.empty()));
        }
        if (kind instanceof Kind.Variants variants && node instanceof Node.Mapping mapping) {
            return readVariant(mapping, variants, where);
        }
        if (kind instanceof Kind.Named named && node instanceof Node.Mapping mapping) {
            return Optional.of(readNamed(mapping, named, where));
        }
        if (kind instanceof Kind.ListOf list && node instanceof Node.Items items) {
            return readList(items, list, where);
        }
        if (node instanceof Node.Scalar scalar && scalar.style() != Node.Style.NOTHING) {
            return readScalar(scalar, kind, where);
        }
        return wrong(node, kind, where);
    }

    /** The mappings around what is being read. */
    EnclosingKeys enclosing() {
        return enclosing;
    }

    /** The value of a key that is not given. */
    Optional<Value> fallback(String yaml, Kind kind, Place place) {
        Findings own = new Findings();
        Node node = YamlText.parse(place.file(), yaml.getBytes(StandardCharsets.UTF_8), own)
                .orElseThrow();
        return read(Moved.to(place, node), kind, "");
    }

    private Optional<Value> readScalar(Node.Scalar scalar, Kind kind, String where) {
        Place place = scalar.place();
        if (kind instanceof Kind.Text text
                && (scalar.style() == Node.Style.WORDS || (text.numberToo() && scalar.style() == Node.Style.NUMBER))) {
            Optional<String> problem = text.letters().problem(scalar.text());
            problem.ifPresent(message -> findings.error("text", place, message));
            return problem.isPresent() ? Optional.empty() : Optional.of(new Value.Words(scalar.text(), place));
        }
        if (kind instanceof Kind.Choice choice && scalar.style() == Node.Style.WORDS) {
            if (choice.words().contains(scalar.text())) {
                return Optional.of(new Value.Words(scalar.text(), place));
            }
            findings.error(
                    "unknown-word",
                    place,
                    "unknown word '" + Wording.shortened(scalar.text()) + "' for " + where + ", "
                            + Wording.suggestion(scalar.text(), choice.words()));
            return Optional.empty();
        }
        if (kind instanceof Kind.Flag && scalar.style() == Node.Style.FLAG) {
            return Optional.of(new Value.Flag(scalar.text().equalsIgnoreCase("true"), place));
        }
        if (kind instanceof Kind.Whole whole && scalar.style() == Node.Style.NUMBER) {
            return readWhole(scalar, whole);
        }
        if (kind instanceof Kind.Numeric numeric && scalar.style() != Node.Style.FLAG) {
            Optional<Written> written = Written.read(scalar, numeric, findings);
            return written.map(found -> {
                Amount amount = new Amount(found, numeric, place);
                amounts.add(amount);
                return amount;
            });
        }
        return wrong(scalar, kind, where);
    }

    private Optional<Value> readWhole(Node.Scalar scalar, Kind.Whole kind) {
        String shown = Wording.shortened(scalar.text());
        try {
            // A decimal number of a million digits would take minutes.
            BigDecimal number = new BigDecimal(scalar.text().length() > LONGEST_WHOLE ? "1e30" : scalar.text());
            // Compared before it is turned into a whole number: 1e999999999 would fill the memory.
            boolean inRange = number.compareTo(BigDecimal.valueOf(kind.least())) >= 0
                    && number.compareTo(BigDecimal.valueOf(kind.most())) <= 0;
            if (inRange && number.stripTrailingZeros().scale() <= 0) {
                return Optional.of(new Value.Count(number.longValueExact(), scalar.place()));
            }
            findings.error(
                    inRange ? "whole" : "range",
                    scalar.place(),
                    shown + (inRange ? " is not whole" : " is out of range") + ", expected " + kind.expected());
        } catch (NumberFormatException notDecimal) {
            findings.error(
                    "number-form",
                    scalar.place(),
                    "'" + shown + "' is not a decimal number, expected " + kind.expected());
        }
        return Optional.empty();
    }

    private Optional<Value> readList(Node.Items items, Kind.ListOf kind, String where) {
        int size = items.items().size();
        if (size < kind.least() || size > kind.most()) {
            findings.error(
                    "list-length",
                    items.place(),
                    where + " has " + size + (size == 1 ? " item" : " items") + ", expected " + kind.expected());
            return Optional.empty();
        }
        List<Value> values = new ArrayList<>();
        for (int i = 0; i < size; i++) {
            read(items.items().get(i), kind.item(), where + "[" + (i + 1) + "]").ifPresent(values::add);
        }
        return Optional.of(new Value.Items(values, values.size() == size, items.place()));
    }

    private Value readNamed(Node.Mapping mapping, Kind.Named kind, String where) {
        Map<String, Value> values = new LinkedHashMap<>();
        Map<String, Place> places = new LinkedHashMap<>();
        int size = mapping.entries().size();
        if (size < kind.least() || size > kind.most()) {
            findings.error(
                    "count",
                    mapping.place(),
                    size == 0
                            ? where + " has no entries, expected at least " + kind.least()
                            : where + " has " + size + " entries, expected at most " + kind.most());
            return new Value.Named(values, places, false, mapping.place());
        }
        for (Node.Entry entry : mapping.entries()) {
            Optional<String> problem = kind.letters().problem(entry.key());
            problem.ifPresent(message -> findings.error("name", entry.keyPlace(), "the name " + message));
            places.put(entry.key(), entry.keyPlace());
            if (standsTooDeep(entry, kind.item())) {
                findings.error(
                        "unknown-key",
                        entry.keyPlace(),
                        "'" + entry.key()
                                + "' is a key of " + enclosing.where()
                                + " and does not fit here, did you mean that one, outside of " + where + "?");
                continue;
            }
            Optional<Value> value = read(entry.value(), kind.item(), where + "." + Wording.shortened(entry.key()));
            if (problem.isEmpty()) {
                value.ifPresent(found -> values.put(entry.key(), found));
            }
        }
        return new Value.Named(values, places, values.size() == size, mapping.place());
    }

    /** Whether the name of an entry is a key that the mapping around lacks, and its value belongs there and not here. */
    private boolean standsTooDeep(Node.Entry entry, Kind item) {
        Optional<Kind> outside = enclosing.takenFor(entry.key());
        return outside.isPresent() && isWrong(entry.value(), item) && !isWrong(entry.value(), outside.get());
    }

    private static boolean isWrong(Node value, Kind kind) {
        Findings own = new Findings();
        new FormReader(own).read(value, kind, "");
        return own.hasErrors();
    }

    private Optional<Value> readVariant(Node.Mapping mapping, Kind.Variants kind, String where) {
        Optional<Node.Entry> selector = mapping.entries().stream()
                .filter(entry -> entry.key().equals(kind.selector()))
                .findFirst();
        Optional<String> word = kind.fallback();
        if (selector.isPresent()) {
            word = read(selector.get().value(), new Kind.Choice(kind.words()), "'" + kind.selector() + "'")
                    .map(Fields::text);
        } else if (word.isEmpty()) {
            findings.error(
                    "missing-key",
                    mapping.place(),
                    "the key '" + kind.selector() + "' is missing in " + where + ", expected "
                            + Wording.anyOf(kind.words()));
            reportKeysOfNoCase(mapping, kind, where);
        }
        return word.map(chosen -> {
            Kind.Case match = kind.cases().stream()
                    .filter(each -> each.word().equals(chosen))
                    .findFirst()
                    .orElseThrow();
            return new StructureReader(this, findings, where)
                    .read(mapping, match.structure(), chosen, Optional.of(kind.selector()));
        });
    }

    /** Without its selector nothing is known of a mapping but which keys none of its kinds has: the selector may be one of them, misspelt. */
    private void reportKeysOfNoCase(Node.Mapping mapping, Kind.Variants kind, String where) {
        List<String> names = Stream.concat(
                        Stream.of(kind.selector()),
                        kind.cases().stream()
                                .flatMap(each -> each.structure().keys().stream())
                                .map(Key::name))
                .distinct()
                .toList();
        mapping.entries().stream()
                .filter(entry -> !names.contains(entry.key()))
                .forEach(entry -> findings.error(
                        "unknown-key",
                        entry.keyPlace(),
                        "unknown key '" + Wording.shortened(entry.key()) + "' in " + where + ", "
                                + suggestion(entry, kind, names)));
    }

    private static String suggestion(Node.Entry entry, Kind.Variants kind, List<String> names) {
        if (kind.words().contains(entry.key())) {
            return "did you mean '" + kind.selector() + ": " + entry.key() + "'?";
        }
        boolean holdsAll = entry.value() instanceof Node.Mapping mapping
                && mapping.entries().stream().anyMatch(each -> each.key().equals(kind.selector()));
        return holdsAll
                ? "expected the keys that stand in it, without this one around them"
                : Wording.suggestion(entry.key(), names);
    }

    private Optional<Value> readEither(Node node, Kind.Either either, String where) {
        for (Kind kind : either.kinds()) {
            if (fits(node, kind)) {
                return read(node, kind, where);
            }
        }
        return wrong(node, either, where);
    }

    private static boolean fits(Node node, Kind kind) {
        if (node instanceof Node.Mapping) {
            return fitsMapping(kind);
        }
        if (node instanceof Node.Items) {
            return kind instanceof Kind.ListOf;
        }
        boolean compound = fitsMapping(kind) || kind instanceof Kind.ListOf;
        if (kind instanceof Kind.Choice) {
            return node instanceof Node.Scalar scalar && scalar.style() == Node.Style.WORDS;
        }
        return node instanceof Node.Scalar scalar && scalar.style() != Node.Style.NOTHING && !compound;
    }

    private Optional<Value> wrong(Node node, Kind kind, String where) {
        findings.error(
                "wrong-type",
                node.place(),
                where + " is " + node.describe() + ", expected " + kind.expected() + dashes(node, kind));
        return Optional.empty();
    }

    /** What to do about dashes where a list stands for a mapping or the other way round. */
    private static String dashes(Node node, Kind kind) {
        if (node instanceof Node.Items && fitsMapping(kind)) {
            return ", without dashes";
        }
        return node instanceof Node.Mapping && kind instanceof Kind.ListOf list && !list.isOfNumbers()
                ? ", each with a dash before it"
                : "";
    }

    private static boolean fitsMapping(Kind kind) {
        return kind instanceof Kind.Structure || kind instanceof Kind.Variants || kind instanceof Kind.Named;
    }
}
