package darkrim.cli;

import static org.assertj.core.api.Assertions.assertThat;

import darkrim.present.Results;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Whole studies, from the command line, on an engine for clusters in one process. */
class StudyOnClusterIT {
    @TempDir
    private Path folder;

    @Test
    void aSweepOnAClusterWritesTheBytesOfOneOnThisMachine() throws Exception {
        Path layout = folder.resolve("slit.yaml");
        Files.writeString(layout, Results.yaml("", "mean: {surfaces: screen/front, direct: {at_most: 0.08}}"));
        Path here = sweep(layout, "here.csv");
        Path there = sweep(layout, "there.csv", "--on", "local[2]");
        // Six points and those of the refinement, which is a second piece of work for the same cluster.
        assertThat(Files.readString(here).lines().count()).isGreaterThan(8);
        assertThat(there).hasSameBinaryContentAs(here);
    }

    @Test
    void aToleranceStudyOnAClusterWritesTheBytesOfOneOnThisMachine() throws Exception {
        Path layout = folder.resolve("slit.yaml");
        Files.writeString(
                layout,
                Results.yaml(
                                "",
                                "dark: {surfaces: screen/back, direct: none}",
                                "mean: {surfaces: screen/front, direct: {at_most: 0.08}}")
                        .replace("slit: 4 mm", "slit: {value: 4 mm, tolerance: 0.5}")
                        .replace(
                                "at: [10 + slit / 2, 0, 8]",
                                "at: [10 + slit / 2, 0, 8], placement_tolerance: {tilt: [0, 2, 0]}"));
        Path here = tolerance(layout, "here.json");
        Path there = tolerance(layout, "there.json", "--on", "local[2]");
        assertThat(Files.readString(here)).contains("right tilt y");
        assertThat(there).hasSameBinaryContentAs(here);
    }

    private Path tolerance(Path layout, String name, String... more) {
        Path document = folder.resolve(name);
        String[] words = {
            "tolerance",
            layout.toString(),
            "--builds",
            "12",
            "--yield",
            "0.5",
            "--build-margins",
            "--json",
            document.toString()
        };
        Run run = Run.of(Stream.of(words, more).flatMap(Arrays::stream).toArray(String[]::new));
        assertThat(run.code()).as(run.errors()).isIn(ExitCode.PASS, ExitCode.FAIL, ExitCode.UNDECIDED);
        return document;
    }

    private Path sweep(Path layout, String name, String... more) {
        Path table = folder.resolve(name);
        String[] words = {
            "sweep", layout.toString(), "--vary", "slit = 1 to 6 step 1", "--refine", "0.3", "--csv", table.toString()
        };
        String[] all = Stream.of(words, more).flatMap(Arrays::stream).toArray(String[]::new);
        Run run = Run.of(all);
        assertThat(run.code()).as(run.errors()).isEqualTo(ExitCode.DONE);
        return table;
    }
}
