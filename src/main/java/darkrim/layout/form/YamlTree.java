package darkrim.layout.form;

import darkrim.diagnostic.Findings;
import darkrim.diagnostic.Place;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.Iterator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.snakeyaml.engine.v2.common.ScalarStyle;
import org.snakeyaml.engine.v2.events.AliasEvent;
import org.snakeyaml.engine.v2.events.DocumentStartEvent;
import org.snakeyaml.engine.v2.events.Event;
import org.snakeyaml.engine.v2.events.MappingStartEvent;
import org.snakeyaml.engine.v2.events.ScalarEvent;
import org.snakeyaml.engine.v2.events.SequenceStartEvent;
import org.snakeyaml.engine.v2.exceptions.Mark;
import org.snakeyaml.engine.v2.nodes.Tag;
import org.snakeyaml.engine.v2.resolver.ScalarResolver;
import org.snakeyaml.engine.v2.schema.CoreSchema;

/** Builds the tree of one document from the events of the YAML library. */
final class YamlTree {
    private static final Set<String> CORE_TAGS = Set.of(
            "!",
            Tag.STR.getValue(),
            Tag.INT.getValue(),
            Tag.FLOAT.getValue(),
            Tag.BOOL.getValue(),
            Tag.NULL.getValue(),
            Tag.SEQ.getValue(),
            Tag.MAP.getValue());

    private final String file;
    private final Findings findings;
    private final ScalarResolver resolver = new CoreSchema().getScalarResolver();

    YamlTree(String file, Findings findings) {
        this.file = file;
        this.findings = findings;
    }

    /** How an event changes the depth. */
    static int step(Event event) {
        return switch (event.getEventId()) {
            case MappingStart, SequenceStart -> 1;
            case MappingEnd, SequenceEnd -> -1;
            default -> 0;
        };
    }

    static Place place(String file, Optional<Mark> mark) {
        return mark.map(at -> new Place(file, at.getLine() + 1, at.getColumn() + 1))
                .orElse(new Place(file, 1, 1));
    }

    /** The tree; empty if there is no document. */
    Optional<Node> build(List<Event> events) {
        Optional<Node> root = Optional.empty();
        boolean read = false;
        Iterator<Event> stream = events.iterator();
        while (stream.hasNext()) {
            Event event = stream.next();
            if (event instanceof DocumentStartEvent) {
                if (read) {
                    findings.error(
                            "second-document",
                            place(file, event.getStartMark()),
                            "a second document begins here, expected one document in the file");
                    return Optional.empty();
                }
                root = Optional.of(node(stream.next(), stream));
                read = true;
            }
        }
        return root;
    }

    private Node node(Event event, Iterator<Event> stream) {
        Place place = place(file, event.getStartMark());
        if (event instanceof MappingStartEvent mapping) {
            checkTag(mapping.getTag(), place);
            return mapping(stream, place);
        }
        if (event instanceof SequenceStartEvent sequence) {
            checkTag(sequence.getTag(), place);
            List<Node> items = new ArrayList<>();
            for (Event next = stream.next(); next.getEventId() != Event.ID.SequenceEnd; next = stream.next()) {
                items.add(node(next, stream));
            }
            return new Node.Items(items, place);
        }
        if (event instanceof ScalarEvent scalar) {
            checkTag(scalar.getTag(), place);
            return scalar(scalar);
        }
        String name = event instanceof AliasEvent alias ? alias.getAlias().getValue() : "";
        findings.error(
                "alias",
                place,
                "the alias '*" + Wording.shortened(name)
                        + "' is not supported, expected the value itself or a named dimension");
        return new Node.Scalar("", Node.Style.UNREADABLE, place, -1);
    }

    private Node mapping(Iterator<Event> stream, Place place) {
        List<Node.Entry> entries = new ArrayList<>();
        Map<String, Place> seen = new HashMap<>();
        for (Event next = stream.next(); next.getEventId() != Event.ID.MappingEnd; next = stream.next()) {
            Node key = node(next, stream);
            Node value = node(stream.next(), stream);
            if (!(key instanceof Node.Scalar scalar) || scalar.style() == Node.Style.NOTHING) {
                findings.error("key-form", key.place(), "a key is " + key.describe() + ", expected a word");
                continue;
            }
            Place first = seen.putIfAbsent(scalar.text(), key.place());
            if (first != null) {
                findings.error(
                        "duplicate-key",
                        key.place(),
                        "the key '" + Wording.shortened(scalar.text()) + "' is given twice, first at line "
                                + first.line() + ", column " + first.column() + ", expected each key once");
            } else if (scalar.style() != Node.Style.UNREADABLE) {
                entries.add(new Node.Entry(scalar.text(), key.place(), value));
            }
        }
        return new Node.Mapping(entries, place);
    }

    private Node scalar(ScalarEvent event) {
        String text = event.getValue();
        String tag = event.getTag()
                .filter(CORE_TAGS::contains)
                .orElseGet(() -> resolver.resolve(text, event.getImplicit().canOmitTagInPlainScalar())
                        .getValue());
        Node.Style style = Node.Style.WORDS;
        if (tag.equals(Tag.NULL.getValue())) {
            style = Node.Style.NOTHING;
        } else if (tag.equals(Tag.BOOL.getValue())) {
            style = Node.Style.FLAG;
        } else if (tag.equals(Tag.INT.getValue()) || tag.equals(Tag.FLOAT.getValue())) {
            style = Node.Style.NUMBER;
        }
        return new Node.Scalar(text, style, place(file, event.getStartMark()), quote(event));
    }

    /**
     * Characters before the text; -1 where escapes, line breaks, a tag or an anchor make the text differ from the
     * file.
     */
    private static int quote(ScalarEvent event) {
        Mark start = event.getStartMark().orElseThrow();
        Mark end = event.getEndMark().orElseThrow();
        int quote = event.getScalarStyle() == ScalarStyle.PLAIN ? 0 : 1;
        int length = event.getValue().codePointCount(0, event.getValue().length());
        boolean same = start.getLine() == end.getLine() && end.getColumn() - start.getColumn() == length + 2 * quote;
        return same ? quote : -1;
    }

    private void checkTag(Optional<String> tag, Place place) {
        tag.filter(name -> !CORE_TAGS.contains(name))
                .ifPresent(name -> findings.error(
                        "tag",
                        place,
                        "the tag '" + Wording.shortened(name)
                                + "' is not supported, expected plain YAML without tags"));
    }
}
