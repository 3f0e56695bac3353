package darkrim.cli;

import static org.assertj.core.api.Assertions.assertThat;

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
        Run run = Run.of("compare", A, B, "--json", json.toString(), "--samples", "4e6");
        assertThat(run.code()).as(run.errors()).isZero();
        assertThat(run.output())
                .startsWith("NOT WORSE")
                // Revision A has straight walls, revision B a bevel and a land in their place.
                .containsPattern("gone +mosaic/die\\[.,.\\]/active +lid/opening\\[.,.\\]/wall/")
                .containsPattern("new +mosaic/die\\[.,.\\]/active +lid/opening\\[.,.\\]/land/")
                .containsPattern("lid_height +3.8 mm +1.6 mm");
        assertThat(run.output().lines()).allMatch(line -> line.length() <= 100);
        assertThat(StudySchema.problems("comparison.schema.json", json)).isEmpty();
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
