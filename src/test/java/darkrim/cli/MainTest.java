package darkrim.cli;

import static org.assertj.core.api.Assertions.assertThat;

import darkrim.present.Results;
import darkrim.verdict.Watch;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** The command line inside this process: exit codes, and what goes where. */
class MainTest {
    private static final String DARK = "backs-dark: {surfaces: '{left,right}/back', direct: none}";

    @TempDir
    private Path folder;

    private Path layout;

    @BeforeEach
    void writeLayout() throws IOException {
        layout = layout(DARK);
    }

    @Test
    void requirementsThatHoldGiveZero() {
        Run run = Run.of("check", layout.toString());
        assertThat(run.code()).isZero();
        assertThat(run.output()).contains("PASS: the requirement holds.");
        assertThat(run.errors()).isEmpty();
    }

    @Test
    void aRequirementThatDoesNotHoldGivesOne() throws IOException {
        Run run =
                Run.of("check", layout("dark: {surfaces: screen, direct: none}").toString());
        assertThat(run.code()).isEqualTo(1);
        assertThat(run.output()).contains("FAIL: the requirement does not hold: dark.");
    }

    @Test
    void aBudgetThatEndsTooEarlyGivesThree() throws IOException {
        String dim = "dim: {surfaces: screen/front, direct: {at_most: 0.9}}";
        Run run = Run.of("check", layout(dim).toString(), "--samples", "1e3");
        assertThat(run.code()).isEqualTo(3);
        assertThat(run.output()).contains("UNDECIDED: the requirement is not decided within 1,000 samples");
    }

    @Test
    void stoppedWorkShowsWhatIsFinishedAndGivesThree() throws IOException {
        Watch stopped = new Watch() {
            private boolean proved;

            @Override
            public void progress(String step, long done, long most) {
                proved |= done == most;
            }

            @Override
            public boolean stop() {
                return proved;
            }
        };
        Path two = layout(DARK, "dim: {surfaces: screen/front, direct: {at_most: 0.9}}");
        Run run = Run.watched(() -> stopped, "check", two.toString());
        assertThat(run.code()).isEqualTo(3);
        assertThat(run.output())
                .contains("UNDECIDED: 1 of 2 requirements not decided when the work was stopped: dim.")
                .contains("backs-dark: both surfaces proved dark.");
    }

    @Test
    void everyFindingIsShownWithItsPlaceAndNothingIsChecked() throws IOException {
        String broken = Files.readString(layout)
                .replace("diameter: 20", "diametre: 20")
                .replace("direct: none", "direct: noon");
        Files.writeString(layout, broken);
        Path json = folder.resolve("out.json");
        Run run = Run.of("check", layout.toString(), "--json", json.toString());
        assertThat(run.code()).isEqualTo(2);
        assertThat(run.output()).isEmpty();
        assertThat(run.errors().lines().filter(line -> line.matches(".*slit\\.yaml:\\d+:\\d+: .* \\[[a-z-]+]")))
                .hasSizeGreaterThanOrEqualTo(2);
        assertThat(run.errors()).contains("did you mean 'diameter'?").contains("nothing was checked");
        assertThat(json).doesNotExist();
    }

    @Test
    void warningsGoToTheErrorStreamAndIntoTheReport() throws IOException {
        Files.writeString(layout, Files.readString(layout).replace("{slit: 4 mm}", "{slit: 4 mm, spare: 1 mm}"));
        Run run = Run.of("check", layout.toString());
        assertThat(run.code()).isZero();
        assertThat(run.errors()).containsPattern("slit\\.yaml:3:\\d+: warning: .*spare.* \\[[a-z-]+]");
        assertThat(run.output()).contains("Warnings").contains("spare");
    }

    static Stream<Arguments> wrongUses() {
        return Stream.of(
                Arguments.of("a command is missing", new String[] {}),
                Arguments.of("there is no command 'chekc', did you mean 'check'?", new String[] {"chekc"}),
                Arguments.of("LAYOUT", new String[] {"check"}),
                Arguments.of(
                        "there is no option '--jsn', did you mean '--json'?",
                        new String[] {"check", "LAYOUT", "--jsn", "a.json"}),
                Arguments.of(
                        "there is no option '--sampels', did you mean '--samples'?",
                        new String[] {"seen-from", "LAYOUT", "--at", "lid", "--sampels", "3"}),
                Arguments.of(
                        "expected a whole number from 0 to 9007199254740991, got '1.5'",
                        new String[] {"check", "LAYOUT", "--seed", "1.5"}),
                Arguments.of("'many'", new String[] {"check", "LAYOUT", "--seed", "many"}),
                Arguments.of("'-1'", new String[] {"check", "LAYOUT", "--seed", "-1"}),
                Arguments.of(
                        "whole number from 1 to 1024, got '0'", new String[] {"check", "LAYOUT", "--threads", "0"}),
                Arguments.of(
                        "whole number from 1 to 1024, got '2.5'", new String[] {"check", "LAYOUT", "--threads", "2.5"}),
                Arguments.of(
                        "expected a whole number, at least 1, such as 2e8, got '0'",
                        new String[] {"check", "LAYOUT", "--samples", "0"}),
                Arguments.of("such as 2e8, got '1.5'", new String[] {"check", "LAYOUT", "--samples", "1.5"}),
                Arguments.of(
                        "expected no more than 9e18 samples, got '1e30'",
                        new String[] {"check", "LAYOUT", "--samples", "1e30"}),
                Arguments.of("such as 2e8, got 'lots'", new String[] {"check", "LAYOUT", "--samples", "lots"}),
                Arguments.of("--json", new String[] {"check", "LAYOUT", "--json"}),
                Arguments.of(
                        "'second.yaml' is one word too many, expected no more than LAYOUT",
                        new String[] {"check", "LAYOUT", "second.yaml"}));
    }

    @ParameterizedTest
    @MethodSource("wrongUses")
    void wrongUseSaysWhatIsWrongAndGivesTwo(String expected, String[] arguments) {
        Run run = Run.of(Stream.of(arguments)
                .map(each -> each.equals("LAYOUT") ? layout.toString() : each)
                .toArray(String[]::new));
        assertThat(run.code()).isEqualTo(2);
        assertThat(run.output()).isEmpty();
        assertThat(run.errors()).startsWith("darkrim: ").contains(expected).contains("--help");
        assertThat(run.errors()).doesNotContain("Exception").doesNotContain("\tat ");
    }

    @Test
    void aDashForAFileIsRefusedBeforeTheWork() {
        Run run = Run.of("check", layout.toString(), "--json", "-");
        assertThat(run.code()).isEqualTo(2);
        assertThat(run.output()).isEmpty();
        assertThat(run.errors())
                .isEqualTo("darkrim: --json -: standard output holds the report, expected a file name; "
                        + "nothing was done.\n");
        assertThat(Path.of("-")).doesNotExist();
    }

    @Test
    void aFileThatIsNotThereIsAFinding() {
        Run run = Run.of("check", folder.resolve("none.yaml").toString());
        assertThat(run.code()).isEqualTo(2);
        assertThat(run.errors()).contains("none.yaml: there is no such file [unreadable]");
    }

    @Test
    void helpNamesOptionsExitCodesAndAnExample() {
        Run run = Run.of("check", "--help");
        assertThat(run.code()).isZero();
        assertThat(run.output())
                .contains("--json", "--seed", "--threads", "--samples", "--overwrite", "--verbose", "Exit codes:")
                .contains("java -jar target/darkrim.jar check geometries/nightglow-b.yaml");
        assertThat(Run.of("--help").output()).contains("check").contains("Example:");
    }

    @Test
    void theVersionIsThatOfTheBuild() throws IOException {
        Run run = Run.of("--version");
        assertThat(run.code()).isZero();
        assertThat(run.output())
                .matches("Darkrim \\d+\\.\\d+\\.\\d+\\S*\\RRays are traced by the (scalar|vector) kernel.*\\R");
        assertThat(Files.readString(Path.of("pom.xml")))
                .contains("<artifactId>darkrim</artifactId>\n  <version>" + Version.number() + "</version>");
    }

    @Test
    void seedAndSamplesOfTheCommandLineStandInTheReport() {
        Run run = Run.of("check", layout.toString(), "--seed", "77", "--threads", "3");
        assertThat(run.output()).contains("seed 77");
    }

    @Test
    void theJsonFileIsWrittenWholeAndKeptUnlessToldOtherwise() throws IOException {
        Path json = folder.resolve("out.json");
        assertThat(Run.of("check", layout.toString(), "--json", json.toString()).code())
                .isZero();
        String first = Files.readString(json);
        assertThat(first).startsWith("{").endsWith("}\n");

        Run kept = Run.of("check", layout.toString(), "--json", json.toString(), "--seed", "2");
        assertThat(kept.code()).isEqualTo(2);
        assertThat(kept.output()).isEmpty();
        assertThat(kept.errors()).contains("there is such a file already; --overwrite replaces it");
        assertThat(Files.readString(json)).isEqualTo(first);

        Run replaced = Run.of("check", layout.toString(), "--json", json.toString(), "--seed", "2", "--overwrite");
        assertThat(replaced.code()).isZero();
        assertThat(Files.readString(json)).isNotEqualTo(first).contains("\"seed\" : 2");
    }

    @Test
    void whatBreaksInsideIsOnePlainLineAndTheDetailsAreInAFile() throws IOException {
        Run run = Run.watched(
                () -> {
                    throw new IllegalStateException("the secret reason");
                },
                "check",
                layout.toString());
        assertThat(run.code()).isEqualTo(4);
        assertThat(run.errors()).hasLineCount(1).contains(layout.toString()).contains("Please report it");
        assertThat(run.errors()).doesNotContain("secret").doesNotContain("Exception");
        Path details = Path.of(run.errors().replaceAll("(?s).*the file (.*)\\.\\R", "$1"));
        assertThat(details).content().contains("the secret reason").contains("\tat darkrim.");
        Files.delete(details);
    }

    @Test
    void wantOfMemoryIsToldAsSuch() {
        Run run = Run.watched(
                () -> {
                    throw new OutOfMemoryError("heap");
                },
                "check",
                layout.toString());
        assertThat(run.code()).isEqualTo(4);
        assertThat(run.errors()).hasLineCount(1).contains("more memory").contains("-Xmx");
    }

    private Path layout(String... requirements) throws IOException {
        return Files.writeString(folder.resolve("slit.yaml"), Results.yaml("", requirements));
    }
}
