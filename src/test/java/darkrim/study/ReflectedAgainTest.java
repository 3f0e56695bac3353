package darkrim.study;

import static org.assertj.core.api.Assertions.assertThat;

import darkrim.diagnostic.Finding;
import darkrim.diagnostic.UnusableInput;
import darkrim.verdict.Watch;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What no requirement counts is told where it is much beside a limit, and only there. */
class ReflectedAgainTest {
    private static final Path REPAIRED = Path.of("geometries/nightglow-b.yaml");
    private static final Effort LITTLE = new Effort(2, Optional.empty(), Optional.of(100_000L)).with(MarginScope.NONE);

    @TempDir
    private Path folder;

    private static List<Finding> told(Path layout) throws UnusableInput {
        return Check.of(layout, LITTLE, Watch.NONE).warnings().stream()
                .filter(warning -> warning.code().equals(ReflectedAgain.CODE))
                .toList();
    }

    /** Light followed forward from the pupil, which shares no estimator, finds as much: PathStudyTest. */
    @Test
    void theWallsOfTheShippedBoxAreTold() throws UnusableInput {
        assertThat(told(REPAIRED)).hasSize(1);
        assertThat(told(REPAIRED).get(0).message())
                .matches("pixels-clean counts light that is reflected once only; light reflected twice is about"
                        + " 2\\.[1-4]e-4 on mosaic/die\\[.*\\]/active, 1[01] times its limit of 2e-5: .*");
    }

    @Test
    void aLimitFarAboveBringsNoWord() throws Exception {
        String text = Files.readString(REPAIRED).replace("at_most: 2.0e-5", "at_most: 4.0e-3");
        assertThat(text).contains("4.0e-3");
        assertThat(told(Files.writeString(folder.resolve("loose.yaml"), text))).isEmpty();
    }

    @Test
    void besideALimitOfNothingNoMultipleIsTold() throws UnusableInput {
        assertThat(told(Path.of("geometries/dusk-tube.yaml"))).hasSize(1);
        assertThat(told(Path.of("geometries/dusk-tube.yaml")).get(0).message()).contains("/active, its limit is 0: ");
    }

    @Test
    void wallsThatReflectNothingBringNoWord() throws Exception {
        String text = Files.readString(REPAIRED).replaceAll("(?m)^  black: .*$", "  black: {diffuse: 0}");
        assertThat(text).contains("{diffuse: 0}");
        assertThat(told(Files.writeString(folder.resolve("ideal.yaml"), text))).isEmpty();
    }

    @Test
    void aLimitThatFailsAnywayIsNotDoubtedToo() throws UnusableInput {
        assertThat(told(Path.of("geometries/nightglow-a.yaml"))).isEmpty();
    }
}
