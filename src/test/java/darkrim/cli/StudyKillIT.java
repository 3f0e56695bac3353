package darkrim.cli;

import static org.assertj.core.api.Assertions.assertThat;

import darkrim.present.Results;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Studies whose process is killed without warning. */
class StudyKillIT {
    private static final int KILLS = 5;
    private static final List<String> SWEEP = List.of(
            "sweep",
            "slit.yaml",
            "--vary",
            "slit = 1 to 6 step 0.05",
            "--samples",
            "2e5",
            "--margins",
            "none",
            "--csv");

    private static final List<String> TOLERANCE =
            List.of("tolerance", "slit.yaml", "--builds", "60", "--samples", "2e5", "--yield", "0.5", "--json");

    @TempDir
    private Path folder;

    @Test
    void afterKillsAtRandomMomentsASweepEndsWithTheSameBytes() throws Exception {
        Files.writeString(folder.resolve("slit.yaml"), layout());
        goesOnAfterKills(SWEEP, ExitCode.DONE);
    }

    @Test
    void afterKillsAtRandomMomentsAToleranceStudyEndsWithTheSameBytes() throws Exception {
        String toleranced = layout().replace("slit: 4 mm", "slit: {value: 4 mm, tolerance: 0.5}");
        Files.writeString(folder.resolve("slit.yaml"), toleranced);
        // Through most of these slits too much light falls on the screen.
        goesOnAfterKills(TOLERANCE, ExitCode.FAIL);
    }

    private static String layout() {
        return Results.yaml("", "mean: {surfaces: screen/front, direct: {at_most: 0.08}}");
    }

    private void goesOnAfterKills(List<String> study, int code) throws Exception {
        long start = System.nanoTime();
        assertThat(Jar.run(folder, Map.of(), words(study, "whole")).code()).isEqualTo(code);
        long whole = TimeUnit.NANOSECONDS.toMillis(System.nanoTime() - start);

        SplittableRandom random = new SplittableRandom(20261125);
        int torn = 0;
        for (int i = 0; i < KILLS; i++) {
            Jar.Started started = Jar.start(folder, Map.of(), Jar.command(words(study, "killed")));
            if (!started.process().waitFor(whole / 4 + random.nextLong(whole / 4), TimeUnit.MILLISECONDS)) {
                // SIGKILL: the process hears nothing of it.
                started.process().destroyForcibly().waitFor();
                torn++;
            }
            assertThat(folder.resolve("killed"))
                    .satisfiesAnyOf(
                            file -> assertThat(file).doesNotExist(),
                            file -> assertThat(file).hasSameBinaryContentAs(folder.resolve("whole")));
            Files.delete(started.output());
            Files.delete(started.errors());
        }
        assertThat(torn).as("runs that were killed at work").isPositive();
        Run last = Jar.run(folder, Map.of(), words(study, "killed"));
        // If a run came to its end before its kill, the file is there, whole, and is not replaced.
        assertThat(last.code()).as(last.errors()).isIn(code, ExitCode.UNUSABLE);
        assertThat(folder.resolve("killed")).hasSameBinaryContentAs(folder.resolve("whole"));
        assertThat(folder.resolve("killed.part")).doesNotExist();
    }

    private static String[] words(List<String> study, String output) {
        return Stream.concat(study.stream(), Stream.of(output)).toArray(String[]::new);
    }
}
