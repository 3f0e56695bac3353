package darkrim.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** No command overlooks a window: each follows light through it or refuses the layout in one line. */
class WindowCommandsTest {
    private static final String LAYOUT = "geometries/part-window.yaml";

    @TempDir
    Path folder;

    @Test
    void aCheckFollowsItAndSaysWhatItLeavesOut() {
        Run run = Run.of("check", LAYOUT, "--samples", "1e5", "--margins", "none");
        assertThat(run.code()).as(run.errors()).isEqualTo(ExitCode.PASS);
        assertThat(run.output().replaceAll("\\s+", " ")).contains("[window-reflection]");
    }

    @Test
    void pathsNameTheWindowAmongWhatReflects() {
        Run run = Run.of("paths", LAYOUT, "--onto", "die/front", "--reflections", "2", "--samples", "2e4");
        assertThat(run.code()).as(run.errors()).isZero();
        assertThat(run.output()).containsPattern("die/front +mirror[^\\n]*\\n +pane +mirror");
    }

    @Test
    void whatFollowsStraightLinesOnlyRefusesIt() {
        for (List<String> words : List.of(
                List.of("seen-from", LAYOUT, "--at", "die/front"),
                List.of("pixel-view", LAYOUT, "--at", "die/front"),
                List.of("star-scan", LAYOUT, "--onto", "die/front"),
                List.of("rejection", LAYOUT, "--onto", "die/front"))) {
            Run run = Run.of(words.toArray(String[]::new));
            assertThat(run.code()).as(words.toString()).isEqualTo(ExitCode.UNUSABLE);
            assertThat(run.errors())
                    .as(words.toString())
                    .contains("part-window.yaml:9:11: " + words.get(0) + " does not follow light through a window")
                    .contains("[window-not-followed]");
        }
    }

    @Test
    void viewRefusesItBeforeAnyWindowOpensOnEitherSide() {
        for (List<String> words :
                List.of(List.of("view", LAYOUT), List.of("view", "geometries/nightglow-a.yaml", "--beside", LAYOUT))) {
            Run run = Run.of(words.toArray(String[]::new));
            assertThat(run.code()).as(words.toString()).isEqualTo(ExitCode.UNUSABLE);
            assertThat(run.errors())
                    .as(words.toString())
                    .contains("part-window.yaml:9:11: view does not follow light through a window")
                    .contains("[window-not-followed]")
                    .endsWith("darkrim: no window was opened." + System.lineSeparator());
            assertThat(run.output()).isEmpty();
        }
    }

    @Test
    void viewRefusesItWithoutWaitingForMeshes() throws IOException {
        Path layout = Files.writeString(
                folder.resolve("meshed.yaml"),
                Files.readString(Path.of(LAYOUT))
                        .replace("parts:", "parts:\n  hood: {kind: mesh, file: gone.stl, unit: mm, finish: black}"));
        Run run = Run.of("view", layout.toString());
        assertThat(run.code()).isEqualTo(ExitCode.UNUSABLE);
        assertThat(run.errors()).contains("[window-not-followed]").doesNotContain("gone.stl");
    }

    @Test
    void drawRefusesWhatAPointSeesAndRays() {
        String file = folder.resolve("a.png").toString();
        for (String option : List.of("--seen-from", "--path")) {
            Run run = Run.of("draw", LAYOUT, "-o", file, option, "die/front");
            assertThat(run.code()).isEqualTo(ExitCode.UNUSABLE);
            assertThat(run.errors()).contains(option + " does not follow light through the window");
            assertThat(Path.of(file)).doesNotExist();
        }
    }

    @Test
    void drawRefusesTheLightOfASource() throws IOException {
        String moon = "sources:\n  moon: {kind: distant, off_axis: 20, diameter: 0.5}\nrequirements:";
        Path layout = Files.writeString(
                folder.resolve("moon.yaml"), Files.readString(Path.of(LAYOUT)).replace("requirements:", moon));
        Run run = Run.of(
                "draw",
                layout.toString(),
                "-o",
                folder.resolve("a.png").toString(),
                "--source",
                "moon",
                "--light",
                "direct");
        assertThat(run.code()).isEqualTo(ExitCode.UNUSABLE);
        assertThat(run.errors()).contains("--source does not follow light through the window");
        assertThat(folder.resolve("a.png")).doesNotExist();
    }
}
