package darkrim.layout.mesh;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.security.MessageDigest;
import java.util.HexFormat;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

/** Whatever a mesher does, a STEP file becomes facets within the tolerance or an error that names the mesher; a script stands for it here. */
@DisabledOnOs(OS.WINDOWS)
class StepFileTest {
    /** Two triangles that stand for a quarter of a circle of radius 10 about z, 1 high, in the given number of chords. */
    private static final String ARC = """
            awk -v n=%s 'BEGIN {
              print "solid Gmsh Surface 1"
              for (i = 0; i < n; i++) {
                a = i * 1.5707963267948966 / n; b = (i + 1) * 1.5707963267948966 / n
                printf "facet normal 0 0 0\\nouter loop\\n"
                printf "vertex %%.12f %%.12f 0\\nvertex %%.12f %%.12f 0\\nvertex %%.12f %%.12f 1\\n", \
            10*cos(a), 10*sin(a), 10*cos(b), 10*sin(b), 10*cos(b), 10*sin(b)
                printf "endloop\\nendfacet\\nfacet normal 0 0 0\\nouter loop\\n"
                printf "vertex %%.12f %%.12f 0\\nvertex %%.12f %%.12f 1\\nvertex %%.12f %%.12f 1\\n", \
            10*cos(a), 10*sin(a), 10*cos(b), 10*sin(b), 10*cos(a), 10*sin(a)
                printf "endloop\\nendfacet\\n"
              }
              print "endsolid"
            }' > "$out"
            """;

    @TempDir
    private Path folder;

    private Path step;

    @BeforeEach
    void writeFile() throws IOException {
        step = folder.resolve("-o a part.step");
        Files.writeString(step, "ISO-10303-21;\nHEADER;\n");
    }

    /** A mesher in a folder whose name has a space; the number of its run is in {@code $run}, the file to write in {@code $out}. */
    private String mesher(String work) throws IOException {
        Path bin = Files.createDirectories(folder.resolve("my bin"));
        Path script = bin.resolve("gmsh");
        Files.writeString(script, """
                #!/bin/sh
                if [ "$1" = --version ]; then echo 1.2.3 >&2; exit 0; fi
                echo "$@" >> "%1$s/arguments"
                pwd >> "%1$s/folders"
                run=$(wc -l < "%1$s/arguments")
                out=facets.stl
                %2$s
                """.formatted(folder, work));
        Files.setPosixFilePermissions(script, PosixFilePermissions.fromString("rwx------"));
        return "relative:" + folder.resolve("nothing") + ":" + bin;
    }

    private static MessageDigest digest() {
        try {
            return MessageDigest.getInstance("SHA-256");
        } catch (java.security.NoSuchAlgorithmException impossible) {
            throw new IllegalStateException(impossible);
        }
    }

    private StepFile.Meshed read(String searchPath, int seconds, double tolerance) throws IOException, MeshFault {
        return new StepFile(new StepFile.Fineness(tolerance, 10), searchPath, seconds).read(step, digest());
    }

    private String refusal(String searchPath, int seconds) {
        MeshFault fault = catchThrowableOfType(MeshFault.class, () -> read(searchPath, seconds, 0.05));
        assertThat(fault).isNotNull();
        return fault.code() + ": " + fault.getMessage();
    }

    private void nothingIsLeft() throws IOException {
        for (String work : Files.readAllLines(folder.resolve("folders"))) {
            assertThat(Path.of(work)).doesNotExist();
        }
    }

    @Test
    void facetsAreMeasuredAndTakenFinerUntilTheyHold() throws IOException, MeshFault {
        // 10 (1 - cos(pi / 4n)): 0.192, 0.0482, 0.0120 mm for 4, 8, 16 chords.
        StepFile.Meshed meshed = read(mesher(ARC.formatted("$((2 << run))")), 30, 0.05);
        assertThat(meshed.mesh().facetCount()).isEqualTo(2 * 16);
        // Corners of 32 chords lie at the middle of the 16: the chord error in closed form, with a third added for what
        // they do not show.
        double error = 10 * (1 - Math.cos(Math.PI / 64));
        assertThat(meshed.meshing().deviation())
                .isCloseTo(error * 4 / 3, org.assertj.core.api.Assertions.within(1e-9))
                .isLessThan(0.05);
        assertThat(meshed.meshing().program()).isEqualTo("gmsh 1.2.3");
        nothingIsLeft();
    }

    @Test
    void theDigestIsThatOfTheFileAndNoNameOfItIsAnArgument() throws Exception {
        MessageDigest digest = digest();
        new StepFile(new StepFile.Fineness(0.5, 10), mesher(ARC.formatted("$((2 << run))")), 30).read(step, digest);
        assertThat(HexFormat.of().formatHex(digest.digest()))
                .isEqualTo(HexFormat.of().formatHex(digest().digest(Files.readAllBytes(step))));
        assertThat(Files.readString(folder.resolve("arguments")))
                .doesNotContain("a part")
                .contains("part.step");
    }

    @Test
    void aMesherThatIsNotThereIsNamedWithHowToInstallIt() {
        assertThat(refusal("", 5))
                .startsWith("mesher-missing: ")
                .contains("the program gmsh", "apt install gmsh", "brew install gmsh", "Windows");
    }

    @Test
    void failuresOfTheMesherAreNamed() throws IOException {
        assertThat(refusal(mesher("echo 'Error   : bad luck'; exit 3"), 30))
                .startsWith("mesher-failed: ")
                .contains("my bin/gmsh could not mesh it; it says: Error : bad luck");
        assertThat(refusal(mesher("exit 0"), 30)).contains("wrote no facets");
        assertThat(refusal(mesher("echo what is this > $out"), 30)).contains("wrote what is no STL file");
        assertThat(refusal(mesher("head -c 100000 /dev/zero > $out"), 30)).contains("wrote what is no STL file");
        // The same facets whatever is asked for would measure as perfect.
        assertThat(refusal(mesher(ARC.formatted("9")), 30)).contains("makes no finer facets of a curved face");
        nothingIsLeft();
    }

    @Test
    void facetsThatNeverComeNearAreRefused() throws IOException {
        // One chord more each run: the fourth mesh that is measured has 4 chords, and 10 (1 - cos(pi / 16)) is 0.19 mm.
        assertThat(refusal(mesher(ARC.formatted("$((run < 6 ? run : 9))")), 30))
                .startsWith("mesher-failed: facets of the mesher gmsh 1.2.3 lie up to ")
                .contains("expected at most 0.05 mm");
    }

    @Test
    void facesThatDifferBetweenRunsAreRefused() throws IOException {
        String renamed = ARC.formatted("$((2 << run))")
                + "sed -i \"s/Surface 1/Surface $run/; s/endsolid/endsolid\\nsolid b\\nendsolid b/\" $out\n";
        assertThat(refusal(mesher(renamed), 30)).contains("mesher-failed");
    }

    @Test
    void aMesherThatDoesNotEndIsEnded() throws IOException, InterruptedException {
        assertThat(refusal(mesher("echo $$ > '" + folder + "/process'; sleep 77 & wait"), 1))
                .contains("took longer than 1 s");
        long process =
                Long.parseLong(Files.readString(folder.resolve("process")).strip());
        for (int i = 0; i < 1000 && ProcessHandle.of(process).isPresent(); i++) {
            Thread.sleep(20);
        }
        assertThat(ProcessHandle.of(process)).isEmpty();
        nothingIsLeft();
    }

    @Test
    void aFileThatIsNoStepFileIsNotHandedOver() throws IOException {
        Files.write(step, "Merge \"/etc/passwd\";".getBytes(StandardCharsets.UTF_8));
        assertThat(refusal(mesher("exit 0"), 30)).startsWith("mesh-form: the file is no STEP file");
        try (Stream<Path> files = Files.list(folder)) {
            assertThat(files.map(file -> file.getFileName().toString())).doesNotContain("folders");
        }
    }
}
