package darkrim.recipe;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The recipes of docs/recipes.md can be carried out as they stand, and name every file. */
class RecipesTest {
    private static final Path MAIN = Path.of("src/main/java/darkrim");
    private static final String MARK =
            "<!-- What follows, up to the next empty line, is written by RecipesTest with -Dwrite.docs=true. -->\n";

    /** All four on one copy of the sources; then the tests that they add. */
    @Test
    void whatTheyAddCompilesWithoutWarningAndPassesItsTests(@TempDir Path folder) throws Exception {
        List<Recipe> recipes = Recipe.all();
        assertThat(recipes).extracting(Recipe::title).containsExactly("A part", "A finish", "A source", "An export");
        Map<Path, String> files = new LinkedHashMap<>();
        for (Recipe recipe : recipes) {
            recipe.apply(files);
        }
        try (Overlay overlay = Overlay.of(files, folder)) {
            for (Recipe recipe : recipes) {
                assertThat(recipe.tests()).as(recipe.title()).hasSize(1);
                assertThat(overlay.run(recipe.tests().get(0)))
                        .as(recipe.title())
                        .isNotEmpty();
            }
        }
    }

    /** A block is the plainest part: where it is told from others, a new kind must be too. */
    @Test
    void aPartTouchesEveryFileThatTellsPartsApart() throws IOException {
        Set<Path> files = naming("Shape\\.Block\\b|(kind\\(|case )\"block\"");
        assertThat(files.remove(MAIN.resolve("assembly/SimplePieces.java"))).isTrue();
        assertThat(recipe("A part").changed()).isEqualTo(files);
    }

    /** Fresnel's law is a reflectance against angle, as the law of the recipe is. */
    @Test
    void aFinishTouchesEveryFileThatTellsLawsApart() throws IOException {
        Set<Path> files = naming("\\bnew Fresnel\\(|\"fresnel\"|permits [^{]*Fresnel");
        assertThat(files.remove(MAIN.resolve("reflection/Fresnel.java"))).isTrue();
        assertThat(recipe("A finish").changed()).isEqualTo(files);
    }

    /** Run with {@code -Dwrite.docs=true} where the kinds of sources are told apart in another file. */
    @Test
    void theFilesThatTellSourcesApartAreListed() throws IOException {
        String page = Files.readString(Recipe.PAGE);
        int begin = page.indexOf(MARK) + MARK.length();
        int end = page.indexOf("\n\n", begin);
        List<String> order = List.of("layout", "scene", "study", "present", "view", "cli");
        String list = naming("SourceSpec\\.(Star|Distant)\\b").stream()
                .sorted(Comparator.comparingInt(
                        file -> order.indexOf(MAIN.relativize(file).getName(0).toString())))
                .map(file -> "- `" + file.toString().replace('\\', '/') + "`")
                .collect(Collectors.joining("\n"));
        String expected = page.substring(0, begin) + list + page.substring(end);
        if (Boolean.getBoolean("write.docs")) {
            Files.writeString(Recipe.PAGE, expected);
        }
        assertThat(Files.readString(Recipe.PAGE)).isEqualTo(expected);
    }

    private static Recipe recipe(String title) throws IOException {
        return Recipe.all().stream()
                .filter(each -> each.title().equals(title))
                .findFirst()
                .orElseThrow();
    }

    /** The files of the main code in which a pattern occurs. */
    private static Set<Path> naming(String pattern) throws IOException {
        Pattern wanted = Pattern.compile(pattern);
        Set<Path> files = new TreeSet<>();
        try (Stream<Path> all = Files.walk(MAIN)) {
            for (Path file :
                    all.filter(each -> each.toString().endsWith(".java")).toList()) {
                if (wanted.matcher(Files.readString(file)).find()) {
                    files.add(file);
                }
            }
        }
        return files;
    }
}
