package darkrim.study;

import static org.assertj.core.api.Assertions.assertThat;

import darkrim.diagnostic.Findings;
import darkrim.diagnostic.UnusableInput;
import darkrim.layout.LayoutReader;
import darkrim.verdict.Evidence;
import darkrim.verdict.Verdict;
import darkrim.verdict.Watch;
import java.nio.charset.StandardCharsets;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class PupilHidersTest {
    /**
     * A line from (x, y, 0) to (p, q, 200) on the pupil passes the height z of a sheet at x + (p - x) z / 200. From the corner (3, 0.05) the sheet on
     * the right, from x = 3 on at z = 8, hides p > 3, which is 31 % of the disc; the low one, from y = 0.19 on at z = 4, hides q > 7.05, 9 %.
     */
    private static final String TWO_SHEETS = """
            title: A pixel between two sheets
            beam:
              pupil: {shape: disc, diameter: 20, distance: 200}
              FIELD
            parts:
              pixel: {kind: rectangle, width: 0.2, depth: 0.1, at: [2.9, 0, 0]}
              right: {kind: rectangle, width: 20, depth: 20, at: [13, 0, 8]}
              low: {kind: rectangle, width: 20, depth: 20, at: [0, 10.19, 4]}
            requirements:
              whole: {surfaces: pixel/front, pupil_seen: {at_least: SHARE}}
            """;

    private static Evidence.ExactShare found(String yaml, Verdict expected) throws UnusableInput {
        CheckResult result = Check.of(
                LayoutReader.read("sheets.yaml", yaml.getBytes(StandardCharsets.UTF_8))
                        .layout()
                        .orElseThrow(),
                new Findings(),
                new Effort(1, Optional.empty(), Optional.of(1000L), MarginScope.NONE),
                Watch.NONE);
        assertThat(result.judgement().verdict()).isEqualTo(expected);
        return (Evidence.ExactShare)
                result.judgement().requirements().get(0).worst().evidence();
    }

    private static String sheets(String field, double share) {
        return TWO_SHEETS.replace("FIELD", field).replace("SHARE", "" + share);
    }

    @Test
    void whatHidesMostOfThePupilFromTheLowestPointIsNamedFirst() throws UnusableInput {
        Evidence.ExactShare share = found(sheets("", 0.999), Verdict.FAIL);
        assertThat(share.hiddenBy()).containsExactly("right/back", "low/back");
    }

    @Test
    void theFieldLimitIsNamedWhereItLetsNoLightCome() throws UnusableInput {
        // From (3, 0.05) lines to p > 1 are beyond x = 2.95 at z = 5, which leaves nothing for the sheet on the right
        // to hide.
        Evidence.ExactShare share = found(sheets("field: {half_width: 2.95, at_height: 5}", 0.999), Verdict.FAIL);
        assertThat(share.hiddenBy()).containsExactly("field limit", "low/back");
    }

    @Test
    void nothingIsNamedWhereEnoughIsSeen() throws UnusableInput {
        assertThat(found(sheets("", 0.5), Verdict.PASS).hiddenBy()).isEmpty();
    }
}
