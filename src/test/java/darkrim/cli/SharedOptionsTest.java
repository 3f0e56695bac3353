package darkrim.cli;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Options that commands share speak of the command that they are given to, and of no other. */
class SharedOptionsTest {
    /** The help on one line, as far as spaces go. */
    private static String help(String command) {
        return Run.of(command, "--help").output().replaceAll("\\s+", " ");
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            check      | the layout's.
            compare    | the layout's.
            report     | the layout's.
            seen-from  | 1,000,000.
            pixel-view | 200,000 from each point.
            paths      | 200,000 onto each surface.
            star-scan  | 1,024 for each position of the star.
            rejection  | 65,536 for each direction.
            sweep      | 65,536 for each number.
            tolerance  | 32,768 for each number of a build.
            """)
    void theDefaultNumberOfSamplesIsThatOfTheCommand(String command, String words) {
        assertThat(help(command))
                .contains("--samples=N Samples at most, such as 2e8; default: " + words + " --threads");
    }

    @ParameterizedTest
    @CsvSource({"view,--overwrite", "section,--samples", "maps,--samples"})
    void whatWouldHaveNoEffectIsNotThere(String command, String option) {
        assertThat(help(command)).doesNotContain(option);
        assertThat(Run.of(command, "1", option).errors()).contains("there is no option '" + option + "'");
    }

    @Test
    void batchesHoldTheSamplesThatAreAskedForUpToABound() {
        assertThat(RejectionCommand.batches(1)).isEqualTo(1);
        assertThat(RejectionCommand.batches(8192)).isEqualTo(1);
        assertThat(RejectionCommand.batches(8193)).isEqualTo(2);
        assertThat(RejectionCommand.batches(Long.MAX_VALUE)).isEqualTo(1_000_000);
    }
}
