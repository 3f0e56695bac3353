package darkrim.present;

import static org.assertj.core.api.Assertions.assertThat;

import darkrim.present.table.CheckTables;
import darkrim.present.table.JunitReport;
import darkrim.study.CheckResult;
import darkrim.study.CoarseHood;
import darkrim.study.LayoutFamily;
import darkrim.study.sweep.SweepResult;
import darkrim.study.sweep.Sweeps;
import darkrim.verdict.Verdict;
import java.nio.charset.StandardCharsets;
import org.junit.jupiter.api.Test;

/** Darkness that facets do not prove for the curved surfaces they stand for is nowhere called proved. */
class DoubtInWordsTest {
    private static final String WORDS = "dark behind the facets";
    private static final String SHELVES = "{shelf,sill}/outside";

    private static CheckResult check(String chord, String direct) throws Exception {
        return CoarseHood.check("chord: " + chord, SHELVES, direct);
    }

    private static String page(CheckResult result) {
        String text = new TextReport("1", Ink.PLAIN, true).of(result);
        return text.substring(0, text.indexOf("Warnings"));
    }

    @Test
    void besideUndecidedNothingIsCalledProvedDark() throws Exception {
        for (String direct : new String[] {"none", "{at_most: 1.0e-3}"}) {
            CheckResult result = check("30", direct);
            assertThat(result.judgement().verdict()).isEqualTo(Verdict.UNDECIDED);
            assertThat(page(result))
                    .containsPattern("dark +UNDECIDED +direct [^ ].* " + WORDS + " +shelf")
                    .doesNotContain("both dark");
            assertThat(JunitReport.of(result, "1"))
                    .contains("UNDECIDED shelf/outside: " + WORDS + ", clearance ")
                    .contains("; not proved for the curved surfaces they stand for")
                    .doesNotContain("proved dark");
            assertThat(CheckTables.check(result, "1").csv()).contains(WORDS).doesNotContain("proved dark");
        }
    }

    @Test
    void withoutADoubtItIs() throws Exception {
        CheckResult result = check("0.01", "none");
        assertThat(page(result)).containsPattern("dark +PASS +direct none +proved dark +both dark");
        assertThat(JunitReport.of(result, "1"))
                .contains("outside: proved dark, clearance ")
                .doesNotContain(WORDS);
    }

    @Test
    void aSweepNamesWhatIsInDoubtAndNotTheMarginOfWhatPasses() throws Exception {
        String text = CoarseHood.text("chord: 30", SHELVES, "none")
                .replace(
                        "requirements: {", "requirements: {seen: {surfaces: hood/**, once_reflected: {at_most: 10}}, ");
        LayoutFamily family = LayoutFamily.of(CoarseHood.NAME, text.getBytes(StandardCharsets.UTF_8));
        SweepResult swept = Sweeps.run(family, Sweeps.grid(family, "top = 1"));
        assertThat(new SweepReport("1", Ink.PLAIN).of(swept))
                .containsPattern("\n +1 +PASS +UNDECIDED +undecided: dark\n");
        assertThat(swept.points().get(0).lines())
                .filteredOn(line -> line.figure().requirement().equals("dark"))
                .singleElement()
                .satisfies(line -> assertThat(line.figure().margin()).isNaN());
    }
}
