package darkrim.present;

import static org.assertj.core.api.Assertions.assertThat;

import darkrim.diagnostic.Findings;
import darkrim.layout.LayoutReader;
import darkrim.layout.LayoutReading;
import darkrim.present.table.CheckTables;
import darkrim.present.table.JunitReport;
import darkrim.study.Check;
import darkrim.study.CheckResult;
import darkrim.study.Effort;
import darkrim.study.MarginScope;
import darkrim.verdict.Verdict;
import darkrim.verdict.Watch;
import java.nio.charset.StandardCharsets;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** Darkness that facets do not prove for the curved surfaces they stand for is nowhere called proved. */
class DoubtInWordsTest {
    private static final String WORDS = "dark behind the facets";

    /** Two shelves below a mesh whose facets lie up to a chord from its curved surfaces. */
    private static CheckResult check(String chord, String direct) throws Exception {
        String text = """
                title: t
                finishes: {black: {diffuse: 0.04}}
                beam: {pupil: {shape: disc, diameter: 30, distance: 200}}
                parts:
                  shelf: {kind: tube, inner_diameter: 42, outer_diameter: 46, base: 0, height: 1, finish: black}
                  sill: {kind: tube, inner_diameter: 42, outer_diameter: 46, base: -3, height: 1, finish: black}
                  hood: {kind: mesh, file: hood.stl, unit: mm, chord: %s, finish: black}
                requirements: {dark: {surfaces: "{shelf,sill}/outside", direct: %s}}
                """.formatted(chord, direct);
        LayoutReading reading = LayoutReader.read("geometries/step/l.yaml", text.getBytes(StandardCharsets.UTF_8));
        assertThat(reading.findings()).isEmpty();
        return Check.of(
                reading.layout().orElseThrow(),
                new Findings(),
                new Effort(2, Optional.empty(), Optional.of(0L), MarginScope.NONE),
                Watch.NONE);
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
}
