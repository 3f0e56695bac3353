package darkrim.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import darkrim.present.Results;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import java.util.TreeMap;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Processes that are killed while they write, and windows that lose their display. Takes minutes: with -Dlong=true, as src/hard/run.sh does. */
class EndedAtOnceIT {
    private static final int KILLS = 8;
    private static final String WORDS = "backs-dark: {surfaces: '{left,right}/back', direct: none}";

    @TempDir
    private Path folder;

    @BeforeEach
    void onlyInLongRuns() throws IOException {
        assumeTrue(Boolean.getBoolean("long"), "takes minutes");
        Files.writeString(folder.resolve("slit.yaml"), Results.yaml("", WORDS));
    }

    /** Whatever the moment, under the name of the result there is nothing or the whole result, and the same command works again. */
    @ParameterizedTest
    @CsvSource({"check,--json", "report,-o", "maps,-o", "sweep,--csv"})
    void afterAKillThereIsTheWholeFileOrNone(String command, String option) throws Exception {
        String end = command.equals("report") ? ".html" : command.equals("maps") ? ".png" : ".out";
        List<String> words = new ArrayList<>(List.of(command, "slit.yaml"));
        if (!command.equals("maps")) {
            words.addAll(List.of("--samples", "2e5"));
        }
        if (command.equals("maps")) {
            words.addAll(List.of("--onto", "screen/front", "--light", "direct"));
        }
        if (command.equals("sweep")) {
            words.addAll(List.of("--vary", "slit = 1 to 4 step 0.5", "--margins", "none"));
        }
        words.add(option);
        long start = System.nanoTime();
        Run first = Jar.run(folder, Map.of("SOURCE_DATE_EPOCH", "0"), with(words, "whole" + end));
        long whole = TimeUnit.NANOSECONDS.toMillis(System.nanoTime() - start);
        assertThat(first.code()).as(first.errors()).isZero();

        SplittableRandom random = new SplittableRandom(20261128);
        int killed = 0;
        for (int i = 0; i < KILLS; i++) {
            Path file = folder.resolve("killed" + end);
            // From the middle of the work on, so that many fall into the writing.
            Jar.Started started =
                    Jar.start(folder, Map.of("SOURCE_DATE_EPOCH", "0"), Jar.command(with(words, "killed" + end)));
            if (!started.process().waitFor(whole / 2 + random.nextLong(whole / 2), TimeUnit.MILLISECONDS)) {
                started.process().destroyForcibly().waitFor();
                killed++;
            } else {
                // The first run was slower than this one, for nothing of the program was in memory then.
                whole = Math.max(100, whole * 9 / 10);
            }
            if (Files.exists(file)) {
                assertThat(comparable(file)).isEqualTo(comparable(folder.resolve("whole" + end)));
                Files.delete(file);
            }
            Files.delete(started.output());
            Files.delete(started.errors());
        }
        assertThat(killed).isPositive();
        Run again = Jar.run(folder, Map.of("SOURCE_DATE_EPOCH", "0"), with(words, "killed" + end));
        assertThat(again.code()).as(again.errors()).isZero();
        assertThat(comparable(folder.resolve("killed" + end))).isEqualTo(comparable(folder.resolve("whole" + end)));
        System.out.println(command + ": killed " + killed + " of " + KILLS);
    }

    private static String[] with(List<String> words, String output) {
        return Stream.concat(words.stream(), Stream.of(output)).toArray(String[]::new);
    }

    /** A file without the lines that tell how long the work took. */
    private static String comparable(Path file) throws IOException {
        return Files.readString(file, StandardCharsets.ISO_8859_1)
                .replaceAll("\"(proofs|margins|whole)_s\" : [0-9.E-]+", "")
                .replaceAll("(proofs took|margins|the whole check) [0-9.E-]+ s", "");
    }

    /** A display in memory with a window of the program on it. */
    private record Shown(Process display, Jar.Started window) {}

    private Shown shown(Map<String, String> environment, long afterMilliseconds) throws Exception {
        Process display;
        try {
            display = new ProcessBuilder("Xvfb", "-displayfd", "1", "-screen", "0", "1000x640x24", "-nolisten", "tcp")
                    .redirectError(ProcessBuilder.Redirect.DISCARD)
                    .start();
        } catch (IOException missing) {
            assumeTrue(false, "Xvfb is not there");
            throw missing;
        }
        String number =
                new BufferedReader(new InputStreamReader(display.getInputStream(), StandardCharsets.UTF_8)).readLine();
        List<String> command = new ArrayList<>(Jar.command("view", "slit.yaml"));
        command.addAll(1, List.of("-Xmx512m", "-Dprism.order=es2", "-Dprism.forceGPU=true"));
        Map<String, String> all = new TreeMap<>(environment);
        all.put("DISPLAY", ":" + number);
        Jar.Started window = Jar.start(folder, all, command);
        boolean ended = window.process().waitFor(afterMilliseconds, TimeUnit.MILLISECONDS);
        if (ended && window.process().exitValue() == ExitCode.UNUSABLE) {
            display.destroy();
            assumeTrue(false, "no three-dimensional pictures on this display");
        }
        assertThat(ended).as("the window is there").isFalse();
        return new Shown(display, window);
    }

    private static void requireNoTrace(Run run) {
        assertThat(run.errors()).doesNotContain("\tat ").doesNotContain("Exception");
    }

    @Test
    void aLostDisplayIsSaidAndIsNoVerdict() throws Exception {
        Shown shown = shown(Map.of(), 20_000);
        shown.display().destroyForcibly().waitFor();
        Run run = Jar.end(shown.window());
        assertThat(run.code()).as(run.errors()).isEqualTo(ExitCode.BROKEN);
        assertThat(run.errors()).contains("the display was lost, and the window with it");
        requireNoTrace(run);
    }

    @Test
    void aHomeThatCannotBeWrittenHindersNoWindow() throws Exception {
        Shown shown = shown(Map.of("HOME", "/proc/none", "XDG_CONFIG_HOME", "/proc/none"), 20_000);
        shown.window().process().destroy();
        Run run = Jar.end(shown.window());
        shown.display().destroy();
        assertThat(run.code()).as(run.errors()).isZero();
        requireNoTrace(run);
    }

    /** Whether the window is being made, drawn, or there. */
    @ParameterizedTest
    @ValueSource(longs = {1_000, 2_000, 3_000, 4_500, 6_000, 9_000})
    void aRequestToEndIsHeededAtAnyMomentWithoutATrace(long milliseconds) throws Exception {
        Shown shown = shown(Map.of(), milliseconds);
        shown.window().process().destroy();
        Run run = Jar.end(shown.window());
        shown.display().destroy();
        // Before the program listens, Java ends it: 128 + 15.
        assertThat(run.code()).as(run.errors()).isIn(ExitCode.PASS, 143);
        requireNoTrace(run);
    }
}
