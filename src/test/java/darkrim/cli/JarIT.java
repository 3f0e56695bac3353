package darkrim.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import darkrim.present.Results;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.jar.JarFile;
import java.util.zip.ZipEntry;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The jar as its users run it: a process in a pipe, on a terminal, interrupted. */
class JarIT {
    private static final String DARK = "backs-dark: {surfaces: '{left,right}/back', direct: none}";
    private static final String LIT = "screen-dark: {surfaces: screen, direct: none}";
    /** The mean of the exact irradiance over 1,500 x 20 points, good to 1e-6: a limit so near is not decided in any time worth the name. */
    private static final String ENDLESS = "whole: {surfaces: screen/front, direct: {at_most: 0.138807}}";

    private static final Map<String, String> COLOUR_TERMINAL = Map.of("TERM", "xterm-256color", "NO_COLOR", "");

    @TempDir
    private Path folder;

    @Test
    void exitCodesSayWhatWasFound() throws IOException {
        layout("pass.yaml", DARK);
        layout("fail.yaml", LIT);
        layout("open.yaml", ENDLESS);
        assertThat(run("check", "pass.yaml").code()).isZero();
        assertThat(run("check", "fail.yaml").code()).isEqualTo(1);
        assertThat(run("check", "none.yaml").code()).isEqualTo(2);
        assertThat(run("check").code()).isEqualTo(2);
        assertThat(run("check", "open.yaml", "--samples", "2e6").code()).isEqualTo(3);
    }

    @Test
    void theJarHoldsNoSparkAndTheLibrariesThatAClusterHasTooUnderAnotherName() throws IOException {
        try (JarFile jar = new JarFile(Jar.path().toFile())) {
            List<String> names = jar.stream().map(ZipEntry::getName).toList();
            assertThat(names)
                    .contains("darkrim/study/spark/SparkCluster.class")
                    .noneMatch(name -> name.startsWith("org/apache/spark/") || name.startsWith("scala/"))
                    .noneMatch(name -> name.startsWith("org/snakeyaml/engine/v2/")
                            || name.startsWith("org/apache/commons/lang3/")
                            || name.startsWith("org/apache/commons/text/")
                            || name.startsWith("com/fasterxml/jackson/annotation/"));
        }
    }

    @Test
    void withoutADisplayTheWindowSaysSoInOneLine() throws IOException {
        // Elsewhere a window opens without one.
        assumeTrue(System.getProperty("os.name").equals("Linux"));
        layout("pass.yaml", DARK);
        for (String display : List.of("", ":9876")) {
            Run run = run(Map.of("DISPLAY", display), "view", "pass.yaml");
            assertThat(run.code()).isEqualTo(2);
            assertThat(run.output()).isEmpty();
            assertThat(run.errors())
                    .startsWith("darkrim: no window: ")
                    .contains("darkrim draw")
                    .hasLineCount(1);
        }
    }

    @Test
    void aPipeGetsPlainTextAndNoProgress() throws IOException {
        layout("fail.yaml", LIT, DARK);
        Run run = run(COLOUR_TERMINAL, "check", "fail.yaml");
        assertThat(run.output()).contains("FAIL").doesNotContain("\u001b").doesNotContain("\r");
        assertThat(run.errors()).isEmpty();
    }

    @Test
    void aTerminalGetsColourAndProgressUnlessTheUserMinds() throws IOException {
        layout("fail.yaml", LIT, DARK);
        String coloured = onTerminal(COLOUR_TERMINAL);
        assertThat(coloured).contains("\u001b[1;31mFAIL\u001b[0m").contains("sampling light");
        String plain = onTerminal(Map.of("TERM", "xterm-256color", "NO_COLOR", "1"));
        assertThat(plain).contains("FAIL").doesNotContain("\u001b");
    }

    @Test
    void aBrokenFileGivesAllItsErrorsAndNoStackTrace() throws IOException {
        Path file = layout("broken.yaml", DARK, LIT);
        Files.writeString(
                file,
                Files.readString(file).replace("width: 30", "width: 30 deg").replace("distance", "distence"));
        Run run = run("check", "broken.yaml");
        assertThat(run.code()).isEqualTo(2);
        assertThat(run.output()).isEmpty();
        assertThat(run.errors())
                .contains("broken.yaml:8:")
                .contains("broken.yaml:11:")
                .contains("did you mean 'distance'?");
        assertThat(run.errors()).doesNotContain("Exception").doesNotContain("\tat ");
    }

    @Test
    void anInterruptionEndsCleanlyWithWhatIsFinished() throws IOException, InterruptedException {
        layout("long.yaml", DARK, ENDLESS);
        Run run = interrupted("check", "long.yaml", "--samples", "1e12", "--json", "long.json");
        assertThat(run.code()).isEqualTo(3);
        assertThat(run.output())
                .contains("UNDECIDED: 1 of 2 requirements not decided when the work was stopped: whole.")
                .contains("backs-dark: both surfaces proved dark.");
        assertThat(run.errors()).isEqualTo("darkrim: stopping; what is finished follows.\n");
        assertThat(folder.resolve("long.json"))
                .content()
                .contains("\"stopped\" : true")
                .endsWith("}\n");
    }

    @Test
    void anOutputFileThatCannotBeWrittenIsFoundBeforeTheWork() throws IOException {
        // Would never end if it began.
        layout("long.yaml", ENDLESS);
        Files.writeString(folder.resolve("there.json"), "kept");
        Run exists = run("check", "long.yaml", "--samples", "1e12", "--json", "there.json");
        assertThat(exists.code()).isEqualTo(2);
        assertThat(exists.errors()).contains("--json there.json: there is such a file already");
        assertThat(folder.resolve("there.json")).hasContent("kept");
        Run nowhere = run("check", "long.yaml", "--samples", "1e12", "--json", "none/there.json");
        assertThat(nowhere.code()).isEqualTo(2);
        assertThat(nowhere.errors()).contains("there is no folder").doesNotContain("Exception");
    }

    @Test
    void aFolderWithoutLeaveToWriteIsFoundBeforeTheWork() throws IOException {
        // Linux lets nobody, not even root, make a file here.
        Path forbidden = Path.of("/proc/darkrim.json");
        assumeTrue(Files.isDirectory(forbidden.getParent()));
        layout("long.yaml", ENDLESS);
        Run run = run("check", "long.yaml", "--samples", "1e12", "--json", forbidden.toString());
        assertThat(run.code()).isEqualTo(2);
        assertThat(run.errors())
                .contains("no file can be made in the folder /proc")
                .hasLineCount(1);
    }

    @Test
    void aResultThatCannotBeWrittenIsNeverTakenForAPass() throws IOException {
        assumeTrue(Files.exists(Path.of("/dev/full")));
        layout("pass.yaml", DARK);
        String check = String.join(" ", Jar.brief("check", "pass.yaml"));
        String point = String.join(" ", Jar.brief("seen-from", "pass.yaml", "--at", "screen/front"));
        String help = String.join(" ", Jar.brief("check", "--help"));
        for (String command : List.of(check, point, help)) {
            for (String nowhere : List.of(" > /dev/full", " >&-")) {
                Run run = shell(command + nowhere);
                assertThat(run.code()).as(command + nowhere).isEqualTo(2);
                assertThat(run.errors())
                        .startsWith("darkrim: the result could not be written to standard output: ")
                        .hasLineCount(1);
            }
        }
    }

    @Test
    void aReaderThatStopsReadingIsNoFailure() throws IOException {
        layout("fail.yaml", LIT);
        Run run = shell("(" + String.join(" ", Jar.brief("check", "fail.yaml"))
                + "; echo code $? >&2) | sh -c 'exec <&-; exec sleep 0'");
        assertThat(run.errors()).isEqualTo("code 1\n");
    }

    private Run shell(String command) throws IOException {
        return Jar.end(Jar.start(folder, Map.of(), List.of("/bin/sh", "-c", command)));
    }

    @Test
    void theVersionInTheJarIsThatOfTheBuild() {
        assertThat(run("--version").output())
                .matches("Darkrim \\d+\\.\\d+\\.\\d+\\S*\\RRays are traced by the (scalar|vector) kernel.*\\R")
                .doesNotContain("$");
    }

    private Run run(String... arguments) {
        return run(Map.of(), arguments);
    }

    private Run run(Map<String, String> environment, String... arguments) {
        return Jar.end(Jar.start(folder, environment, Jar.brief(arguments)));
    }

    /** What a terminal gets, both streams; {@code script} of util-linux plays the terminal. */
    private String onTerminal(Map<String, String> environment) throws IOException {
        Path script = Path.of("/usr/bin/script");
        assumeTrue(Files.isExecutable(script));
        String command = String.join(" ", Jar.brief("check", "fail.yaml"));
        Run run = Jar.end(Jar.start(folder, environment, List.of(script.toString(), "-qec", command, "/dev/null")));
        assertThat(run.code()).isEqualTo(1);
        return run.output();
    }

    /** Sends Ctrl-C's signal once the program has worked for a while. */
    private Run interrupted(String... arguments) throws IOException, InterruptedException {
        // A build in the background may have the signal ignored, which a process inherits; env of coreutils undoes it.
        List<String> command = new ArrayList<>(List.of("env", "--default-signal=INT"));
        assumeTrue(Jar.end(Jar.start(folder, Map.of(), List.of("env", "--default-signal=INT", "true")))
                        .code()
                == 0);
        command.addAll(Jar.command(arguments));
        Jar.Started started = Jar.start(folder, Map.of(), command);
        while (started.process().isAlive()
                && started.process()
                                .info()
                                .totalCpuDuration()
                                .orElse(Duration.ZERO)
                                .toSeconds()
                        < 4) {
            Thread.sleep(50);
        }
        Jar.end(Jar.start(
                folder,
                Map.of(),
                List.of("kill", "-INT", String.valueOf(started.process().pid()))));
        return Jar.end(started);
    }

    private Path layout(String name, String... requirements) throws IOException {
        return Files.writeString(folder.resolve(name), Results.yaml("", requirements));
    }
}
