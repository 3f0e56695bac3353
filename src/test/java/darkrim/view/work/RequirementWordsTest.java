package darkrim.view.work;

import static org.assertj.core.api.Assertions.assertThat;

import darkrim.diagnostic.Place;
import darkrim.layout.Requirement;
import darkrim.scene.Scene;
import darkrim.scene.Surface;
import darkrim.verdict.Evidence;
import darkrim.verdict.LightMargin;
import darkrim.verdict.Outcome;
import darkrim.verdict.RequirementResult;
import darkrim.verdict.Verdict;
import darkrim.view.parts.Stages;
import java.util.List;
import java.util.Optional;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Test;

/** Which surface the window names beside a margin: the one that has it. */
class RequirementWordsTest {
    private static final Scene SCENE = Stages.of("nightglow-b.yaml").scene();
    private static final Requirement DARK =
            new Requirement("dark", "**", new Requirement.NoDirect(), new Place("case.yaml", 1, 1));

    private static Surface surface(int index) {
        return SCENE.surfaces().get(index);
    }

    private static Outcome dark(int surface, LightMargin margin) {
        Evidence evidence = new Evidence.ProvedDark(1e-6, Optional.of(margin));
        return new Outcome(surface(surface), Outcome.WHOLE, Verdict.PASS, 0, evidence);
    }

    private static Outcome lit(int surface, double value, double margin) {
        Evidence evidence = new Evidence.WitnessRay(Vector3D.ZERO, Vector3D.of(0, 0, 1), Optional.of(exact(margin)));
        return new Outcome(surface(surface), Outcome.WHOLE, Verdict.FAIL, value, evidence);
    }

    private static LightMargin exact(double millimetres) {
        return new LightMargin(millimetres, false, "lid/edge, lid/top", Optional.empty());
    }

    private static Facts.RequirementFact fact(Outcome... outcomes) {
        RequirementResult result = RequirementResult.of(DARK, List.of(outcomes));
        return RequirementWords.fact(
                result, outcome -> outcome.surface().name(), RequirementWords.margin(result, SCENE, true));
    }

    @Test
    void whereAllAreDarkTheOneWithTheLeastMarginIsNamed() {
        Facts.RequirementFact fact = fact(dark(0, exact(0.5)), dark(1, exact(0.2)), dark(2, LightMargin.noLess(0.4)));
        assertThat(fact.margin()).isEqualTo("0.200 mm");
        assertThat(fact.worst()).isEqualTo(surface(1).name());
        assertThat(fact.value()).isEqualTo(surface(1).name());
        LightMargin unexplained = new LightMargin(0.1, false, "", Optional.empty());
        assertThat(fact(dark(0, exact(0.5)), dark(1, unexplained)).margin()).isEqualTo("at least 0.100 mm");
    }

    @Test
    void whereSomeAreLitTheBrightestIsNamedAndTheMarginSaysWhereItIs() {
        Facts.RequirementFact fact = fact(lit(0, 0.1, -0.4), dark(1, exact(0.2)), lit(2, 0.3, -0.1));
        assertThat(fact.worst()).isEqualTo(surface(2).name());
        assertThat(fact.margin()).isEqualTo("-0.400 mm at " + surface(0).name());
        assertThat(fact(lit(0, 0.3, -0.4), lit(2, 0.1, -0.1)).margin()).isEqualTo("-0.400 mm");
    }
}
