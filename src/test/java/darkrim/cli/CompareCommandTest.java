package darkrim.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** {@code darkrim compare} as the user sees it. */
class CompareCommandTest {
    private static final String A = "geometries/nightglow-a.yaml";
    private static final String B = "geometries/nightglow-b.yaml";

    @TempDir
    private Path folder;

    @Test
    void theRepairIsNotWorseAndItsLedgerNamesNewAndVanishedPaths() throws Exception {
        Path json = folder.resolve("ab.json");
        Path table = folder.resolve("ab.csv");
        Run run = Run.of("compare", A, B, "--json", json.toString(), "--csv", table.toString(), "--samples", "4e6");
        assertThat(run.code()).as(run.errors()).isZero();
        assertThat(run.output())
                .startsWith("NOT WORSE")
                // Revision A has straight walls, revision B a bevel and a land in their place.
                .containsPattern("gone +mosaic/die\\[.,.\\]/active +lid/opening\\[.,.\\]/wall/")
                .containsPattern("new +mosaic/die\\[.,.\\]/active +lid/opening\\[.,.\\]/land/")
                .containsPattern("lid_height +3.8 mm +1.6 mm")
                .containsPattern("part +lid +[0-9]+ changed, 32 new, 16 gone surfaces");
        assertThat(run.output().lines()).allMatch(line -> line.length() <= 100);
        assertThat(StudySchema.problems("comparison.schema.json", json)).isEmpty();
        assertThat(Files.readString(table)).endsWith("\r\n");
        assertThat(MapsCommandTest.records(table))
                .anySatisfy(line -> {
                    assertThat(line.get("name")).isEqualTo("edges-dark");
                    assertThat(line.get("verdict before")).isEqualTo("fail");
                    assertThat(line.get("verdict after")).isEqualTo("pass");
                })
                .anySatisfy(line -> assertThat(line.get("what")).isEqualTo("dimension"));
    }

    @Test
    void theExitCodeSaysWhichWayIsWorse() throws Exception {
        String dull = """
                title: A wall and a screen
                beam:
                  pupil: {shape: disc, diameter: 40, distance: 200}
                finishes:
                  grey: {diffuse: 0.02}
                parts:
                  screen: {kind: rectangle, width: 10, depth: 10}
                  wall: {kind: block, width: 2, depth: 20, height: 20, at: [12, 0, 0], turn: {about: y, by: 10}, finish: grey}
                requirements:
                  screen-clean: {surfaces: "screen/front", once_reflected: {at_most: 5.0e-3}}
                """;
        String one = Files.writeString(folder.resolve("dull.yaml"), dull).toString();
        String two = Files.writeString(folder.resolve("bright.yaml"), dull.replace("0.02", "0.9"))
                .toString();
        assertThat(Run.of("compare", two, one).code()).isZero();
        Run worse = Run.of("compare", one, two);
        assertThat(worse.code()).isEqualTo(ExitCode.FAIL);
        String wide = Files.writeString(folder.resolve("wide.yaml"), dull.replace("diameter: 40", "diameter: 44"))
                .toString();
        Path json = folder.resolve("wide.json");
        assertThat(Run.of("compare", one, wide, "--json", json.toString()).output())
                .contains("The beam differs: the second layout is judged in other light.")
                .contains("pupil: before disc, diameter 40 mm; after disc, diameter 44 mm\n");
        assertThat(StudySchema.problems("comparison.schema.json", json)).isEmpty();
        assertThat(worse.output())
                .startsWith("WORSE in the second layout: screen-clean.")
                .containsPattern("finish +grey +diffuse 0.02, mirror 0 +diffuse 0.9, mirror 0");
    }

    @Test
    void aMissingOrUnusableSecondFileIsRefused() {
        Run missing = Run.of("compare", A);
        assertThat(missing.code()).isEqualTo(ExitCode.UNUSABLE);
        assertThat(missing.errors()).contains("OTHER");
        Run none = Run.of("compare", A, folder.resolve("none.yaml").toString());
        assertThat(none.code()).isEqualTo(ExitCode.UNUSABLE);
        assertThat(none.errors()).contains("there is no such file").doesNotContain("Exception");
        Run over = Run.of("compare", A, B, "--json", B, "--overwrite");
        assertThat(over.code()).isEqualTo(ExitCode.UNUSABLE);
        assertThat(over.errors()).contains("is the layout file itself");
    }
}
