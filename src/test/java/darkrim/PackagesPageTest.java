package darkrim;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** docs/packages.md is what the packages say of themselves, and the types that they name are there. */
class PackagesPageTest {
    private static final Path PAGE = Path.of("docs/packages.md");
    private static final Path SOURCES = Path.of("src/main/java");
    private static final Pattern TEXT = Pattern.compile("/\\*\\*(.*?)\\*/", Pattern.DOTALL);
    private static final Pattern TYPE = Pattern.compile("\\{@code[\\s*]+([A-Z]\\w+)[.}]");
    private static final Pattern TYPE_ELSEWHERE = Pattern.compile("\\{@code[\\s*]+([a-z]+(?:\\.[a-z]+)*\\.[A-Z]\\w+)}");
    private static final List<String> ORDER = ArchitectureTest.everyPackage().toList();

    /** Run with {@code -Dwrite.docs=true} after a change of a package-info.java. */
    @Test
    void thePageIsWhatThePackagesSay() throws IOException {
        StringBuilder page =
                new StringBuilder("# The packages\n\nWritten by PackagesPageTest with -Dwrite.docs=true from each"
                        + " package-info.java. Data goes down this page as far as `cli`;\nwhat follows are leaves, which every package"
                        + " may use. DEVELOPERS.md has the rules, ArchitectureTest holds them.\n"
                        + "For a first hour: `study`, then `layout` to `verdict` in this order, each with the class that its text names last;"
                        + " the packages within `study`,\n`present` and `view` when they are needed."
                        + " [recipes.md](recipes.md) has four ways through, each with all files that it touches.\n");
        for (Path folder : folders()) {
            page.append("\n## ")
                    .append(name(folder))
                    .append('\n')
                    .append(markdown(text(folder)))
                    .append('\n');
        }
        if (Boolean.getBoolean("write.docs")) {
            Files.writeString(PAGE, page);
        }
        assertThat(Files.readString(PAGE)).isEqualTo(page.toString());
    }

    @Test
    void everyPackageSaysWhatComesInWhatGoesOutWhatItMustNotKnowAndWhereToBegin() throws IOException {
        for (Path folder : folders()) {
            assertThat(text(folder).replaceAll("\\s*\\n \\*\\s*", " "))
                    .as(name(folder))
                    .containsPattern("In: |In and out: ")
                    .containsPattern("Out: |In and out: ")
                    .containsPattern("Main types?: ")
                    .containsPattern("must not know: |It knows nothing of ")
                    .containsPattern("Begin to read: \\{@code [A-Z]");
        }
    }

    @Test
    void theTypesThatAPackageNamesAreInIt() throws IOException {
        int named = 0;
        for (Path folder : folders()) {
            Matcher type = TYPE.matcher(text(folder));
            while (type.find()) {
                assertThat(folder.resolve(type.group(1) + ".java")).exists();
                named++;
            }
            Matcher other = TYPE_ELSEWHERE.matcher(text(folder));
            while (other.find()) {
                assertThat(SOURCES.resolve("darkrim").resolve(other.group(1).replace('.', '/') + ".java"))
                        .exists();
            }
        }
        assertThat(named).isGreaterThan(150);
    }

    private static List<Path> folders() throws IOException {
        try (Stream<Path> files = Files.walk(SOURCES)) {
            List<Path> folders =
                    new ArrayList<>(files.filter(file -> file.toString().endsWith(".java"))
                            .map(Path::getParent)
                            .distinct()
                            .toList());
            folders.sort(Comparator.<Path>comparingInt(
                            folder -> ORDER.indexOf(name(folder).split("\\.", -1)[0]))
                    .thenComparing(PackagesPageTest::name));
            return folders;
        }
    }

    private static String name(Path folder) {
        return SOURCES.resolve("darkrim").relativize(folder).toString().replace('/', '.');
    }

    private static String text(Path folder) throws IOException {
        Matcher text = TEXT.matcher(Files.readString(folder.resolve("package-info.java")));
        assertThat(text.find()).as(folder.toString()).isTrue();
        return text.group(1);
    }

    private static String markdown(String text) {
        return text.replaceAll("(?m)^ \\* ?", "")
                .strip()
                .replaceAll("\\{@link darkrim\\.([\\w.]+)}", "`$1`")
                .replaceAll("\\{@code\\s+([^}]+)}", "`$1`")
                .replace("<p>", "");
    }
}
