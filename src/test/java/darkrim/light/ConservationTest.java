package darkrim.light;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import darkrim.scene.Finish;
import darkrim.scene.Scene;
import darkrim.scene.Surface;
import darkrim.trace.FacetTree;
import java.util.Map;
import java.util.SortedMap;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Conservation of energy and reciprocity: no value from a book is needed. */
class ConservationTest {
    private static FacetTree tree(Scene scene) {
        return FacetTree.build(scene.copyCorners(), scene.copyPlanes(), scene.bound());
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8})
    void whatIsEmittedIsAbsorbedEscapesOrTravelsOn(long seed) {
        Scene scene = new RandomScenes(seed).open(12);
        ForwardTally tally = new ForwardTracer(scene, tree(scene), seed).trace(50_000, 5);
        double rest = tally.emitted() - tally.absorbed() - tally.escaped() - tally.travelling();
        assertThat(tally.emitted()).isPositive();
        assertThat(tally.escaped()).isPositive();
        assertThat(rest).isCloseTo(0, within(1e-12 * tally.emitted()));
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8})
    void inAClosedRoomEachOrderCarriesTheReflectanceTimesTheLast(long seed) {
        double reflectance = 0.7;
        Scene scene = new RandomScenes(seed).room(6, new Finish("wall", 0.5, reflectance - 0.5));
        ForwardTally tally = new ForwardTracer(scene, tree(scene), seed).trace(20_000, 6);
        double first = arriving(scene, tally, 0);
        assertThat(tally.escaped()).isZero();
        for (int order = 1; order < 6; order++) {
            assertThat(arriving(scene, tally, order))
                    .isCloseTo(first * Math.pow(reflectance, order), within(1e-12 * first));
        }
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8})
    void aWhiteRoomAbsorbsNothing(long seed) {
        Scene scene = new RandomScenes(seed).room(6, new Finish("white", 1, 0));
        ForwardTally tally = new ForwardTracer(scene, tree(scene), seed).trace(10_000, 20);
        assertThat(tally.absorbed()).isCloseTo(0, within(1e-14 * tally.emitted()));
        assertThat(tally.travelling()).isCloseTo(tally.emitted(), within(1e-12 * tally.emitted()));
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8})
    void viewFactorsOfAClosedRoomAddUpToOne(long seed) {
        Scene scene = new RandomScenes(seed).room(6, Finish.ABSORBER);
        ViewFactors factors = new ViewFactors(scene, tree(scene), seed);
        for (Surface surface : scene.surfaces()) {
            double sum = factors.from(new Receiver.OnSurface(surface), 3_000).values().stream()
                    .mapToDouble(Estimate::mean)
                    .sum();
            // Bodies may stick into each other; what starts inside another body goes nowhere.
            if (surface.name().startsWith("room")) {
                assertThat(sum).as(surface.name()).isCloseTo(1, within(1e-12));
            } else {
                assertThat(sum).as(surface.name()).isLessThanOrEqualTo(1 + 1e-12);
            }
        }
    }

    /**
     * A1 F12 = A2 F21. At most 12 x 11 pairs a seed, 8 seeds: about 1,000 comparisons at 5 standard errors, so a true law fails here for
     * about one set of seeds in 2,000; the seeds are fixed.
     */
    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8})
    void viewFactorsAreReciprocal(long seed) {
        Scene scene = new RandomScenes(seed).room(1, Finish.ABSORBER);
        ViewFactors factors = new ViewFactors(scene, tree(scene), seed);
        int count = scene.surfaces().size();
        java.util.List<SortedMap<Integer, Estimate>> from = scene.surfaces().stream()
                .map(surface -> factors.from(new Receiver.OnSurface(surface), 40_000))
                .toList();
        int compared = 0;
        for (int i = 0; i < count; i++) {
            for (Map.Entry<Integer, Estimate> entry : from.get(i).entrySet()) {
                int j = entry.getKey();
                Estimate back = from.get(j).get(i);
                if (j > i
                        && back != null
                        && back.mean() > 1e-3
                        && entry.getValue().mean() > 1e-3) {
                    Estimate one =
                            entry.getValue().times(scene.surfaces().get(i).area());
                    Estimate other = back.times(scene.surfaces().get(j).area());
                    double error = Math.hypot(one.standardError(), other.standardError());
                    assertThat(one.mean()).isCloseTo(other.mean(), within(5 * error));
                    compared++;
                }
            }
        }
        assertThat(compared).isGreaterThan(10);
    }

    private static double arriving(Scene scene, ForwardTally tally, int order) {
        return scene.surfaces().stream()
                .mapToDouble(surface -> tally.irradiance(surface, order).mean() * surface.area())
                .sum();
    }
}
