package darkrim.study.tolerance;

import static org.assertj.core.api.Assertions.assertThat;

import darkrim.study.MarginUnit;
import darkrim.study.RequirementMargin;
import darkrim.verdict.Verdict;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** What is told of the places of one edge that a search for the worst case has seen. */
class WorstCaseSearchTest {
    private static final List<Contributor> ONE = Contributor.of(
            EdgeLayout.of("edge: {value: -2.6, tolerance: 0.2}\nheight: 10", "").written());

    private static RequirementMargin margin(double value, Verdict verdict) {
        return new RequirementMargin(
                "few",
                Optional.of(verdict),
                value,
                1e-7,
                MarginUnit.RELATIVE_IRRADIANCE,
                false,
                "screen/front",
                "",
                "");
    }

    private static WorstCase found(RequirementMargin drawn, RequirementMargin atMinus, RequirementMargin atPlus) {
        WorstCaseSearch search = new WorstCaseSearch(ONE, drawn, List.of(Slope.of(ONE.get(0), drawn, atMinus, atPlus)));
        while (!search.next().isEmpty()) {
            search.found(search.next().stream().map(place -> drawn).toList());
        }
        return search.result();
    }

    /** A sampled limit: what is farther from it can be the less sure of the two, and an open question is worse than a pass. */
    @Test
    void noPassIsToldWherePlacesWithMoreMarginDoNotPass() {
        RequirementMargin drawn = margin(5e-6, Verdict.PASS);
        RequirementMargin least = margin(1e-6, Verdict.PASS);
        for (Verdict other : List.of(Verdict.UNDECIDED, Verdict.FAIL)) {
            RequirementMargin unsure = margin(2e-6, other);
            assertThat(found(drawn, least, unsure).margin()).isEqualTo(unsure);
            assertThat(found(drawn, least, unsure).deviations()).containsExactly(0.2);
            assertThat(found(drawn, unsure, least).deviations()).containsExactly(-0.2);
            assertThat(found(margin(3e-6, other), least, least).deviations()).containsExactly(0.0);
        }
        RequirementMargin unsure = margin(2e-6, Verdict.UNDECIDED);
        RequirementMargin failing = margin(4e-6, Verdict.FAIL);
        assertThat(found(drawn, unsure, failing).margin()).isEqualTo(failing);
    }

    @Test
    void ofPlacesWithOneVerdictThatWithTheLeastMarginIsTold() {
        for (Verdict verdict : Verdict.values()) {
            RequirementMargin least = margin(1e-6, verdict);
            WorstCase worst = found(margin(5e-6, verdict), margin(2e-6, verdict), least);
            assertThat(worst.margin()).isEqualTo(least);
            assertThat(worst.deviations()).containsExactly(0.2);
        }
    }
}
