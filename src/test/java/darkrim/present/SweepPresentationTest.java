package darkrim.present;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import darkrim.study.LayoutFamily;
import darkrim.study.MarginScope;
import darkrim.study.PointSettings;
import darkrim.study.UnusableStudy;
import darkrim.study.journal.StudyRecord;
import darkrim.study.sweep.Design;
import darkrim.study.sweep.SweepResult;
import darkrim.study.sweep.SweepSettings;
import darkrim.study.sweep.Sweeps;
import darkrim.verdict.Verdict;
import darkrim.verdict.Watch;
import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.util.Locale;
import java.util.Optional;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import org.knowm.xchart.XYChart;
import org.knowm.xchart.XYSeries;

/** What a sweep looks like. */
class SweepPresentationTest {
    private static final LayoutFamily FAMILY = Sweeps.slit(
            "dark: {surfaces: screen/front, direct: none}",
            "back: {surfaces: screen/back, direct: none}",
            "mean: {surfaces: screen/front, direct: {at_most: 0.08}}");
    private static final LayoutFamily TWO = Sweeps.family("""
            title: A sheet
            dimensions: {wide: 4 mm, deep: 3 mm}
            beam:
              pupil: {shape: disc, diameter: 20, distance: 200}
            parts:
              screen: {kind: rectangle, width: wide, depth: deep}
            requirements:
              dark: {surfaces: screen/back, direct: none}
            """);

    private static SweepResult curve() throws Exception {
        return Sweeps.run(FAMILY, Sweeps.grid(FAMILY, "slit = -30, 1, 2, 4, 6"));
    }

    private static String svg(SweepResult result) {
        return new String(new SweepChart(result, "1.0").content("x.svg"), StandardCharsets.UTF_8);
    }

    @Test
    void theTextHasALineForEachPointAndSaysWhereSidesChange() throws Exception {
        String text = new SweepReport("1.0", Ink.PLAIN).of(curve());
        assertThat(text)
                .contains("Of 5 points, 0 hold every requirement, 4 fail at least one, 1 cannot be built.")
                .containsPattern("slit, mm +dark +back +mean +nearest to failing\n")
                .containsPattern("\n +-30 +- +- +- +-\n")
                .containsPattern("\n +1 +FAIL +PASS +PASS +-?\\d")
                .containsPattern("\n +6 +FAIL +PASS +FAIL +-?\\d")
                .containsPattern("slit -30 mm: slit.yaml:\\d+:\\d+: ")
                .containsPattern("\\(the layout\\) +impossible +-30 mm +\\S+ +1 mm\n")
                .containsPattern("\nmean +PASS +1 mm +UNDECIDED +2 mm\nmean +UNDECIDED +2 mm +FAIL +4 mm\n");
        assertThat(text.lines()).allMatch(line -> line.length() <= 100 && line.equals(line.stripTrailing()));
    }

    @Test
    void onePointIsCountedInTheSingularAndTheLeastSamplesAreCalledSo() throws Exception {
        LayoutFamily family = Sweeps.slit("mean: {surfaces: screen/front, direct: {at_most: 0.08}}");
        SweepSettings settings = new SweepSettings(
                Sweeps.grid(family, "slit = 1, 6"),
                Optional.empty(),
                PointSettings.values(SweepSettings.LEAST_BATCHES, MarginScope.NONE));
        String text =
                new SweepReport("1.0", Ink.PLAIN).of(Sweeps.run(family, settings, StudyRecord.none(), Watch.NONE, 2));
        assertThat(text)
                .contains("Of 2 points, 1 holds every requirement, 1 fails at least one.")
                .contains("seed 1, 16,384 samples for each sampled number, the least there are\n");
    }

    @Test
    void aRequirementThatFailsIsNamedBeforeTheMarginOfOneThatHolds() throws Exception {
        LayoutFamily family = Sweeps.slit(
                "mean: {surfaces: screen/front, direct: {at_most: 0.08}}",
                "back: {surfaces: screen/back, direct: none}");
        String text = new SweepReport("1.0", Ink.PLAIN).of(Sweeps.run(family, Sweeps.grid(family, "slit = 1, 6")));
        assertThat(text)
                .containsPattern("\n +1 +PASS +PASS +(>= )?\\d")
                .containsPattern("\n +6 +FAIL +PASS +fails: mean\n");
    }

    @Test
    void manyRequirementsAreNumberedSoThatALineFits() throws Exception {
        String[] many = new String[9];
        for (int i = 0; i < many.length; i++) {
            many[i] = "requirement-" + i + ": {surfaces: screen/back, direct: none}";
        }
        LayoutFamily family = Sweeps.slit(many);
        String text = new SweepReport("1.0", Ink.PLAIN).of(Sweeps.run(family, Sweeps.grid(family, "slit = 1, 2")));
        assertThat(text).contains("[1] requirement-0\n").contains("[9] requirement-8\n");
        assertThat(text.lines()).allMatch(line -> line.length() <= 100);
    }

    @Test
    void aCurveNamesWhatItShowsWithUnitsTitleAndRevision() throws Exception {
        assertThat(svg(curve()))
                .contains("Slit between two flags, revision C")
                .contains("Circle: PASS. Cross: FAIL.")
                .contains("The same at every point, not drawn: back PASS.")
                .contains("Cannot be built, not drawn: slit, mm = -30.");
        // The library draws its letters as outlines.
        CurvePanel panel = new CurvePanel("mean: margin", "slit, mm", "margin, mm", true);
        panel.add(1, 0.2, 0.01, 0, Verdict.PASS);
        panel.add(2, -0.1, 0.01, 0, Verdict.FAIL);
        XYChart chart = panel.chart(500, 300);
        assertThat(chart.getTitle()).isEqualTo("mean: margin");
        assertThat(chart.getXAxisTitle()).isEqualTo("slit, mm");
        assertThat(chart.getYAxisTitle()).isEqualTo("margin, mm");
        assertThat(chart.getSeriesCollection())
                .extracting(XYSeries::getName)
                .containsExactly("pass region", "two standard errors", "limit", "value", "PASS", "FAIL");
        // Two standard errors either way of 0.2 and -0.1, there and back.
        assertThat(chart.getSeries("two standard errors").getYData())
                .containsExactly(new double[] {0.22, -0.08, -0.12, 0.18}, within(1e-15));
    }

    @Test
    void smallValuesThatHardlyChangeAreDrawnLargerUnderTheirOwnLabels() {
        CurvePanel panel = new CurvePanel("mean: margin", "slit, mm", "margin, 1", true);
        panel.add(1, 8.8348e-5, 1e-9, 0, Verdict.PASS);
        panel.add(2, 8.8349e-5, 1e-9, 0, Verdict.PASS);
        XYChart chart = panel.chart(500, 300);
        // From 8.8e-5 and a tenth of it on either side: 1e-4 at most, so that it is drawn 1e4 times as large.
        assertThat(chart.getSeries("value").getYData()).containsExactly(new double[] {0.88348, 0.88349}, within(1e-12));
        assertThat(chart.getStyler().getYAxisTickLabelsFormattingFunction().apply(0.8))
                .isEqualTo("8e-5");
    }

    @Test
    void aGridOfTwoIsAMapWithALetterForEachPoint() throws Exception {
        SweepResult result = Sweeps.run(TWO, Sweeps.grid(TWO, "wide = 1, 2", "deep = -1, 2, 3"));
        String map = svg(result);
        assertThat(map).contains("all requirements").contains(">wide, mm<").contains(">deep, mm<");
        // Two panels (all, dark) of two points by three; deep = -1 cannot be built.
        assertThat(map.split(">P<", -1)).hasSize(1 + 2 * 4);
        assertThat(map.split(">-<", -1)).hasSize(1 + 2 * 2);
    }

    @Test
    void theSameSweepGivesTheSameBytes() throws Exception {
        SweepResult result = curve();
        assertThat(svg(result)).isEqualTo(svg(result));
        byte[] png = new SweepChart(result, "1.0").content("x.PNG");
        assertThat(png).isEqualTo(new SweepChart(result, "1.0").content("x.png"));
        assertThat(ImageIO.read(new ByteArrayInputStream(png)).getWidth()).isGreaterThan(800);
    }

    @Test
    void whereNothingChangesOneSentenceSaysSo() throws Exception {
        LayoutFamily same = Sweeps.family("""
                title: A sheet
                dimensions: {idle: 4 mm}
                beam:
                  pupil: {shape: disc, diameter: 20, distance: 200}
                parts:
                  screen: {kind: rectangle, width: 2, depth: 2}
                requirements:
                  dark: {surfaces: screen/back, direct: none}
                """);
        Design design = Sweeps.grid(same, "idle = 1, 2");
        SweepResult unmeasured = Sweeps.run(
                same,
                new SweepSettings(design, Optional.empty(), PointSettings.values(2, MarginScope.NONE)),
                StudyRecord.none(),
                Watch.NONE,
                1);
        assertThat(svg(unmeasured))
                .contains(
                        "There is no curve to draw: no verdict and no value changed between these points; margins were not measured.");
        assertThat(new SweepReport("1.0", Ink.PLAIN).of(unmeasured))
                .contains(
                        "CAUTION: no result changed with 'idle' between these points; margins were not measured (--margins\nnone).");
        assertThat(svg(Sweeps.run(same, design))).contains("between these points, nor did any margin.");
    }

    @Test
    void whatIsLeftOfALimitIsCalledSo() throws Exception {
        LayoutFamily family = Sweeps.slit("mean: {surfaces: screen/front, direct: {at_most: 0.08}}");
        SweepResult result = Sweeps.run(family, Sweeps.grid(family, "slit = 1, 2"));
        var figure = result.points().get(0).lines().get(0).figure();
        String left = String.format(Locale.ROOT, "%.1f %% of the limit left", 100 * (1 - figure.value() / 0.08));
        assertThat(new SweepReport("1.0", Ink.PLAIN).of(result)).contains(left);
    }

    @Test
    void aSingleOrAnEmptyCurveIsDrawnToo() throws Exception {
        assertThat(svg(Sweeps.run(FAMILY, Sweeps.grid(FAMILY, "slit = 4")))).contains("not drawn: dark FAIL");
        assertThat(svg(Sweeps.run(FAMILY, Sweeps.grid(FAMILY, "slit = -30")))).contains("Cannot be built");
    }

    @Test
    void whatCannotBeDrawnIsSaid() throws Exception {
        Design two = Sweeps.design(TWO, Optional.of(4), Optional.empty(), "wide = 1 to 2", "deep = 1 to 2");
        assertThatThrownBy(() -> SweepChart.check(two, "x.svg"))
                .isInstanceOf(UnusableStudy.class)
                .hasMessageStartingWith(
                        "--chart draws one dimension or a grid of two, not 2 dimensions of spread points");
        assertThatThrownBy(() -> SweepChart.check(Sweeps.grid(TWO, "wide = 1, 2"), "x.jpg"))
                .hasMessage("--chart x.jpg: expected a name that ends in .svg or .png");
    }
}
