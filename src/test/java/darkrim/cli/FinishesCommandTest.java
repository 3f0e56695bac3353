package darkrim.cli;

import static org.assertj.core.api.Assertions.assertThat;

import darkrim.layout.FinishLibrary;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** {@code darkrim finishes} as the user sees it, and what a finish that changes with angle does to a check. */
class FinishesCommandTest {
    private static final String COATED = "geometries/grazing-coat.yaml";

    @TempDir
    private Path folder;

    @Test
    void everyEntryIsListedWithItsSource() {
        Run run = Run.of("finishes");
        assertThat(run.code()).as(run.errors()).isZero();
        for (FinishLibrary.Entry entry : FinishLibrary.entries()) {
            assertThat(run.output()).contains(entry.name() + ": " + entry.what().substring(0, 4));
        }
        assertThat(run.output())
                .contains("from memory: replace by your own measurement")
                .contains("1.2-2.5 um");
        assertThat(run.output().lines()).allMatch(line -> line.length() <= 100);
        // Smooth coat n = 1.5 at 80 deg: 39 % (Fresnel).
        assertThat(run.output()).containsPattern("smooth-black-lacquer +0.4-0.7 um .* 38.8 %\\n");
    }

    @Test
    void aBandAndNamesPickSome() {
        Run run = Run.of("finishes", "gold", "--band", "1,2.5");
        assertThat(run.code()).as(run.errors()).isZero();
        assertThat(run.output()).contains("1-2.5 um").doesNotContain("lacquer");
        assertThat(Run.of("finishes", "gold", "--band", "0.8,2.5").code()).isEqualTo(ExitCode.UNUSABLE);
        assertThat(Run.of("finishes", "--band", "20,30").errors()).contains("no finish has values");
        assertThat(Run.of("finishes", "--band", "3,1").errors()).contains("the shorter first");
        assertThat(Run.of("finishes", "--band", "3").errors()).contains("two wavelengths");
        assertThat(Run.of("finishes", "--band", "x,y").errors())
                .contains("--band")
                .doesNotContain("Exception");
        Run unknown = Run.of("finishes", "golt");
        assertThat(unknown.code()).isEqualTo(ExitCode.UNUSABLE);
        assertThat(unknown.errors()).contains("did you mean 'gold'?");
        Run several = Run.of("finishes", "golt", "gold", "rough-anodize-black", "golt");
        assertThat(several.code()).isEqualTo(ExitCode.UNUSABLE);
        assertThat(several.output()).isEmpty();
        assertThat(several.errors().lines())
                .containsExactly(
                        "darkrim: there is no finish 'golt', did you mean 'gold'?",
                        "darkrim: there is no finish 'rough-anodize-black', did you mean 'rough-anodise-black'?");
    }

    @Test
    void theFinishesOfALayoutAreListedToo() {
        Run run = Run.of("finishes", "--layout", COATED);
        assertThat(run.code()).as(run.errors()).isZero();
        assertThat(run.output()).contains("smooth black lacquer").contains("the layout's");
        Run none = Run.of("finishes", "--layout", folder.resolve("none.yaml").toString());
        assertThat(none.code()).isEqualTo(ExitCode.UNUSABLE);
        assertThat(none.errors()).contains("there is no such file");
        assertThat(Run.of("finishes", "--layout", COATED, "--band", "1,2").errors())
                .contains("states its own band");
    }

    @Test
    void curvesAreDrawnAsSvgAndPng() throws Exception {
        for (String name : new String[] {"some.svg", "some.png"}) {
            Path file = folder.resolve(name);
            Run run = Run.of("finishes", "smooth-black-lacquer", "gold", "--chart", file.toString());
            assertThat(run.code()).as(run.errors()).isZero();
            byte[] bytes = Files.readAllBytes(file);
            if (name.endsWith("svg")) {
                assertThat(new String(bytes, StandardCharsets.UTF_8)).contains("<svg");
            } else {
                assertThat(ImageIO.read(file.toFile()).getWidth()).isGreaterThan(1000);
            }
            assertThat(Run.of("finishes", "gold", "--chart", file.toString()).errors())
                    .contains("--overwrite");
        }
        Run many = Run.of("finishes", "--chart", folder.resolve("many.svg").toString());
        assertThat(many.errors()).contains("at most 12 curves");
        assertThat(folder.resolve("many.svg")).doesNotExist();
        assertThat(Run.of("finishes", "--chart", "x.jpg").errors()).contains(".svg or .png");
        Run over = Run.of("finishes", "--layout", COATED, "--chart", COATED, "--overwrite");
        assertThat(over.code()).isEqualTo(ExitCode.UNUSABLE);
    }

    /** The wall is 5 % black straight on, with either finish; what the beam grazes tells them apart. */
    @Test
    void aCoatAtGrazingIncidenceTurnsAPassIntoAFailAndThePathsNameTheWalls() throws Exception {
        Run coated = Run.of("check", COATED, "--samples", "2e6");
        assertThat(coated.code()).as(coated.errors()).isEqualTo(ExitCode.FAIL);
        assertThat(coated.output()).containsPattern("array/front +snout/inside/\\S+ +mirror ");
        Path rough = folder.resolve("rough.yaml");
        Files.writeString(
                rough, Files.readString(Path.of(COATED)).replace("smooth-black-lacquer", "polyurethane-black-paint"));
        Run matt = Run.of("check", rough.toString(), "--samples", "2e6");
        assertThat(matt.code()).as(matt.output()).isZero();
        assertThat(matt.output()).doesNotContainPattern("array/front +snout/\\S+ +mirror ");
    }
}
