package darkrim.present;

import static org.assertj.core.api.Assertions.assertThat;

import darkrim.diagnostic.Finding;
import darkrim.diagnostic.Findings;
import darkrim.diagnostic.Place;
import darkrim.layout.Layout;
import darkrim.study.Check;
import darkrim.study.CheckResult;
import darkrim.study.Effort;
import darkrim.verdict.StoppingWatch;
import darkrim.verdict.Verdict;
import darkrim.verdict.Watch;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** Reports of a small layout: a screen that is lit through the slit between two flags. */
class TextReportTest {
    private static final CheckResult MIXED = Results.slit(
            "backs-dark: {surfaces: '{left,right}/back', direct: none}",
            "screen-dark: {surfaces: 'screen', direct: none}",
            "screen-dim: {surfaces: 'screen/front', direct: {at_most: 0.9, per: surface}}",
            "backs-dim: {surfaces: '{left,right}/back', once_reflected: {at_most: 1e-6, per: surface}}");

    @Test
    void theVerdictStandsInASentenceBelowTheTitle() {
        List<String> lines = plain(MIXED).lines().toList();
        assertThat(lines.get(0)).isEqualTo("Slit between two flags, revision C");
        assertThat(lines.get(1)).isEqualTo("FAIL: 2 of 4 requirements do not hold: screen-dark, backs-dim.");
    }

    @Test
    void aReportNamesFileVersionAndSeed() {
        assertThat(plain(MIXED))
                .contains(
                        "slit.yaml, SHA-256 " + MIXED.layout().source().sha256().substring(0, 16))
                .contains("Darkrim 1.2.3, seed 1, confidence 99.9 %");
    }

    @Test
    void aFailureIsShownWithARayAndAPassWithItsProof() {
        String text = plain(MIXED);
        assertThat(text).contains("screen-dark: 2 surfaces should get no direct light; 1 fails:");
        assertThat(text).containsPattern("  screen/front +0\\.\\d+ +\\(.*, 200\\) +\\(.*, 0\\) +20\\d\\.?\\d*");
        assertThat(text).contains("backs-dark: both surfaces proved dark; ").contains("Margins of direct light (mm)");
    }

    @Test
    void lightPathsNameTheSurfaceAndThePartOfItsFinish() {
        // The pupil lights the fronts of the flags from above; by the screen they cannot be seen from the pupil's side.
        assertThat(plain(MIXED)).containsPattern("left/back +screen/front +diffuse +2 +100\\.0 %");
    }

    @Test
    void aReportOfStoppedWorkSaysSoEvenWhereAllIsDecided() throws Exception {
        // While margins are looked for: all is decided by then.
        Watch watch = StoppingWatch.at("measuring margins");
        Layout layout = Results.slit("backs-dark: {surfaces: '{left,right}/back', direct: none}")
                .layout();
        CheckResult result =
                Check.of(layout, new Findings(), new Effort(1, Optional.empty(), Optional.of(1_000_000L)), watch);
        assertThat(result.stopped()).isTrue();
        assertThat(result.judgement().verdict()).isEqualTo(Verdict.PASS);
        assertThat(plain(result).replaceAll("\\s+", " ")).contains("CAUTION: the check was stopped before its end.");
        assertThat(plain(MIXED)).doesNotContain("stopped before its end");
    }

    @Test
    void cautionsStandInEveryReport() {
        String words = plain(MIXED).replaceAll("\\s+", " ");
        assertThat(words).contains(Cautions.NOT_MODELLED);
        assertThat(words).contains(Cautions.CAUTIONS);
    }

    @Test
    void aReportIsPlainAsciiWithinTheWidthOfAPage() {
        for (boolean everything : new boolean[] {false, true}) {
            String text = new TextReport("1.2.3", Ink.PLAIN, everything).of(MIXED);
            assertThat(text).matches("[\\n\\x20-\\x7e]*");
            assertThat(text.lines()).allMatch(line -> line.length() <= Page.WIDTH);
            assertThat(text.lines()).noneMatch(line -> line.endsWith(" "));
        }
    }

    @Test
    void colourAddsNothingThatWordsDoNotSay() {
        String coloured = new TextReport("1.2.3", Ink.COLOUR, false).of(MIXED);
        assertThat(coloured).contains("\u001b[1;31mFAIL\u001b[0m").contains("\u001b[32mPASS\u001b[0m");
        assertThat(coloured.replaceAll("\u001b\\[[0-9;]*m", "")).isEqualTo(plain(MIXED));
    }

    @Test
    void allRequirementsHolding() {
        CheckResult result = Results.slit("backs-dark: {surfaces: '{left,right}/back', direct: none}");
        assertThat(plain(result)).contains("\nPASS: the requirement holds.\n");
    }

    @Test
    void whatTheBudgetLeavesOpenIsUndecidedAndSaysHowToGoOn() {
        double mean = MIXED.judgement().surfaces().get(0).direct().irradiance().mean();
        String requirement = "screen-dim: {surfaces: 'screen/front', direct: {at_most: " + mean + ", per: surface}}";
        // The budget ends after the first look, which is the one that gave the mean.
        CheckResult result = Results.of(Results.yaml("", requirement), 200_000, 2);
        assertThat(result.judgement().verdict()).isEqualTo(Verdict.UNDECIDED);
        assertThat(plain(result).replaceAll("\\s+", " "))
                .contains("UNDECIDED: the requirement is not decided within 200,000 samples (--samples allows more): "
                        + "screen-dim. None fails.")
                .contains("1 surface should get at most")
                .containsPattern("screen/front: between 0\\.\\d+ and 0\\.\\d+ at 99.9 %, [0-9,]+ samples");
    }

    @Test
    void anOpeningThatIsNotFeasibleIsNamedBelowThePass() throws IOException {
        String yaml = Files.readString(Path.of("src/test/resources/layouts/small.yaml"));
        String caution = "PASS: the requirement holds. CAUTION: the feasibility of lid/opening fails ";
        assertThat(oneLine(Results.of(yaml + "placement_error: 0.2", 1000, 2)))
                .contains(caution + "with the placement error of 0.2 mm; the verdict is for the parts exactly where "
                        + "they are drawn.");
        assertThat(oneLine(Results.of(yaml.replace("size: 10.6", "size: 10.2"), 1000, 2)))
                .contains(caution + "even without placement error; the verdict covers only what the requirements ask.");
        assertThat(oneLine(Results.of(yaml.replace("size: 10.6", "size: 10.4"), 1000, 2)))
                .contains("PASS: the requirement holds. file");
    }

    @Test
    void whatTheSamplesDidNotReachIsNotCalledUnlit() {
        CheckResult few =
                Results.of(Results.yaml("", "backs-dark: {surfaces: '{left,right}/back', direct: none}"), 1000, 2);
        assertThat(oneLine(few))
                .containsPattern("\\. 3 further surfaces were not measured in full, since the"
                        + " samples allowed do not reach for a look at every surface \\(--samples allows more\\)\\.");
        assertThat(oneLine(MIXED)).doesNotContain("not measured");
    }

    /** A floor beside a wall: limits that are the true value of the one requirement, and the mean of the same samples of the other. */
    @Test
    void moreSamplesAreAdvisedOnlyWhereTheyCanHelp() {
        String yaml = """
                title: Floor beside a wall
                beam: {pupil: {shape: disc, diameter: 40, distance: 100}}
                parts:
                  floor: {kind: rectangle, width: 10, depth: 10}
                  wall: {kind: block, width: 0.5, depth: 3, height: 3, at: [5.35, 0, 0]}
                requirements:
                  seen: {surfaces: "floor/front", pupil_seen: {at_least: SHARE}}
                  dim: {surfaces: "floor/front", direct: {at_most: MEAN}}
                """;
        // From x = 5 the top of the wall at x = 5.1, z = 3 is seen at 5 + 0.1 * 100 / 3 on the pupil: beyond lies a
        // circular segment.
        double q = (5 + 10 / 3.0) / 20;
        double share = 1 - (Math.acos(q) - q * Math.sqrt(1 - q * q)) / Math.PI - 1e-9;
        CheckResult first = Results.of(yaml.replace("SHARE", "0.5").replace("MEAN", "0.5"), 20_000, 2);
        double mean = first.judgement().surfaces().get(0).direct().irradiance().mean();
        CheckResult open = Results.of(yaml.replace("SHARE", "" + share).replace("MEAN", "" + mean), 20_000, 2);
        assertThat(oneLine(open))
                .contains("UNDECIDED: 2 of 2 requirements not decided by geometry (more samples would not help): seen; "
                        + "within 20,000 samples (--samples allows more): dim. None fails.");
    }

    @Test
    void aSingleSampleIsCountedInTheSingular() {
        String dim = Results.yaml("", "dim: {surfaces: 'screen/front', direct: {at_most: 0.9}}");
        assertThat(oneLine(Results.of(dim, 1, 2)))
                .contains("UNDECIDED: the requirement is not decided within 1 sample (--samples allows more): dim.");
    }

    /** Two is more than the whole pupil can give any cell: so it holds without a sample, which must not read as if nothing were known. */
    @Test
    void aLimitThatNoSampleCanBreakIsSaidToHoldWhateverTheySay() {
        String dim = Results.yaml("", "dim: {surfaces: 'screen/front', direct: {at_most: 2, per: cell}}");
        CheckResult result = Results.of(dim, 3, 2);
        assertThat(result.judgement().verdict()).isEqualTo(Verdict.PASS);
        assertThat(oneLine(result))
                .containsPattern("never more than 1\\.0\\d, whatever the samples say")
                .containsPattern("dim PASS direct <= 2 a cell at most 1\\.0\\d screen")
                .doesNotContain("not measured:");
        // Samples say more than that, once there are any.
        assertThat(oneLine(Results.of(dim, Results.FEW_SAMPLES, 2))).doesNotContain("whatever the samples say");
    }

    @Test
    void aBudgetTooSmallForAnySampleIsNoEvidence() {
        CheckResult result =
                Results.of(Results.yaml("", "dim: {surfaces: '*/back', once_reflected: {at_most: 1e-6}}"), 1000, 1);
        assertThat(plain(result)).contains("UNDECIDED").contains("not measured").doesNotContain("PASS");
    }

    @Test
    void withARadianceIrradianceIsAlsoGivenInWattsPerSquareMetre() {
        String yaml = Results.yaml("radiance: 2.0", "backs-dark: {surfaces: '{left,right}/back', direct: none}");
        CheckResult result = Results.of(yaml, Results.FEW_SAMPLES, 2);
        // A disc of radius 10 at 200 seen face on from its axis: E/L = pi sin^2 = pi 10^2 / (10^2 + 200^2) (Lambert).
        double unit = 2 * Math.PI * 100 / 40100;
        assertThat(plain(result)).contains("relative irradiance 1 is " + Figures.three(unit) + " W/m2");
        double front =
                result.judgement().surfaces().get(0).direct().irradiance().mean();
        assertThat(plain(result)).containsPattern("screen/front .* " + Figures.three(front * unit));
        assertThat(plain(MIXED)).doesNotContain("W/m2");
    }

    @Test
    void longListsAreCutWithACountAndShownWholeOnRequest() {
        String yaml = Results.yaml("", "lit: {surfaces: 'screen', direct: none}")
                .replace("right:  {kind: rectangle", "right: {repeat: {count: [1, 12], step: [0, 25]}, kind: rectangle")
                .replace("'screen'", "'right*'");
        CheckResult result = Results.of(yaml, 3_000_000, 2);
        String brief = plain(result);
        String whole = new TextReport("1.2.3", Ink.PLAIN, true).of(result);
        assertThat(brief)
                .contains("24 surfaces should get no direct light; 12 fail:")
                .contains("and 6 more");
        assertThat(whole).doesNotContain(" more (all");
        for (int i = 1; i <= 12; i++) {
            assertThat(whole).contains("  right[1," + i + "]/front");
        }
    }

    @Test
    void whatSeesLeastOfThePupilStandsFirstAndIsNotCut() {
        // A flag hides more of the pupil from each sheet than from the one before.
        CheckResult result = Results.of("""
                        title: Nine sheets under a flag
                        beam: {pupil: {shape: disc, diameter: 40, distance: 200}}
                        parts:
                          s: {kind: rectangle, width: 2, depth: 2, at: [-8, 0, 0], repeat: {count: [9, 1], step: [4, 0]}}
                          flag: {kind: rectangle, width: 40, depth: 40, at: [20, 0, 100]}
                        requirements:
                          full: {surfaces: "s*/front", pupil_seen: {at_least: 0.999}}
                        """, Results.FEW_SAMPLES, 2);
        String report = plain(result);
        String evidence = report.substring(report.indexOf("Evidence"), report.indexOf("Surfaces that get light"));
        assertThat(evidence)
                .containsSubsequence(
                        "s[9,1]/front", "s[8,1]/front", "s[7,1]/front", "s[6,1]/front", "s[5,1]/front", "s[4,1]/front");
        assertThat(evidence).contains("and 2 more").doesNotContain("s[2,1]/front");
    }

    @Test
    void whatReflectsNothingIsNamedWhereReflectedLightIsJudged() {
        String words = "Taken to reflect nothing (finish absorber, or none stated): ";
        String layout = Results.yaml("", "clean: {surfaces: 'screen/front', once_reflected: {at_most: 0.1}}");
        String bare = layout.replace(", finish: shiny}", "}");
        assertThat(oneLine(Results.of(bare, 20_000, 2))).contains(words + "right (2 surfaces), left (2 surfaces).");
        assertThat(oneLine(Results.of(layout, 20_000, 2))).doesNotContain("Taken to reflect nothing");
        assertThat(oneLine(Results.of(bare.replace("once_reflected", "direct"), 20_000, 2)))
                .doesNotContain("Taken to reflect nothing");
    }

    private static String oneLine(CheckResult result) {
        return plain(result).replaceAll("\\s+", " ");
    }

    @Test
    void textOfTheLayoutCannotActOnTheTerminal() {
        // The reader of layout files refuses such text; layouts can also be built in code.
        Layout layout = MIXED.layout();
        Layout hostile = new Layout(
                "\u001b]0;owned\u0007\u001b[2JSlit\u009b31m",
                "\r\n",
                new Layout.Source("a\u001bb", ""),
                layout.dimensions(),
                layout.finishes(),
                layout.finishRules(),
                layout.beam(),
                layout.sources(),
                layout.parts(),
                layout.requirements(),
                layout.placementError(),
                layout.sampling(),
                layout.maps());
        CheckResult result = new CheckResult(
                hostile,
                MIXED.effort(),
                MIXED.scene(),
                MIXED.feasibility(),
                MIXED.chordError(),
                MIXED.judgement(),
                MIXED.margins(),
                List.of(Finding.warning("odd", Place.IN_CODE, "bell \u0007")),
                MIXED.timing());
        assertThat(plain(result)).matches("[\\n\\x20-\\x7e]*").startsWith("?]0;owned??[2JSlit?31m, revision ??\n");
    }

    private static String plain(CheckResult result) {
        return new TextReport("1.2.3", Ink.PLAIN, false).of(result);
    }
}
