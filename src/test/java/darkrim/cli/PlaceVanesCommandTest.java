package darkrim.cli;

import static org.assertj.core.api.Assertions.assertThat;

import darkrim.layout.Layout;
import darkrim.layout.LayoutReader;
import darkrim.layout.LayoutReading;
import darkrim.layout.VanesShape;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Vanes that are placed and proved from the command line, and what is refused. */
class PlaceVanesCommandTest {
    private static final List<String> TUBE = List.of(
            "--wall-diameter", "80",
            "--edge-diameter", "60",
            "--length", "300",
            "--detector-diameter", "20",
            "--entrance-diameter", "60");

    @TempDir
    private Path folder;

    private static Run run(List<String> options, String... more) {
        List<String> words = new ArrayList<>(List.of("place-vanes"));
        words.addAll(options);
        words.addAll(List.of(more));
        return Run.of(words.toArray(String[]::new));
    }

    @Test
    void vanesAreProvedAndWrittenAsALayoutThatIsReadWithoutAFinding() throws IOException {
        Path file = folder.resolve("tube.yaml");
        Run run = run(TUBE, "--off-axis", "20", "--layout", file.toString());
        assertThat(run.code()).as(run.errors()).isZero();
        assertThat(run.errors()).isEmpty();
        assertThat(run.output())
                .startsWith("PASS: no wall point that the detector sees is lit at or beyond 20 deg off axis: proved.")
                .containsPattern("vanes/inside/4 +nowhere +proof")
                .contains("    heights: [134.7587, 186.918, 242.7723]\n");
        LayoutReading reading = LayoutReader.read(file);
        assertThat(reading.findings()).isEmpty();
        Layout layout = reading.layout().orElseThrow();
        VanesShape vanes = (VanesShape) layout.parts().get(1).shape();
        assertThat(vanes.heights()).containsExactly(134.7587, 186.918, 242.7723);
        assertThat(Files.readString(file)).contains("wall_diameter: 80\n").contains("pupil_seen: {at_least: 0.999}");
        Run again = run(TUBE, "--off-axis", "20", "--layout", file.toString());
        assertThat(again.code()).isEqualTo(ExitCode.UNUSABLE);
        assertThat(again.errors()).contains("there is such a file already");
    }

    @Test
    void everythingThatIsWrongIsSaidAtOnceAndNothingIsWritten() {
        Path file = folder.resolve("x.yaml");
        Run run = Run.of(
                "place-vanes",
                "--wall-diameter",
                "80",
                "--edge-diameter",
                "80",
                "--length",
                "300",
                "--detector-diameter",
                "90",
                "--entrance-diameter",
                "85",
                "--off-axis",
                "20",
                "--name",
                "a b",
                "--layout",
                file.toString());
        assertThat(run.code()).isEqualTo(ExitCode.UNUSABLE);
        assertThat(run.output()).isEmpty();
        assertThat(run.errors())
                .contains("the edges, 80 mm wide at the base, do not stand out from the wall of 80 mm")
                .contains("--entrance-diameter: 85 mm is wider than the wall there, 80 mm")
                .contains("--detector-diameter: 90 mm and the clearance are wider than the wall")
                .contains("--name: expected letters")
                .endsWith("darkrim: nothing was written.\n");
        assertThat(file).doesNotExist();
        assertThat(run(TUBE).errors()).contains("--off-axis ANGLE is missing, expected it or --first Z");
        assertThat(run(TUBE, "--off-axis", "20", "--depth", "3").errors())
                .contains("--edge-diameter D and --depth T exclude each other, expected one of them");
        assertThat(run(TUBE, "--off-axis", "20", "--bevel", "flat").errors()).contains("expected an angle");
        assertThat(run(TUBE, "--off-axis", "20", "--thickness", "-1").errors()).contains("expected a length");
    }

    @Test
    void ofOptionsThatStandForEachOtherTheMissingOnesAreSaidWithTheOthers() {
        Run nothing = Run.of("place-vanes", "--name", "v");
        assertThat(nothing.code()).isEqualTo(ExitCode.UNUSABLE);
        assertThat(nothing.errors())
                .contains("--wall-diameter D[,D] is missing")
                .contains("--entrance-diameter D is missing")
                .contains("darkrim: --edge-diameter D is missing, expected it or --depth T\n")
                .contains("darkrim: --off-axis ANGLE is missing, expected it or --first Z\n");
        assertThat(Run.of("place-vanes", "--wall-diameter", "80", "--depth=deep", "--first", "20")
                        .errors())
                .contains("--length L is missing")
                .contains("--depth: expected a length")
                .doesNotContain("--edge-diameter")
                .doesNotContain("--off-axis");
    }

    @Test
    void vanesThatCannotBeMadeAreRefused() {
        Run shallow = Run.of(
                "place-vanes",
                "--wall-diameter",
                "80",
                "--depth",
                "0.2",
                "--length",
                "300",
                "--detector-diameter",
                "20",
                "--entrance-diameter",
                "60",
                "--off-axis",
                "20");
        assertThat(shallow.code()).isEqualTo(ExitCode.UNUSABLE);
        assertThat(shallow.errors()).contains("more than 200 vanes would be needed, expected deeper vanes");
        Run thick = run(TUBE, "--off-axis", "20", "--thickness", "60", "--land", "50");
        assertThat(thick.code()).isEqualTo(ExitCode.UNUSABLE);
        assertThat(thick.errors()).contains("the vanes cannot be made as asked; nothing was written.");
        assertThat(thick.errors()).contains("expected more than the thickness of 60 mm");
    }

    /** Sharp edges that the lines just touch: the polygons stand back from them, and light passes. */
    @Test
    void withoutClearanceNothingIsWrittenAndTheExitCodeSaysSo() {
        Path file = folder.resolve("tight.yaml");
        Run run = run(TUBE, "--off-axis", "20", "--clearance", "0", "--land", "0", "--layout", file.toString());
        assertThat(run.code()).isIn(ExitCode.FAIL, ExitCode.UNDECIDED);
        assertThat(run.output()).doesNotContain("PASS");
        assertThat(run.errors()).contains("the proof does not hold; no file was written");
        assertThat(file).doesNotExist();
    }

    @Test
    void aFirstVaneHidesTheWallAboveItWhateverTheAngle() {
        Run run = run(TUBE, "--first", "60");
        assertThat(run.code()).as(run.output()).isZero();
        assertThat(run.output())
                .startsWith(
                        "PASS: no wall point above the first vane that the detector sees is lit at any angle: proved.");
    }
}
