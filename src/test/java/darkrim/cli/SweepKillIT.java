package darkrim.cli;

import static org.assertj.core.api.Assertions.assertThat;

import darkrim.present.Results;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A sweep whose process is killed without warning. */
class SweepKillIT {
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

    @TempDir
    private Path folder;

    @Test
    void afterKillsAtRandomMomentsTheSameCommandEndsWithTheSameBytes() throws Exception {
        Files.writeString(
                folder.resolve("slit.yaml"),
                Results.yaml("", "mean: {surfaces: screen/front, direct: {at_most: 0.08}}"));
        long start = System.nanoTime();
        assertThat(Jar.run(folder, Map.of(), words("whole.csv")).code()).isZero();
        long whole = TimeUnit.NANOSECONDS.toMillis(System.nanoTime() - start);

        SplittableRandom random = new SplittableRandom(20261125);
        int torn = 0;
        for (int i = 0; i < KILLS; i++) {
            Jar.Started started = Jar.start(folder, Map.of(), Jar.command(words("killed.csv")));
            if (!started.process().waitFor(whole / 4 + random.nextLong(whole / 4), TimeUnit.MILLISECONDS)) {
                // SIGKILL: the process hears nothing of it.
                started.process().destroyForcibly().waitFor();
                torn++;
            }
            assertThat(folder.resolve("killed.csv"))
                    .satisfiesAnyOf(
                            file -> assertThat(file).doesNotExist(),
                            file -> assertThat(file).hasSameBinaryContentAs(folder.resolve("whole.csv")));
            Files.delete(started.output());
            Files.delete(started.errors());
        }
        assertThat(torn).as("runs that were killed at work").isPositive();
        Run last = Jar.run(folder, Map.of(), words("killed.csv"));
        // If a run came to its end before its kill, the file is there, whole, and is not replaced.
        assertThat(last.code()).as(last.errors()).isIn(ExitCode.DONE, ExitCode.UNUSABLE);
        assertThat(folder.resolve("killed.csv")).hasSameBinaryContentAs(folder.resolve("whole.csv"));
        assertThat(folder.resolve("killed.csv.part")).doesNotExist();
    }

    private static String[] words(String output) {
        return java.util.stream.Stream.concat(SWEEP.stream(), java.util.stream.Stream.of(output))
                .toArray(String[]::new);
    }
}
