package darkrim.study.tolerance;

import static org.assertj.core.api.Assertions.assertThat;

import darkrim.layout.Distribution;
import darkrim.layout.Quantity;
import darkrim.layout.Tolerance;
import darkrim.study.LayoutFamily;
import darkrim.study.MarginUnit;
import darkrim.study.RequirementMargin;
import darkrim.study.journal.StudyRecord;
import darkrim.verdict.Verdict;
import darkrim.verdict.Watch;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import java.util.function.ToDoubleFunction;
import org.junit.jupiter.api.Test;

/** Worst cases where the margin is the same as drawn and at both ends of a tolerance, and less at a corner. */
class FlatMarginTest {
    private static List<Contributor> contributors(int count) {
        List<Contributor> all = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            Tolerance tolerance = Tolerance.within(1, Distribution.UNIFORM, Tolerance.SIGMAS);
            all.add(new Contributor("c" + i, Quantity.LENGTH, tolerance, Contributor.Acts.DIMENSION, "c" + i, 0));
        }
        return all;
    }

    private static RequirementMargin margin(double value) {
        return new RequirementMargin(
                "dark",
                Optional.of(value >= 0 ? Verdict.PASS : Verdict.FAIL),
                value,
                0,
                MarginUnit.MILLIMETRES,
                false,
                "screen/front",
                "edge",
                "");
    }

    private static WorstCase found(int count, ToDoubleFunction<List<Double>> margin) {
        List<Contributor> contributors = contributors(count);
        Double[] place = new Double[count];
        Arrays.fill(place, 0.0);
        RequirementMargin drawn = margin(margin.applyAsDouble(List.of(place)));
        List<Slope> slopes = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            place[i] = -1.0;
            RequirementMargin below = margin(margin.applyAsDouble(List.of(place)));
            place[i] = 1.0;
            RequirementMargin above = margin(margin.applyAsDouble(List.of(place)));
            place[i] = 0.0;
            slopes.add(Slope.of(contributors.get(i), drawn, below, above));
        }
        WorstCaseSearch search = new WorstCaseSearch(contributors, drawn, slopes);
        while (!search.next().isEmpty()) {
            search.found(search.next().stream()
                    .map(at -> margin(margin.applyAsDouble(at)))
                    .toList());
        }
        return search.result();
    }

    private static double sum(double[] weights, List<Double> at, int from, int to) {
        double sum = 0;
        for (int i = from; i < to; i++) {
            sum += weights[i] * at.get(i);
        }
        return sum;
    }

    private static double most(double[] weights, int from, int to) {
        double sum = 0;
        for (int i = from; i < to; i++) {
            sum += Math.abs(weights[i]);
        }
        return sum;
    }

    private static double[] weights(SplittableRandom random, int count) {
        return random.doubles(count, 0.2, 1)
                .map(weight -> random.nextBoolean() ? weight : -weight)
                .toArray();
    }

    /** The limit itself as long as it is dark: light falls only when nearly all contributors are at their worse end. */
    @Test
    void aCornerThatAloneFailsIsFoundWhereTheMarginIsFlat() {
        SplittableRandom random = new SplittableRandom(5);
        for (int count : new int[] {5, 6, 7, 12, 40}) {
            for (int trial = 0; trial < 20; trial++) {
                double[] weights = weights(random, count);
                double room = 0.98 * most(weights, 0, count);
                WorstCase worst = found(count, at -> 0.1 + Math.min(0, room - sum(weights, at, 0, count) - 0.1));
                assertThat(worst.margin().verdict()).as("%d, %d", count, trial).hasValue(Verdict.FAIL);
            }
        }
    }

    /** A second edge that says nothing as drawn, and has contributors of its own. */
    @Test
    void anEdgeThatAnotherHidesIsFound() {
        SplittableRandom random = new SplittableRandom(6);
        for (int trial = 0; trial < 50; trial++) {
            int count = 11;
            double[] weights = weights(random, count);
            double near = 1.1 * most(weights, 0, 4);
            double far = 0.99 * most(weights, 4, count);
            WorstCase worst =
                    found(count, at -> Math.min(near - sum(weights, at, 0, 4), far - sum(weights, at, 4, count)));
            assertThat(worst.margin().margin()).as("%d", trial).isNegative();
        }
    }

    @Test
    void whatGainsMuchOrIsWorstAsDrawnDoesNotHideWhatLoses() {
        WorstCase worst = found(
                6,
                at -> 0.1
                        + 20 * Math.max(0, at.get(0))
                        + 0.5 * Math.abs(at.get(1))
                        - 0.03 * (Math.max(0, at.get(2)) - Math.min(0, at.get(3)) + Math.max(0, at.get(4)))
                        - 0.03 * Math.max(0, at.get(5)));
        assertThat(worst.margin().margin()).isLessThan(-0.0199);
    }

    @Test
    void aHundredAndFiftyContributorsAreFollowedIntoTheInside() {
        // Least at 1/4 of each tolerance, which no corner shows.
        WorstCase worst = found(
                150,
                at -> 2 + at.stream().mapToDouble(x -> (x - 0.25) * (x - 0.25)).sum() / 10 - 2.05);
        assertThat(worst.cutShort()).isFalse();
        assertThat(worst.margin().margin()).isNegative();
    }

    @Test
    void aSearchCutShortTellsNoPass() {
        WorstCase cut = new WorstCase(List.of(), margin(1), 1, false, false, true, 9);
        assertThat(cut.verdict()).isEqualTo(Verdict.UNDECIDED);
        assertThat(new WorstCase(List.of(), margin(-1), 1, false, false, true, 9).verdict())
                .isEqualTo(Verdict.FAIL);
        // A spiral of small gains without an end.
        int[] looks = {0};
        WorstCase worst = found(7, at -> 1e9 - Math.abs(at.get(0)) - ++looks[0]);
        assertThat(worst.cutShort()).isTrue();
        assertThat(worst.verdict()).isEqualTo(Verdict.UNDECIDED);
    }

    @Test
    void whereTheMarginIsTheSameEverywhereThatIsSaid() {
        WorstCase few = found(6, at -> 1);
        assertThat(few.everyCorner()).isTrue();
        assertThat(few.corners()).isEqualTo(64);
        WorstCase many = found(9, at -> 1);
        assertThat(many.alike()).isTrue();
        assertThat(many.everyCorner()).isFalse();
        assertThat(many.corners()).isEqualTo(32);
    }

    @Test
    void anyThreeContributorsMeetInAllEightWays() {
        for (int count : new int[] {5, 8, 9, 16, 33}) {
            List<double[]> corners = CornerDesign.mirrored(count);
            for (int a = 0; a < count; a++) {
                for (int b = 0; b < a; b++) {
                    for (int c = 0; c < b; c++) {
                        int[] met = new int[8];
                        for (double[] at : corners) {
                            met[(at[a] > 0 ? 1 : 0) + (at[b] > 0 ? 2 : 0) + (at[c] > 0 ? 4 : 0)]++;
                        }
                        assertThat(met).containsOnly(corners.size() / 8);
                    }
                }
            }
        }
    }

    private static LayoutFamily post(String post, String requirement) throws Exception {
        String text = """
                title: Post beside an opening
                dimensions:
                  side: {value: 34.6 mm, tolerance: 0.48}
                  height: {value: 40 mm, tolerance: 1.03}
                  pin: {value: 29.825 mm, tolerance: 0.3}
                beam:
                  pupil: {shape: rectangle, width: 40, height: 40, distance: 200}
                parts:
                  plate: {kind: plate, size: 400, height: height - 0.001, thickness: 0.001, openings: {shape: rectangle, size: side}, placement_tolerance: {shift: [0.24, 0, 0]}}
                  post: {%s, height: 4, at: [pin, 0, 0], placement_tolerance: {shift: [0.3, 0, 0]}}
                requirements:
                  post-dark: {surfaces: %s}
                """.formatted(post, requirement);
        return LayoutFamily.of("post.yaml", text.getBytes(StandardCharsets.UTF_8));
    }

    /** The whole opening seen from the post's edge: with all five at their worse end, light falls on the post. */
    @Test
    void aRoundPostAndALimitOnLightFailAtTheirCorner() throws Exception {
        ToleranceSettings settings = new ToleranceSettings(5, Optional.empty(), false, Optional.of(1L), 256);
        for (LayoutFamily family : List.of(
                post("kind: tube, inner_diameter: 3, outer_diameter: 4", "post/outside, direct: none"),
                post("kind: block, width: 4, depth: 4", "post/-x, direct: {at_most: 1e-4}"))) {
            ToleranceResult result = Tolerances.run(family, settings, StudyRecord.none(), Watch.NONE, 2);
            WorstCase worst = result.requirements().get(0).worst().orElseThrow();
            assertThat(worst.margin().verdict()).hasValue(Verdict.FAIL);
            assertThat(worst.deviations()).containsExactly(0.48, 1.03, -0.3, 0.24, -0.3);
            assertThat(result.verdict()).isEqualTo(Verdict.FAIL);
        }
    }
}
