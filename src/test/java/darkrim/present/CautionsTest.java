package darkrim.present;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;

/** What a result says is not covered stands on the pages too, in the same words. */
class CautionsTest {
    @Test
    void everyEffectThatIsNotModelledHasItsHeadingInTheCautions() throws IOException {
        String page = Files.readString(Path.of("docs/cautions.md"));
        for (String effect : Cautions.NOT_MODELLED) {
            assertThat(page).containsIgnoringCase("- **" + effect + "**");
        }
        for (String caution : Cautions.CAUTIONS) {
            assertThat(words(page)).contains(caution);
        }
    }

    @Test
    void theReadmeSaysThatAVerdictReplacesNoMeasurement() throws IOException {
        assertThat(words(Files.readString(Path.of("README.md")))).contains(Cautions.CAUTIONS.get(0));
    }

    private static String words(String page) {
        return page.replaceAll("\\s+", " ");
    }
}
