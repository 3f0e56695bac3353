package darkrim.layout;

import static org.assertj.core.api.Assertions.assertThat;

import darkrim.diagnostic.Findings;
import darkrim.layout.form.YamlText;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** The page of all keys says what the reader does, as the schema does. */
class LayoutReferenceTest {
    private static final Path PAGE = Path.of("docs/layout.md");
    private static final Path EVERY_KEY = Path.of("src/test/resources/layouts/every-key.yaml");
    /** What stands below is written from the table of keys. */
    private static final String MARK =
            "<!-- What follows is written by LayoutReferenceTest with -Dwrite.docs=true. -->\n";

    /** Run with {@code -Dwrite.docs=true} after a change of the table of keys. */
    @Test
    void theKeysOnThePageAreThoseOfTheTable() throws IOException {
        String page = Files.readString(PAGE);
        String expected = page.substring(0, page.indexOf(MARK)) + MARK + LayoutReference.of(examples());
        if (Boolean.getBoolean("write.docs")) {
            Files.writeString(PAGE, expected);
        }
        assertThat(Files.readString(PAGE)).isEqualTo(expected);
    }

    /** The schema is another walk through the same table. */
    @Test
    void everyKeyOfTheSchemaIsOnThePage() throws IOException {
        String page = Files.readString(PAGE);
        Set<String> keys = new TreeSet<>();
        collect(JsonMapper.shared().readTree(LayoutSchema.text()), keys);
        assertThat(keys).hasSizeGreaterThan(80);
        for (String key : keys) {
            assertThat(page.contains("| `" + key + "` |") || page.contains("The key `" + key + "` decides"))
                    .as(key)
                    .isTrue();
        }
    }

    private static void collect(JsonNode node, Set<String> keys) {
        if (node.has("properties")) {
            keys.addAll(node.get("properties").propertyNames());
        }
        node.forEach(child -> collect(child, keys));
    }

    @Test
    void everyLinkWithinThePageLeadsToAHeading() throws IOException {
        String page = Files.readString(PAGE);
        Matcher link = Pattern.compile("\\]\\(#([^)]+)\\)").matcher(page);
        int found = 0;
        while (link.find()) {
            assertThat(page).containsPattern("(?m)^#+ " + link.group(1).replace('-', '.') + "$");
            found++;
        }
        assertThat(found).isGreaterThan(30);
    }

    private static KeyExamples examples() throws IOException {
        Findings findings = new Findings();
        return KeyExamples.of(
                YamlText.parse("f", Files.readAllBytes(EVERY_KEY), findings).orElseThrow());
    }
}
