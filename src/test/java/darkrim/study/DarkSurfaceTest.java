package darkrim.study;

import static org.assertj.core.api.Assertions.assertThat;

import darkrim.present.Results;
import darkrim.verdict.Evidence;
import darkrim.verdict.RequirementResult;
import darkrim.verdict.Verdict;
import org.junit.jupiter.api.Test;

/** The backs of two flags are dark, yet they face a screen that is lit through the slit between them. */
class DarkSurfaceTest {
    private static final String DARK = "backs-dark: {surfaces: '{left,right}/back', direct: none}";

    @Test
    void onceReflectedLightOntoASurfaceThatIsProvedDarkIsStillMeasured() {
        RequirementResult result = result("dim: {surfaces: '{left,right}/back', once_reflected: {at_most: 1e-6}}");
        // A diffuse screen of reflectance 0.5 lies 8 mm below, lit across about 4 mm: hundredths come back, not
        // millionths.
        assertThat(result.verdict()).isEqualTo(Verdict.FAIL);
        assertThat(result.outcomes()).allMatch(outcome -> outcome.evidence() instanceof Evidence.Sampled);
    }

    @Test
    void aDarkSurfaceDoesNotSeeThePupil() {
        RequirementResult result = result("seen: {surfaces: '{left,right}/back', pupil_seen: {at_least: 0.5}}");
        assertThat(result.verdict()).isEqualTo(Verdict.FAIL);
    }

    private static RequirementResult result(String requirement) {
        CheckResult checked = Results.slit(DARK, requirement);
        assertThat(checked.judgement().requirements().get(0).verdict()).isEqualTo(Verdict.PASS);
        return checked.judgement().requirements().get(1);
    }
}
