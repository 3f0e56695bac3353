package darkrim.present;

import static org.assertj.core.api.Assertions.assertThat;

import darkrim.study.MarginUnit;
import darkrim.study.RequirementMargin;
import darkrim.verdict.Verdict;
import java.util.Optional;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class WorstCaseSectionTest {
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            ignoreLeadingAndTrailingWhitespace = false,
            value = {
                "screen/front|edge| at screen/front, set by edge",
                "screen/front|| at screen/front",
                "|edge|, set by edge",
                "||"
            })
    void nothingIsSaidOfAPlaceThatIsNotKnown(String where, String setBy, String expected) {
        RequirementMargin margin = new RequirementMargin(
                "dark",
                Optional.of(Verdict.UNDECIDED),
                Double.NaN,
                0,
                MarginUnit.MILLIMETRES,
                false,
                orEmpty(where),
                orEmpty(setBy),
                "");
        assertThat(WorstCaseSection.place(margin)).isEqualTo(orEmpty(expected));
    }

    private static String orEmpty(String text) {
        return text == null ? "" : text;
    }
}
