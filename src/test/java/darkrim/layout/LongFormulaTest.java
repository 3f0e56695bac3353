package darkrim.layout;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;

import java.nio.charset.StandardCharsets;
import java.time.Duration;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * What the longest formulas measure is found at once: not in twice the time with each term more, which took minutes for seventy terms. Half a
 * second is far more than they take, and the universe is too young for what it took.
 */
class LongFormulaTest {
    private static final int LONGEST = 500;
    private static final Duration PATIENCE = Duration.ofSeconds(20);

    @ParameterizedTest
    @CsvSource({
        "wide, ' + 1', '', ''",
        "open, ' + 1', '', ''",
        "wide, ' + open', '', ''",
        "open, ' + wide', '', ''",
        "1, ' * 1', '', ' * wide'",
        "wide, ' / 1', '', ''",
        "open, ' * 1', '', ''",
        "tilt, ')', 'sin(', ''",
        "wide, ')', 'abs(', ''",
        "open, ')', 'max(1, ', ''",
        "wide, ')', 'min(open, ', ''",
        "wide, ')', 'sqrt(', ''",
        "wide, ')', '(1 + ', ''",
        "wide, ')', '(open - ', ''",
        "tilt, ')', 'atan(1 + ', ''",
        "wide, ')', '-(', ''",
        "1, ')', '2^(', ''",
        "wide, ')', '1/(', ''",
        "wide, '))', 'sin(1 / (wide + ', ''"
    })
    void whatALongFormulaMeasuresIsFoundAtOnce(String inner, String after, String before, String last) {
        int times = (LONGEST - inner.length() - last.length()) / (after.length() + before.length());
        String formula = before.repeat(times) + inner + after.repeat(times) + last;
        String layout = """
                title: Long formula
                dimensions:
                  wide: 4 mm
                  tilt: 3 deg
                  open: 2
                  long: FORMULA
                beam:
                  pupil: {shape: disc, diameter: 20, distance: 200}
                parts:
                  screen: {kind: rectangle, width: long, depth: FORMULA}
                requirements:
                  dark: {surfaces: screen/back, direct: none}
                """.replace("FORMULA", '"' + formula + '"');
        LayoutReading reading = assertTimeoutPreemptively(
                PATIENCE, () -> LayoutReader.read("long.yaml", layout.getBytes(StandardCharsets.UTF_8)));
        assertThat(formula.length()).isBetween(400, LONGEST);
        assertThat(reading.findings()).allMatch(finding -> finding.message().length() < 4000);
    }
}
