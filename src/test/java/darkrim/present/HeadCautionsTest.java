package darkrim.present;

import static org.assertj.core.api.Assertions.assertThat;

import darkrim.diagnostic.Finding;
import darkrim.diagnostic.Findings;
import darkrim.diagnostic.Place;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** A PASS that may come of a mistake in the layout must not be read without it. */
class HeadCautionsTest {
    private static List<Finding> warnings(String... codes) {
        Findings findings = new Findings();
        for (int i = 0; i < codes.length; i++) {
            findings.warning(codes[i], new Place("a.yaml", i + 1, 1), "message " + (i + 1));
        }
        return findings.sorted();
    }

    @ParameterizedTest
    @ValueSource(
            strings = {"parts-overlap", "detector-faces-away", "no-finish", "material-without-finish", "beyond-pupil"})
    void aMistakeThatMayMakeThingsDarkStandsAtTheHead(String code) {
        assertThat(HeadCautions.of(List.of(), warnings(code)))
                .containsExactly("CAUTION: the layout may not say what is meant. message 1.");
    }

    @Test
    void theFirstOfAKindStandsForAll() {
        assertThat(HeadCautions.of(
                        List.of(),
                        warnings("mesh-open", "parts-overlap", "no-finish", "parts-overlap", "reflected-twice")))
                .containsExactly(
                        "CAUTION: the layout may not say what is meant. message 2. 2 more such warnings below.",
                        "CAUTION: light may leak, or be stopped by what is not there. message 1.",
                        "CAUTION: message 5.");
    }

    @Test
    void whatDoesNotSpeakAgainstTheVerdictStaysBelow() {
        assertThat(HeadCautions.of(List.of(), warnings("unused", "beyond-measured")))
                .isEmpty();
    }
}
