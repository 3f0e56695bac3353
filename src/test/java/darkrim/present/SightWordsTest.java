package darkrim.present;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SightWordsTest {
    @ParameterizedTest
    @CsvSource({
        "0, sees none of the pupil",
        "1, sees the whole pupil",
        "0.4321, sees 43.2 % of the pupil",
        "0.0000001234, sees 1.23e-5 % of the pupil",
        "0.994, sees 99.4 % of the pupil",
        // What is missing is never rounded away.
        "0.999999, sees all but 1.00e-4 % of the pupil",
    })
    void theVerdictIsASentence(double share, String words) {
        assertThat(SightWords.verdict(share)).isEqualTo(words);
    }

    @ParameterizedTest
    @CsvSource({"0, 0 %", "1, 100 %", "0.5, 50.0 %", "0.99999, 100 % less 0.00100 %"})
    void percentagesNeverRoundToAllOrNone(double share, String words) {
        assertThat(SightWords.percent(share)).isEqualTo(words);
    }
}
