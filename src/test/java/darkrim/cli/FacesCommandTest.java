package darkrim.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The listing of faces shows what is there, and the names it writes work when they are pasted. */
class FacesCommandTest {
    private static final String HOOD = "geometries/part-mesh.yaml";

    @TempDir
    private Path folder;

    @Test
    void theFacesOfAPartAreListedWithAreaAndPlace() {
        Run run = Run.of("faces", HOOD, "--part", "hood");
        assertThat(run.code()).as(run.errors()).isZero();
        assertThat(run.errors()).isEmpty();
        // (44^2 - 40^2) x 20 mm3; a side is 44 x 20 mm2.
        assertThat(run.output())
                .contains("Part hood: 10 faces")
                .contains("32 facets, 1 shell, volume 6720 mm3")
                .containsPattern(
                        "hood/outside/\\+x\\[22,0,15] +880 +22, 0, 15 +1.00, 0.00, 0.00 +22, -22, 5 +22, 22, 25")
                .doesNotContain("screen");
    }

    @Test
    void partsOfOtherKindsAreListedToo() {
        Run run = Run.of("faces", HOOD);
        assertThat(run.output()).contains("Part screen: 1 face").containsPattern("screen/front +3600 +0, 0, 0 ");
    }

    @Test
    void temperaturesOfOtherPartsAreNoneOfItsBusiness() {
        Run run = Run.of("faces", "geometries/nightglow-b.yaml", "--part", "lid");
        assertThat(run.code()).as(run.errors()).isZero();
        assertThat(run.errors()).isEmpty();
        assertThat(run.output()).contains("Part lid: 38 faces");
    }

    @Test
    void aPartThatIsNotThereIsNamed() {
        Run run = Run.of("faces", HOOD, "--part", "hod");
        assertThat(run.code()).isEqualTo(ExitCode.UNUSABLE);
        assertThat(run.errors())
                .isEqualTo(
                        "darkrim: --part: the layout has no part named 'hod', expected one of those that are listed without --part.\n");
        assertThat(Run.of(
                                "faces",
                                "geometries/part-block.yaml",
                                "--names",
                                folder.resolve("n").toString())
                        .errors())
                .contains("no part listed is a mesh, expected one; no file was written");
        assertThat(folder).isEmptyDirectory();
    }

    @Test
    void theNamesItWritesFindTheirFacesAgainAlsoInALargerRevision() throws IOException {
        Files.copy(Path.of("geometries/hood.obj"), folder.resolve("hood.obj"));
        Path layout = folder.resolve("l.yaml");
        String text = Files.readString(Path.of(HOOD));
        Files.writeString(layout, text);
        Path names = folder.resolve("names.yaml");
        Run first = Run.of("faces", layout.toString(), "--names", names.toString());
        assertThat(first.code()).as(first.errors()).isZero();
        String stub = Files.readString(names);
        assertThat(stub).contains("    names:\n      face-1: {at: [").contains("# inside/+x[-20,0,15]");
        Files.writeString(layout, text.replace("    unit: mm\n", "    unit: mm\n" + stub.replaceAll("(?m)^#.*\n", "")));
        Run second = Run.of("faces", layout.toString());
        assertThat(second.code()).as(second.errors()).isZero();
        assertThat(second.errors()).isEmpty();
        assertThat(second.output())
                .contains("hood/face-1 ")
                .contains("hood/face-10 ")
                .doesNotContain("[");
        // The next revision is 0.1 mm wider on every side: every wall is found, and said to have moved.
        Files.writeString(
                folder.resolve("hood.obj"),
                Files.readString(folder.resolve("hood.obj"))
                        .replace("20 ", "20.1 ")
                        .replace("22 ", "22.1 "));
        Run third = Run.of("faces", layout.toString());
        assertThat(third.code()).as(third.errors()).isZero();
        assertThat(third.output()).contains("hood/face-1 ").contains("hood/face-10 ");
        assertThat(third.errors().lines().filter(line -> line.endsWith("[mesh-face-moved]")))
                .hasSize(8)
                .allMatch(line -> line.contains("lies 0.1 mm from the place of its name"));
        // Five times as far is too far: nothing is guessed.
        Files.writeString(
                folder.resolve("hood.obj"),
                Files.readString(folder.resolve("hood.obj"))
                        .replace("20.1 ", "20.6 ")
                        .replace("22.1 ", "22.6 "));
        Run fourth = Run.of("faces", layout.toString());
        assertThat(fourth.code()).isEqualTo(ExitCode.UNUSABLE);
        assertThat(fourth.errors()).contains("[mesh-face-missing]");
        assertThat(Run.of("check", layout.toString()).code()).isEqualTo(ExitCode.UNUSABLE);
    }

    @Test
    void aVerdictOnALeakyMeshSaysSoBesideTheVerdict() {
        Run gap = Run.of("check", "src/test/resources/placed/mesh-narrow-gap.yaml", "--margins", "none");
        assertThat(gap.output().replaceAll("\\s+", " "))
                .contains(
                        "PASS: the requirement holds. CAUTION: light may leak, or be stopped by what is not there. parts"
                                + " upper and lower leave a gap of 0.05 mm");
        Run whole = Run.of("check", HOOD, "--margins", "none");
        assertThat(whole.output()).doesNotContain("CAUTION");
    }

    @Test
    void aMeshThatCannotBeReadIsRefusedAndNothingIsWritten() throws IOException {
        Files.writeString(folder.resolve("l.yaml"), Files.readString(Path.of(HOOD)));
        Run run = Run.of(
                "faces",
                folder.resolve("l.yaml").toString(),
                "--names",
                folder.resolve("n").toString());
        assertThat(run.code()).isEqualTo(ExitCode.UNUSABLE);
        assertThat(run.errors()).contains("there is no such file beside the layout [mesh-unreadable]");
        assertThat(folder.resolve("n")).doesNotExist();
    }
}
