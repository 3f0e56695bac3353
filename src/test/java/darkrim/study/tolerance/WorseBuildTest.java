package darkrim.study.tolerance;

import static org.assertj.core.api.Assertions.assertThat;

import darkrim.study.MarginUnit;
import darkrim.study.PointResult;
import darkrim.study.RequirementFigure;
import darkrim.study.RequirementMargin;
import darkrim.study.tolerance.RequirementTolerance.WorseBuild;
import darkrim.verdict.Verdict;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;

/** A worst case is no better than any build within the tolerances. */
class WorseBuildTest {
    private static List<Build> builds(Verdict... verdicts) {
        List<Build> builds = new ArrayList<>();
        for (Verdict verdict : verdicts) {
            RequirementFigure figure = new RequirementFigure(
                    "dark",
                    verdict,
                    Double.NaN,
                    Double.NaN,
                    Double.NaN,
                    Double.NaN,
                    0,
                    Double.NaN,
                    false,
                    "",
                    new TreeMap<>());
            PointResult result = new PointResult(Map.of(), Optional.of(verdict), List.of(figure), List.of(), "", "");
            builds.add(new Build(builds.size() + 1, List.of(), result, List.of()));
        }
        return builds;
    }

    private static RequirementTolerance line(Verdict worst, Verdict... verdicts) {
        RequirementMargin margin = new RequirementMargin(
                "dark", Optional.of(worst), 0.1, 0, MarginUnit.MILLIMETRES, false, "screen/front", "", "");
        return new RequirementTolerance(
                EdgeLayout.of("edge: -2.6\nheight: 10", "")
                        .written()
                        .requirements()
                        .get(0),
                margin,
                List.of(),
                Optional.of(new WorstCase(List.of(), margin, 1, true, false, false, 1)),
                Optional.empty(),
                YieldInterval.of(List.of(verdicts), 0.999),
                WorseBuild.of(builds(verdicts), "dark", worst),
                Optional.empty(),
                Optional.empty());
    }

    @Test
    void aBuildThatIsNotDecidedLeavesAPassUndecided() {
        RequirementTolerance open = line(Verdict.PASS, Verdict.PASS, Verdict.UNDECIDED, Verdict.UNDECIDED);
        assertThat(open.worse()).hasValue(new WorseBuild(2, Verdict.UNDECIDED));
        assertThat(open.worstVerdict()).isEqualTo(Verdict.UNDECIDED);
        assertThat(open.brokenBy()).isEmpty();
    }

    @Test
    void aBuildThatFailsBreaksWhatTheWorstCaseDoesNot() {
        for (Verdict worst : List.of(Verdict.PASS, Verdict.UNDECIDED)) {
            RequirementTolerance broken = line(worst, Verdict.UNDECIDED, Verdict.PASS, Verdict.FAIL, Verdict.FAIL);
            assertThat(broken.worse()).hasValue(new WorseBuild(3, Verdict.FAIL));
            assertThat(broken.worstVerdict()).isEqualTo(Verdict.FAIL);
            assertThat(broken.brokenBy()).hasValue(3);
        }
    }

    @Test
    void buildsOfWhichAsMuchCanBeSaidAddNothing() {
        assertThat(line(Verdict.PASS, Verdict.PASS).worstVerdict()).isEqualTo(Verdict.PASS);
        assertThat(line(Verdict.UNDECIDED, Verdict.PASS, Verdict.UNDECIDED).worse())
                .isEmpty();
        assertThat(line(Verdict.FAIL, Verdict.UNDECIDED, Verdict.FAIL).worse()).isEmpty();
        assertThat(line(Verdict.FAIL, Verdict.PASS).worstVerdict()).isEqualTo(Verdict.FAIL);
    }
}
