package darkrim.study.path;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import darkrim.light.Estimate;
import darkrim.light.ForwardTracer;
import darkrim.light.PathTally;
import darkrim.light.Reflector;
import darkrim.scene.Scene;
import darkrim.scene.Surface;
import darkrim.study.Effort;
import darkrim.trace.FacetTree;
import darkrim.trace.Ray;
import darkrim.verdict.StoppingWatch;
import darkrim.verdict.Watch;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.TreeMap;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class PathStudyTest {
    private static final Path BAFFLE = Path.of("geometries/nightglow-b.yaml");

    @TempDir
    Path folder;

    private static PathResult run(PathStudy study, String receiver, int most, long samples, int threads) {
        Surface onto = study.scene().surface(receiver).orElseThrow();
        Effort effort = new Effort(threads, Optional.empty(), Optional.of(samples));
        return study.run(List.of(onto), new PathSettings(most, 4), effort, Watch.NONE);
    }

    @Test
    void theSameForAnyNumberOfThreads() throws Exception {
        PathStudy study = PathStudy.of(BAFFLE, Effort.asAsked(), Watch.NONE);
        List<ReceiverPaths> one =
                run(study, "mosaic/die[1,2]/active", 2, 30_000, 1).receivers();
        assertThat(run(study, "mosaic/die[1,2]/active", 2, 30_000, 3).receivers())
                .isEqualTo(one);
        assertThat(one.get(0).tally().samples()).isEqualTo(30_000);
    }

    /** Followed from the pupil by a tracer that shares no estimator; 5 standard errors, a false alarm in 6e-7 of all seeds. */
    @Test
    void theBaffleSendsItsPixelsMoreLightByTwoReflectionsThanByOne() throws Exception {
        PathStudy study = PathStudy.of(BAFFLE, Effort.asAsked(), Watch.NONE);
        Scene scene = study.scene();
        ReceiverPaths paths =
                run(study, "mosaic/die[1,2]/active", 2, 60_000, 2).receivers().get(0);
        FacetTree tree = FacetTree.build(scene.copyCorners(), scene.copyPlanes(), scene.bound());
        Estimate forward = new ForwardTracer(scene, tree, 4).trace(1_000_000, 3).irradiance(paths.receiver(), 2);
        Estimate back = paths.order(2);
        double error = Math.hypot(forward.standardError(), back.standardError());
        assertThat(back.mean()).isCloseTo(forward.mean(), within(5 * error));
        assertThat(error).isLessThan(0.15 * back.mean());
        assertThat(back.mean()).isGreaterThan(10 * paths.order(1).mean());
    }

    @Test
    void describedPathsAndTheRestAddUpToTheirOrder() throws Exception {
        ReceiverPaths paths = run(
                        PathStudy.of(BAFFLE, Effort.asAsked(), Watch.NONE), "mosaic/die[1,2]/active", 2, 20_000, 2)
                .receivers()
                .get(0);
        for (int order = 1; order <= 2; order++) {
            List<TopPath> strongest = paths.strongest(order);
            assertThat(strongest).hasSize(4);
            assertThat(strongest)
                    .isSortedAccordingTo((a, b) ->
                            Double.compare(b.irradiance().mean(), a.irradiance().mean()));
            double sum = strongest.stream()
                    .mapToDouble(each -> each.irradiance().mean())
                    .sum();
            double whole = paths.order(order).mean();
            assertThat(sum + paths.rest(order)).isCloseTo(whole, within(1e-12 * whole));
        }
        assertThat(paths.rest(2)).isPositive();
        double share = paths.strongest().stream().mapToDouble(TopPath::share).sum();
        double rest = (paths.rest(1) + paths.rest(2)) / paths.reflected().mean();
        assertThat(share + rest).isCloseTo(1, within(1e-9));
    }

    /** By the ray core, leg by leg from the receiver: what is met next is the surface that the path names. */
    @Test
    void nothingStandsInTheWayOfALineThatIsShown() throws Exception {
        PathStudy study = PathStudy.of(Path.of("geometries/grazing-coat.yaml"), Effort.asAsked(), Watch.NONE);
        Scene scene = study.scene();
        FacetTree tree = FacetTree.build(scene.copyCorners(), scene.copyPlanes(), scene.bound());
        ReceiverPaths paths =
                run(study, "array/front", 3, 20_000, 2).receivers().get(0);
        assertThat(paths.strongest()).hasSize(12);
        for (TopPath path : paths.strongest()) {
            List<Vector3D> line = path.example();
            assertThat(line).hasSize(path.path().order() + 2);
            for (int i = line.size() - 1; i > 0; i--) {
                int met = met(scene, tree, line.get(i), line.get(i - 1));
                if (i == 1) {
                    assertThat(met).as("%s", path).isEqualTo(-1);
                } else {
                    Reflector expected = path.path().reflectors().get(i - 2);
                    assertThat(met).as("%s", path).isEqualTo(expected.surface());
                }
            }
        }
    }

    /** The surface met from a little above one point to a little beyond another; -1 if none. */
    private static int met(Scene scene, FacetTree tree, Vector3D from, Vector3D to) {
        Vector3D along = to.subtract(from);
        Vector3D start = from.add(along.normalize().multiply(1e-6));
        Ray ray = new Ray();
        ray.set(start, along, 1 + 1e-6 / along.norm(), Ray.NO_PLANE);
        int facet = tree.nearest(ray);
        return facet < 0 ? -1 : scene.surfaceMet(facet, along.getX(), along.getY(), along.getZ());
    }

    /**
     * A small patch of wall at the height h throws s h / d^4 on the floor at the distance s (Lambert's law, d^2 = s^2 + h^2): most at s = h / sqrt(3).
     * The beam comes from far away at 30 deg to the patch.
     */
    @Test
    void aSmallPatchOfWallIsBrightestOnTheFloorWhereLambertSays() throws Exception {
        Path file = Files.writeString(folder.resolve("patch.yaml"), """
                title: A patch of wall
                beam:
                  pupil: {shape: disc, diameter: 20, distance: 1000, shift: [-1732, 0]}
                finishes:
                  white: {diffuse: 0.5}
                parts:
                  floor: {kind: rectangle, width: 40, depth: 40}
                  patch: {kind: rectangle, width: 2, depth: 2, turn: {about: y, by: -90}, at: [12, 3, 9], finish: white}
                requirements:
                  dim: {surfaces: "floor/front", once_reflected: {at_most: 0.1}}
                """);
        PathStudy study = PathStudy.of(file, Effort.asAsked(), Watch.NONE);
        ReceiverPaths paths =
                run(study, "floor/front", 1, 400_000, 2).receivers().get(0);
        assertThat(paths.strongest()).hasSize(1);
        TopPath path = paths.strongest().get(0);
        double cell = 40.0 / 16;
        assertThat(path.onReceiver().centre().getX()).isCloseTo(12 - 9 / Math.sqrt(3), within(cell));
        assertThat(path.onReceiver().centre().getY()).isCloseTo(3, within(cell));
        assertThat(path.onReceiver().area()).isCloseTo(cell * cell, within(1e-9));
        assertThat(path.onLast().centre().distance(Vector3D.of(12, 3, 9))).isLessThan(1.5);
        // The pupil is 1744 mm away along x and 991 mm up, and 10 mm wide.
        double expected = Math.toDegrees(Math.atan2(991, 1744));
        assertThat(path.incidences().get(0).mean()).isCloseTo(expected, within(0.5));
        assertThat(path.incidences().get(0).least()).isBetween(expected - 0.5, expected);
        assertThat(path.incidences().get(0).most()).isBetween(expected, expected + 0.5);
        assertThat(path.path().isGlint()).isFalse();
        assertThat(path.share()).isEqualTo(1);
    }

    @Test
    void whatIsFurtherIsExactWhereEachReflectionTakesTheSameShare() {
        Estimate[] orders = new Estimate[4];
        for (int i = 0; i < 4; i++) {
            orders[i] = new Estimate(10, Math.pow(0.3, i), 0, 1);
        }
        PathTally tally = new PathTally(List.of(orders), List.of(orders), new TreeMap<>());
        // 0.3^4 + 0.3^5 + ... = 0.3^4 / 0.7
        assertThat(new ReceiverPaths(null, tally, List.of()).further().getAsDouble())
                .isCloseTo(Math.pow(0.3, 4) / 0.7, within(1e-15));
    }

    @Test
    void theSurfacesWithALimitAreThoseOfTheRequirement() throws Exception {
        assertThat(PathStudy.of(BAFFLE, Effort.asAsked(), Watch.NONE).limited())
                .extracting(Surface::name)
                .containsExactly(
                        "mosaic/die[1,1]/active",
                        "mosaic/die[2,1]/active",
                        "mosaic/die[1,2]/active",
                        "mosaic/die[2,2]/active");
    }

    @Test
    void stoppedWorkSaysSo() throws Exception {
        PathStudy study = PathStudy.of(BAFFLE, Effort.asAsked(), Watch.NONE);
        Watch stop = StoppingWatch.after(0);
        PathResult result = study.run(study.limited(), new PathSettings(1, 1), Effort.asAsked(), stop);
        assertThat(result.stopped()).isTrue();
        assertThat(result.receivers()).isEmpty();
    }

    /** Where the ways of the strongest paths run is found by taking batches again, as many as were measured: after a stop the first must do. */
    @Test
    void aStopIsHeardWhileWaysAreLookedAt() throws Exception {
        Path file = Files.writeString(folder.resolve("walls.yaml"), """
                title: Two walls and a screen
                beam:
                  pupil: {shape: disc, diameter: 40, distance: 200}
                finishes:
                  grey: {diffuse: 0.1}
                parts:
                  screen: {kind: rectangle, width: 10, depth: 10, finish: grey}
                  left: {kind: block, width: 2, depth: 20, height: 20, at: [-12, 0, 0], finish: grey}
                  right: {kind: block, width: 2, depth: 20, height: 20, at: [12, 0, 0], turn: {about: y, by: 10}, finish: grey}
                requirements:
                  clean: {surfaces: "screen/front", once_reflected: {at_most: 5.0e-3}}
                """);
        int[] asked = {0};
        Watch afterThreeSlices = new Watch() {
            @Override
            public void progress(String step, long done, long most) {}

            @Override
            public boolean stop() {
                return ++asked[0] > 4;
            }
        };
        PathStudy study = PathStudy.of(file, Effort.asAsked(), Watch.NONE);
        Effort effort = new Effort(2, Optional.empty(), Optional.of(100_000_000L));
        PathResult result = study.run(study.limited(), new PathSettings(3, 100), effort, afterThreeSlices);
        assertThat(result.stopped()).isTrue();
        ReceiverPaths paths = result.receivers().get(0);
        assertThat(paths.tally().samples()).isEqualTo(3 * 16 * 8192);
        assertThat(paths.strongest()).isNotEmpty().allSatisfy(path -> {
            assertThat(path.example()).hasSize(path.path().order() + 2);
            assertThat(path.share()).isPositive();
        });
        // Asked at the first yes, after the first batches that were taken again, and for the result.
        assertThat(asked[0]).isEqualTo(7);
    }
}
