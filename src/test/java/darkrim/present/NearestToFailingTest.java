package darkrim.present;

import static org.assertj.core.api.Assertions.assertThat;

import darkrim.diagnostic.Place;
import darkrim.layout.Requirement;
import darkrim.layout.Requirement.LightClass;
import darkrim.study.RequirementFigure;
import darkrim.study.sweep.RequirementLine;
import darkrim.study.sweep.SweepPoint;
import darkrim.verdict.Verdict;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;

/** The last column of a sweep. */
class NearestToFailingTest {
    private static final List<Requirement> REQUIREMENTS = List.of(
            new Requirement("dark", "a", new Requirement.NoDirect(), Place.IN_CODE),
            new Requirement("seen", "b", new Requirement.PupilSeen(0.6), Place.IN_CODE),
            new Requirement(
                    "clean",
                    "c",
                    new Requirement.AtMost(LightClass.ONCE_REFLECTED, 0.01, Requirement.Per.SURFACE),
                    Place.IN_CODE));

    private static RequirementLine line(String name, Verdict verdict, double margin, boolean bound) {
        double limit = name.equals("clean") ? 0.01 : 0;
        RequirementFigure figure =
                new RequirementFigure(name, verdict, 0, 0, 0, 0, limit, margin, bound, "a", new TreeMap<>());
        return new RequirementLine(figure, Double.NaN, Double.NaN, false);
    }

    private static RequirementLine line(String name, Verdict verdict, double margin) {
        return line(name, verdict, margin, false);
    }

    private static String nearest(RequirementLine... lines) {
        SweepPoint point = new SweepPoint(
                1, new TreeMap<>(), Optional.empty(), Optional.of(Verdict.PASS), Arrays.asList(lines), "", "");
        return new NearestToFailing(REQUIREMENTS, true).of(point);
    }

    @Test
    void whatFailsComesBeforeAPupilOfWhichLessThanTheWholeIsAskedFor() {
        assertThat(nearest(line("dark", Verdict.FAIL, -0.4), line("seen", Verdict.PASS, -1)))
                .isEqualTo("-0.400 mm dark");
        assertThat(nearest(line("dark", Verdict.PASS, 0.4), line("seen", Verdict.PASS, -1)))
                .isEqualTo("0.400 mm dark");
        assertThat(nearest(line("seen", Verdict.PASS, -1)))
                .isEqualTo("1.000 mm short of the whole pupil, allowed seen");
        assertThat(nearest(line("clean", Verdict.FAIL, -0.001), line("seen", Verdict.PASS, -1)))
                .isEqualTo("fails: clean");
    }

    @Test
    void whatIsUndecidedComesBeforeWhatHolds() {
        assertThat(nearest(line("dark", Verdict.PASS, 0.1), line("clean", Verdict.UNDECIDED, 0.002)))
                .isEqualTo("20.0 % of the limit left clean");
        assertThat(nearest(line("dark", Verdict.UNDECIDED, Double.NaN), line("clean", Verdict.UNDECIDED, 0.002)))
                .isEqualTo("undecided: dark");
        assertThat(nearest(line("dark", Verdict.PASS, 0.1), line("clean", Verdict.PASS, 0.002)))
                .isEqualTo("0.100 mm dark");
    }

    @Test
    void aMarginIsNeverToldLargerThanItIs() {
        assertThat(nearest(line("dark", Verdict.FAIL, -0.0003))).isEqualTo("-0.001 mm dark");
        assertThat(nearest(line("dark", Verdict.PASS, 0.2796, true))).isEqualTo(">= 0.279 mm dark");
        assertThat(nearest(line("dark", Verdict.FAIL, -20.0004, true))).isEqualTo("<= -20.000 mm dark");
        assertThat(nearest(line("seen", Verdict.PASS, -1.0002)))
                .isEqualTo("1.001 mm short of the whole pupil, allowed seen");
    }
}
