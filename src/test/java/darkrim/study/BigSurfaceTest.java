package darkrim.study;

import static org.assertj.core.api.Assertions.assertThat;

import darkrim.diagnostic.Findings;
import darkrim.diagnostic.UnusableInput;
import darkrim.layout.Layout;
import darkrim.layout.LayoutReader;
import darkrim.verdict.StoppingWatch;
import darkrim.verdict.Verdict;
import darkrim.verdict.Watch;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

/** A round part has surfaces of tens of thousands of facets: a check of it must begin, be seen to go on, and end when asked to. */
class BigSurfaceTest {
    private static final String DOME = """
            title: Dome over a sheet
            finishes:
              black: {diffuse: 0.05}
            beam: {pupil: {shape: disc, diameter: 40, distance: 300}}
            parts:
              sheet: {kind: rectangle, width: 12, depth: 12, finish: black}
              dome: {kind: sphere_cap, radius: 20, half_angle: 60, at: [0, 0, -8], finish: black}
            requirements:
              dark: {surfaces: "dome/inside", direct: none}
              clean: {surfaces: "sheet/front", once_reflected: {at_most: 1e-3}}
            """;

    private static CheckResult check(Watch watch) throws UnusableInput {
        Layout layout = LayoutReader.read("dome.yaml", DOME.getBytes(StandardCharsets.UTF_8))
                .layout()
                .orElseThrow();
        return Check.of(layout, new Findings(), new Effort(2, Optional.empty(), Optional.of(1_000_000L)), watch);
    }

    @Test
    @Timeout(value = 60, unit = TimeUnit.SECONDS)
    void aReflectingDomeIsCheckedAndShowsHowFarItIs() throws UnusableInput {
        List<String> steps = new ArrayList<>();
        CheckResult result = check(new Watch() {
            @Override
            public void progress(String step, long done, long most) {
                steps.add(step);
            }

            @Override
            public boolean stop() {
                return false;
            }
        });
        assertThat(result.scene().facetCount()).isGreaterThan(20_000);
        // The dome hides the whole sheet from the pupil, so its inside is dark and sends nothing down.
        assertThat(result.judgement().verdict()).isEqualTo(Verdict.PASS);
        assertThat(steps).contains("proving darkness", "sampling light, at most");
    }

    /** A lit reflecting cap of thousands of facets beside what must get no light from it. */
    private static final String CAP = """
            title: Reflecting cap
            finishes: {grey: {diffuse: 0.05}}
            beam: {pupil: {shape: disc, diameter: 40, distance: 300}}
            parts:
              block: {kind: block, finish: grey, width: 10, depth: 10, height: 3}
              cap: {kind: sphere_cap, finish: grey, radius: 50, half_angle: 30, at: [0, 0, -60]}
            requirements:
              clean: {surfaces: "block/+x", once_reflected: {at_most: 0.05}}
              open: {surfaces: "block/+z", pupil_seen: {at_least: 0.9}}
            """;

    private static CheckResult checkCap(Watch watch) throws UnusableInput {
        Layout layout = LayoutReader.read("cap.yaml", CAP.getBytes(StandardCharsets.UTF_8))
                .layout()
                .orElseThrow();
        return Check.of(layout, new Findings(), new Effort(2, Optional.empty(), Optional.of(1_000_000L)), watch);
    }

    @Test
    @Timeout(value = 60, unit = TimeUnit.SECONDS)
    void lightFromABigLitSurfaceIsBoundedWithoutAProofForEachFacet() throws UnusableInput {
        CheckResult result = checkCap(Watch.NONE);
        assertThat(result.scene().facetCount()).isGreaterThan(3_000);
        assertThat(result.judgement().verdict()).isEqualTo(Verdict.PASS);
    }

    @Test
    @Timeout(value = 30, unit = TimeUnit.SECONDS)
    void aStoppedCheckStillListsEveryRequirement() throws UnusableInput {
        CheckResult result = checkCap(StoppingWatch.after(50));
        assertThat(result.judgement().requirements()).hasSize(2);
        assertThat(result.judgement().stopped()).isTrue();
    }

    @Test
    void aProofOfOneBigSurfaceIsStoppedOnItsWay() throws UnusableInput {
        // Well after the proofs have begun: the dome alone has more than 10,000 faces.
        CheckResult result = check(StoppingWatch.after(200));
        assertThat(result.judgement().stopped()).isTrue();
        assertThat(result.judgement().verdict()).isEqualTo(Verdict.UNDECIDED);
        assertThat(result.judgement().samples()).isZero();
    }
}
