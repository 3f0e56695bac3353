package darkrim.present;

import static org.assertj.core.api.Assertions.assertThat;

import darkrim.layout.Requirement.LightClass;
import darkrim.present.map.LightMap;
import darkrim.present.map.MapFits;
import darkrim.present.picture.LightUnit;
import darkrim.present.table.CheckTables;
import darkrim.present.table.JunitReport;
import darkrim.study.CheckResult;
import darkrim.study.CoarseHood;
import darkrim.study.LayoutFamily;
import darkrim.study.irradiance.CheckedLight;
import darkrim.study.irradiance.DarkProof;
import darkrim.study.irradiance.LightKind;
import darkrim.study.irradiance.LitLayout;
import darkrim.study.irradiance.MapSampling;
import darkrim.study.irradiance.SurfaceMap;
import darkrim.study.sweep.SweepResult;
import darkrim.study.sweep.Sweeps;
import darkrim.verdict.Evidence;
import darkrim.verdict.SurfaceResult;
import darkrim.verdict.Verdict;
import darkrim.verdict.Watch;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
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

    /** Whoever reads only what is said of surfaces is not misled either. */
    @Test
    void noSurfaceInDoubtIsCalledProvedDark() throws Exception {
        CheckResult result = check("30", "none");
        SurfaceResult shelf = surface(result, "shelf/outside");
        assertThat(shelf.darkness()).get().isInstanceOf(Evidence.DarkBehindFacets.class);
        assertThat(new Values(result).of(shelf, LightClass.DIRECT)).isEqualTo(WORDS);
        assertThat(new TextReport("1", Ink.PLAIN, true).of(result).replaceAll("\\s+", " "))
                .contains("'" + WORDS + "': that is proved of the facets, not of the curved surfaces they stand for.")
                .contains("In doubt: dark. A clearance there")
                .contains("Proofs count gaps below");
        CheckedLight light = CheckedLight.of(result);
        assertThat(light.surfaces().get(shelf.surface().index()).proof()).isEqualTo(DarkProof.BEHIND_FACETS);
    }

    /** Where nobody asked for a margin the proof of a reflecting surface is as much in doubt. */
    @Test
    void aDarkSurfaceWhoseClearanceNobodyMeasuredIsInDoubtToo() throws Exception {
        CheckResult result = CoarseHood.check("chord: 0.01", "shelf/outside", "none");
        assertThat(surface(result, "shelf/outside").darkness()).get().isInstanceOf(Evidence.ProvedDark.class);
        assertThat(surface(result, "sill/outside").darkness()).get().isInstanceOf(Evidence.DarkBehindFacets.class);
    }

    @Test
    void aMapOfItSaysSo() throws Exception {
        CheckResult result = check("30", "none");
        LitLayout lit = LitLayout.of(
                CheckedLight.of(result),
                new LitLayout.Fineness(name -> name.equals("shelf/top"), 2, new MapSampling.Round(4, 4)),
                1,
                Watch.NONE);
        SurfaceMap top = lit.maps().get(surface(result, "shelf/top").surface().index());
        assertThat(top.cells().grid()).isPresent();
        LightMap map = new LightMap(
                new SurfaceMap(top.cells(), DarkProof.BEHIND_FACETS, top.direct(), top.reflected(), top.rounds()),
                LightKind.DIRECT,
                LightUnit.ofBeam(result.scene()));
        String fits = new String(MapFits.of(List.of(map), result.layout(), 1, "1"), StandardCharsets.ISO_8859_1);
        assertThat(fits).containsPattern("PROVDARK= +F ").containsPattern("FACEDARK= +T ");
        MapReport.Line line = new MapReport.Line("shelf/top", "direct", 2, 2, 0, 0, map.proof());
        assertThat(new MapReport("1").of(List.of(line), "", "", CheckedLight.of(result), List.of(Path.of("m.fits"))))
                .containsPattern("shelf/top +direct +2 x 2 +" + WORDS);
        assertThat(new LightMap(map.map(), LightKind.ONCE_REFLECTED, map.unit()).proof())
                .isEqualTo(DarkProof.NONE);
    }

    private static SurfaceResult surface(CheckResult result, String name) {
        return result.judgement()
                .surfaces()
                .get(result.scene().surface(name).orElseThrow().index());
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
