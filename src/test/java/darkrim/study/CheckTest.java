package darkrim.study;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import darkrim.assembly.ShippedLayouts;
import darkrim.diagnostic.UnusableInput;
import darkrim.scene.Scene;
import darkrim.scene.Surface;
import darkrim.trace.FacetTree;
import darkrim.trace.Ray;
import darkrim.verdict.Evidence;
import darkrim.verdict.Outcome;
import darkrim.verdict.RequirementResult;
import darkrim.verdict.StoppingWatch;
import darkrim.verdict.Verdict;
import darkrim.verdict.Watch;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Test;

/** The main job on the shipped layouts, as their comments tell it. */
class CheckTest {
    private static final Path A = Path.of("geometries/nightglow-a.yaml");
    private static final Path B = Path.of("geometries/nightglow-b.yaml");

    private static CheckResult check(Path file, int threads, long most) throws UnusableInput {
        return Check.of(file, new Effort(threads, Optional.empty(), Optional.of(most)), Watch.NONE);
    }

    /** Margins take as long as the rest of a check, and change no verdict. */
    private static CheckResult verdictsOnly(Path file, long most) throws UnusableInput {
        return Check.of(file, new Effort(2, Optional.empty(), Optional.of(most), MarginScope.NONE), Watch.NONE);
    }

    /** Revision B with a small budget on one thread, worked out once; {@link #oneTwoAndFiveThreadsGiveTheSameBits} says that threads are all one. */
    private static final class SmallB {
        private static final CheckResult ONE_THREAD = once();

        private static CheckResult once() {
            try {
                return check(B, 1, 4_000_000L);
            } catch (UnusableInput wrong) {
                throw new AssertionError(wrong);
            }
        }
    }

    private static Map<String, Verdict> verdicts(CheckResult result) {
        return result.judgement().requirements().stream()
                .collect(Collectors.toMap(each -> each.requirement().name(), RequirementResult::verdict));
    }

    @Test
    void revisionBPassesAndEverySurfaceThatMustBeDarkIsProvedDark() throws UnusableInput {
        CheckResult result = verdictsOnly(B, 100_000_000L);
        assertThat(verdicts(result).values()).containsOnly(Verdict.PASS);
        assertThat(result.feasibility()).hasSize(4).allMatch(line -> line.holds());
        assertThat(result.judgement().requirements())
                .filteredOn(each -> each.requirement().name().endsWith("-dark"))
                .hasSize(6)
                .allSatisfy(each -> assertThat(each.outcomes())
                        .isNotEmpty()
                        .allMatch(outcome -> outcome.evidence() instanceof Evidence.ProvedDark));
        assertThat(evidence(result, "full-pupil")).hasSize(4).containsOnly(Evidence.ExactShare.WHOLE);
        assertThat(evidence(result, "pixels-clean"))
                .hasSize(4)
                .allMatch(bound -> bound instanceof Evidence.ProvedBound proved && proved.atMost() < 2e-5);
    }

    private static List<Evidence> evidence(CheckResult result, String requirement) {
        return result.judgement().requirements().stream()
                .filter(each -> each.requirement().name().equals(requirement))
                .flatMap(each -> each.outcomes().stream().map(Outcome::evidence))
                .toList();
    }

    @Test
    void revisionAFailsWithLitEdgesAndTheWallsOfTheOpeningsScatterIntoThePixels() throws UnusableInput {
        CheckResult result = verdictsOnly(A, 100_000_000L);
        assertThat(verdicts(result))
                .containsEntry("edges-dark", Verdict.FAIL)
                .containsEntry("ledges-dark", Verdict.FAIL)
                .containsEntry("carriers-dark", Verdict.FAIL)
                .containsEntry("pixels-clean", Verdict.FAIL)
                .containsEntry("full-pupil", Verdict.PASS);
        assertThat(result.feasibility()).hasSize(4).noneMatch(line -> line.holds());
        assertThat(result.judgement().surfaces())
                .filteredOn(each -> each.surface().name().endsWith("/active"))
                .hasSize(4)
                .allSatisfy(each -> {
                    int strongest = each.onceReflected().by().entrySet().stream()
                            .max(Comparator.comparingDouble(
                                    entry -> entry.getValue().mean()))
                            .orElseThrow()
                            .getKey()
                            .surface();
                    assertThat(result.scene().surfaces().get(strongest).name()).matches("lid/opening.*/wall/.*");
                });
    }

    @Test
    void everyWitnessRayOfRevisionAReachesItsSurfaceUnblocked() throws UnusableInput {
        CheckResult result = verdictsOnly(A, 5_000_000L);
        Scene scene = result.scene();
        FacetTree tree = FacetTree.build(scene.copyCorners(), scene.copyPlanes(), scene.bound());
        int rays = 0;
        for (RequirementResult each : result.judgement().requirements()) {
            for (Outcome outcome : each.outcomes()) {
                if (outcome.evidence() instanceof Evidence.WitnessRay witness) {
                    assertThat(surfaceReached(scene, tree, witness)).isEqualTo(outcome.surface());
                    rays++;
                }
            }
        }
        assertThat(rays).isGreaterThan(30);
    }

    /** Goes 1 nm past the stated end, so that the surface itself is met. */
    private static Surface surfaceReached(Scene scene, FacetTree tree, Evidence.WitnessRay witness) {
        Vector3D way = witness.onSurface().subtract(witness.onPupil());
        Ray ray = new Ray();
        ray.set(witness.onPupil(), way, 1 + 1e-6 / way.norm(), Ray.NO_PLANE);
        int facet = tree.nearest(ray);
        assertThat(facet).isNotNegative();
        return scene.surfaces().get(scene.surfaceMet(facet, way.getX(), way.getY(), way.getZ()));
    }

    @Test
    void oneTwoAndFiveThreadsGiveTheSameBits() throws UnusableInput {
        CheckResult one = SmallB.ONE_THREAD;
        for (int threads : List.of(2, 5)) {
            CheckResult many = check(B, threads, 4_000_000L);
            assertThat(many.judgement()).isEqualTo(one.judgement());
        }
    }

    @Test
    void anotherSeedGivesOtherNumbers() throws UnusableInput {
        CheckResult one = SmallB.ONE_THREAD;
        CheckResult other = Check.of(B, new Effort(2, Optional.of(99L), Optional.of(4_000_000L)), Watch.NONE);
        assertThat(other.judgement()).isNotEqualTo(one.judgement());
        assertThat(other.effort().seed()).isEqualTo(99);
    }

    @Test
    void aStopKeepsWhatIsProvedAndLeavesTheRestUndecided() throws UnusableInput {
        CheckResult result = Check.of(B, Effort.asAsked(), StoppingWatch.at("sampling light"));
        assertThat(result.judgement().stopped()).isTrue();
        assertThat(verdicts(result))
                .containsEntry("edges-dark", Verdict.PASS)
                .containsEntry("full-pupil", Verdict.PASS)
                .containsEntry("pixels-clean", Verdict.PASS);
        // Asked for and not looked for, which is not the same as not asked for.
        assertThat(result.margins().scope()).isEqualTo(MarginScope.LEAST);
        assertThat(result.margins().stopped()).isTrue();
        assertThat(result.stopped()).isTrue();
        CheckResult other = Check.of(A, Effort.asAsked(), StoppingWatch.at("sampling light"));
        assertThat(verdicts(other)).containsEntry("pixels-clean", Verdict.UNDECIDED);
    }

    @Test
    void aStopDuringTheProofsLeavesAllUndecided() throws UnusableInput {
        CheckResult result = Check.of(B, Effort.asAsked(), StoppingWatch.at("proving darkness"));
        assertThat(result.judgement().stopped()).isTrue();
        assertThat(verdicts(result).values()).containsOnly(Verdict.UNDECIDED);
    }

    @Test
    void aStopWhileMarginsAreMeasuredKeepsTheVerdicts() throws UnusableInput {
        CheckResult result = Check.of(
                B, new Effort(2, Optional.empty(), Optional.of(4_000_000L)), StoppingWatch.at("measuring margins"));
        assertThat(result.margins().stopped()).isTrue();
        assertThat(result.judgement().stopped()).isFalse();
        assertThat(verdicts(result)).containsEntry("edges-dark", Verdict.PASS);
    }

    @Test
    void everyRequirementOfDarknessHasItsLeastMarginAndEveryOpeningItsSidesAndCorners() throws UnusableInput {
        CheckResult result = check(B, 2, 400_000L);
        assertThat(result.judgement().requirements())
                .filteredOn(each -> each.requirement().name().endsWith("-dark"))
                .hasSize(6)
                .allSatisfy(each -> assertThat(each.leastMargin())
                        .as(each.requirement().name())
                        .hasValueSatisfying(least -> assertThat(
                                        least.evidence().margin().orElseThrow().millimetres())
                                .isPositive()));
        // Four openings: four sides, four corners and the whole of each.
        assertThat(result.margins().openings()).hasSize(36);
        // 'Spare' of the feasibility lines has the placement error of 0.1 mm taken off.
        double spare = result.feasibility().get(0).vignettingMargin().orElseThrow();
        double inward = result.margins().openings().stream()
                .filter(margin -> margin.opening().equals("lid/opening[1,1]"))
                .mapToDouble(margin -> margin.inward().orElseThrow().millimetres())
                .min()
                .orElseThrow();
        // The line takes a polygon around the pupil, and so a little less.
        assertThat(inward).isBetween(spare + 0.1, spare + 0.1 + 2e-5);
    }

    @Test
    void aSmallBudgetGoesToWhatIsAskedFor() throws UnusableInput {
        CheckResult result = check(A, 2, 400_000L);
        // At least a first look at each of the four, and enough of them to decide.
        assertThat(result.judgement().samples()).isBetween(4 * 2048L, 400_000L);
        assertThat(verdicts(result)).containsEntry("pixels-clean", Verdict.FAIL);
        assertThat(result.judgement().surfaces())
                .filteredOn(each -> each.surface().name().endsWith("/active"))
                .hasSize(4)
                .allSatisfy(each ->
                        assertThat(each.onceReflected().irradiance().samples()).isPositive());
    }

    /** Few samples are enough to ask every requirement something. */
    @Test
    void everyShippedLayoutIsChecked() throws Exception {
        for (Path file : ShippedLayouts.files()) {
            Effort effort = new Effort(2, Optional.empty(), Optional.of(300_000L), MarginScope.NONE);
            CheckResult result = Check.of(file, effort, Watch.NONE);
            assertThat(result.stopped()).as(file.toString()).isFalse();
            assertThat(result.judgement().requirements())
                    .as(file.toString())
                    .hasSameSizeAs(result.layout().requirements())
                    .allSatisfy(each -> assertThat(each.outcomes()).isNotEmpty());
        }
    }

    @Test
    void aBrokenLayoutIsRefusedWithItsFindings() {
        Path broken = Path.of("src/test/resources/broken").resolve(anyBroken());
        assertThatThrownBy(() -> check(broken, 1, 1))
                .isInstanceOfSatisfying(
                        UnusableInput.class,
                        unusable -> assertThat(unusable.findings()).isNotEmpty());
    }

    private static String anyBroken() {
        String[] names = Path.of("src/test/resources/broken").toFile().list();
        java.util.Arrays.sort(names);
        return java.util.Arrays.stream(names)
                .filter(name -> name.endsWith(".yaml"))
                .findFirst()
                .orElseThrow();
    }

    @Test
    void everyStepOfACooledLayoutSaysWhichShapeItIsAbout() throws UnusableInput {
        List<String> steps = new ArrayList<>();
        Check.coldAndWarm(
                Path.of("geometries/nightglow-80k.yaml"),
                new Effort(2, Optional.empty(), Optional.of(1_000L)).with(MarginScope.NONE),
                new Watch() {
                    @Override
                    public void progress(String step, long done, long most) {
                        steps.add(step);
                    }

                    @Override
                    public boolean stop() {
                        return false;
                    }
                });
        int warm = (int)
                steps.stream().takeWhile(step -> step.startsWith("1/2 cold: ")).count();
        assertThat(warm).isPositive().isLessThan(steps.size());
        assertThat(steps.subList(warm, steps.size())).allMatch(step -> step.startsWith("2/2 warm: "));
    }
}
