package darkrim.layout.form;

import darkrim.diagnostic.Findings;
import darkrim.diagnostic.Place;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.snakeyaml.engine.v2.api.LoadSettings;
import org.snakeyaml.engine.v2.api.lowlevel.Parse;
import org.snakeyaml.engine.v2.events.Event;
import org.snakeyaml.engine.v2.exceptions.MarkedYamlEngineException;
import org.snakeyaml.engine.v2.exceptions.ReaderException;
import org.snakeyaml.engine.v2.exceptions.YamlEngineException;
import org.snakeyaml.engine.v2.schema.CoreSchema;

/**
 * Turns the bytes of one YAML 1.2 document into a tree of {@link Node}s. Refused: aliases (a small file could stand
 * for a huge one), tags other than the core ones, a second document, more than {@value #DEEPEST} levels, a key given
 * twice.
 */
public final class YamlText {
    /** Most bytes of a file. */
    public static final int LARGEST = 1 << 20;
    /** Most levels of mappings and lists. */
    public static final int DEEPEST = 32;

    private YamlText() {}

    /**
     * Parses a text.
     *
     * @param file name of the file, for messages
     * @param content its bytes, UTF-8
     * @param findings receives what is wrong
     * @return the tree; empty where the text cannot be read as a whole
     */
    public static Optional<Node> parse(String file, byte[] content, Findings findings) {
        Place whole = new Place(file, 1, 1);
        if (content.length > LARGEST) {
            findings.error("too-large", whole, "the file is too large, expected at most 1 MiB");
            return Optional.empty();
        }
        Optional<String> text = decoded(content, whole, findings);
        return text.flatMap(decoded -> parse(file, decoded, findings));
    }

    private static Optional<Node> parse(String file, String text, Findings findings) {
        LoadSettings settings = LoadSettings.builder()
                .setLabel(file)
                .setSchema(new CoreSchema())
                .setCodePointLimit(LARGEST)
                .build();
        List<Event> events = new ArrayList<>();
        try {
            int depth = 0;
            for (Event event : new Parse(settings).parseString(text)) {
                events.add(event);
                depth += YamlTree.step(event);
                if (depth > DEEPEST) {
                    findings.error(
                            "too-deep",
                            YamlTree.place(file, event.getStartMark()),
                            "mappings and lists are nested too deeply, expected at most " + DEEPEST + " levels");
                    return Optional.empty();
                }
            }
        } catch (ReaderException unreadable) {
            findings.error(
                    "not-text",
                    placeOf(file, text, unreadable.getPosition()),
                    "the character U+%04X has no place in a YAML text, expected it left out"
                            .formatted(unreadable.getCodePoint()));
            return Optional.empty();
        } catch (MarkedYamlEngineException problem) {
            findings.addAll(List.of(YamlProblem.finding(file, problem)));
            return Optional.empty();
        } catch (YamlEngineException problem) {
            findings.error(
                    "not-yaml",
                    new Place(file, 1, 1),
                    "the text is not YAML: " + Wording.shortened(String.valueOf(problem.getMessage())));
            return Optional.empty();
        }
        return new YamlTree(file, findings).build(events);
    }

    private static Optional<String> decoded(byte[] content, Place whole, Findings findings) {
        ByteBuffer bytes = ByteBuffer.wrap(content);
        try {
            String text = StandardCharsets.UTF_8
                    .newDecoder()
                    .onMalformedInput(CodingErrorAction.REPORT)
                    .onUnmappableCharacter(CodingErrorAction.REPORT)
                    .decode(bytes)
                    .toString();
            return Optional.of(text.startsWith("\uFEFF") ? text.substring(1) : text);
        } catch (CharacterCodingException malformed) {
            int wrong = bytes.position();
            String before = new String(content, 0, wrong, StandardCharsets.UTF_8);
            findings.error(
                    "not-text",
                    placeOf(whole.file(), before, before.length()),
                    "the file is not text in UTF-8, byte " + (wrong + 1)
                            + " of the file is wrong, expected it saved as UTF-8");
            return Optional.empty();
        }
    }

    private static Place placeOf(String file, String text, int position) {
        int line = 1;
        int column = 1;
        int[] points = text.codePoints().limit(position).toArray();
        for (int point : points) {
            column = point == '\n' ? 1 : column + 1;
            line += point == '\n' ? 1 : 0;
        }
        return new Place(file, line, column);
    }
}
