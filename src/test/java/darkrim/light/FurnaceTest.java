package darkrim.light;

import static darkrim.light.HemisphereBundles.FROM;
import static darkrim.light.HemisphereBundles.STUDENT;
import static darkrim.light.HemisphereBundles.TO;
import static darkrim.light.HemisphereBundles.anyBeam;
import static darkrim.light.HemisphereBundles.at;
import static darkrim.light.HemisphereBundles.look;
import static darkrim.light.HemisphereBundles.mean;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import darkrim.diagnostic.Place;
import darkrim.emission.Planck;
import darkrim.reflection.AngleTable;
import darkrim.reflection.ProductScatter;
import darkrim.reflection.Reflection;
import darkrim.reflection.RollOff;
import darkrim.scene.Finish;
import darkrim.scene.Scene;
import darkrim.scene.SceneBuilder;
import darkrim.scene.Warmth;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Warm walls as a point sees them: in a room at one temperature every way brings the radiance of a black body, whatever the walls are. */
class FurnaceTest {
    private static double total(HemisphereTally bundle) {
        return IntStream.range(0, bundle.size())
                .mapToDouble(i -> bundle.photons(i) + bundle.reflectedPhotons(i))
                .sum();
    }

    private static Warmth warmth(Scene scene, double kelvin, double emissivity) {
        return new Warmth(
                scene, surface -> kelvin, surface -> emissivity, Warmth.Emitter.NONE, Warmth.Emitter.NONE, FROM, TO);
    }

    /** Black walls at one temperature: pi L A from every point, each ray brings L. */
    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4})
    void aBlackFurnaceGivesTheRadianceOfABlackBodyExactly(long seed) {
        Scene scene = new RandomScenes(seed).room(6, Finish.ABSORBER);
        double radiance = Planck.photonRadiance(77, FROM, TO);
        for (HemisphereTally bundle : inTheRoom(scene, warmth(scene, 77, Double.POSITIVE_INFINITY), 40)) {
            assertThat(total(bundle) / bundle.rays()).isCloseTo(radiance, within(1e-12 * radiance));
        }
    }

    /** Kirchhoff: whatever walls reflect, they emit the rest. Lambertian and mirror paths bring L each, to the last digits. */
    @ParameterizedTest
    @ValueSource(doubles = {0.04, 0.5, 0.9, 1})
    void aFurnaceOfAnyReflectanceGivesTheSame(double reflectance) {
        Scene scene = new RandomScenes(3).room(6, new Finish("wall", 0.7 * reflectance, 0.3 * reflectance));
        double radiance = Planck.photonRadiance(77, FROM, TO);
        int side = reflectance < 1 ? 40 : 6;
        for (HemisphereTally bundle : inTheRoom(scene, warmth(scene, 77, Double.POSITIVE_INFINITY), side)) {
            assertThat(total(bundle) / bundle.rays()).isCloseTo(radiance, within(1e-11 * radiance));
        }
    }

    /** Coats, tables and lobes change with angle: the same in the mean. */
    @Test
    void aFurnaceOfFinishesThatChangeWithAngleGivesTheSameInTheMean() {
        AngleTable table = new AngleTable(List.of(0.0, 50.0, 90.0), List.of(0.1, 0.3, 0.8));
        Scene scene = FinishedScenes.refinished(
                new RandomScenes(3).room(6, Finish.ABSORBER),
                List.of(
                        Reflection.coat(1.5, 0.3),
                        new Reflection(0.1, List.of(), List.of(), List.of(new RollOff(0.02, 0.01, 2))),
                        new Reflection(0, List.of(), List.of(ProductScatter.of(table)), List.of()),
                        new Reflection(0, List.of(table), List.of(), List.of())));
        double radiance = Planck.photonRadiance(77, FROM, TO);
        Estimate mean = mean(inTheRoom(scene, warmth(scene, 77, Double.POSITIVE_INFINITY), 100), FurnaceTest::total);
        assertThat(mean.mean()).isCloseTo(radiance, within(STUDENT * mean.standardError()));
        assertThat(mean.standardError()).isLessThan(2e-3 * radiance);
    }

    /** Walls that emit less than they absorb: J = e L + r J, so J = e L / (1 - r). */
    @Test
    void aStatedEmissivityGivesTheGeometricSeries() {
        Scene scene = new RandomScenes(5).room(6, new Finish("wall", 0.4, 0.1));
        double radiance = Planck.photonRadiance(77, FROM, TO) * 0.3 / (1 - 0.5);
        for (HemisphereTally bundle : inTheRoom(scene, warmth(scene, 77, 0.3), 40)) {
            assertThat(total(bundle) / bundle.rays()).isCloseTo(radiance, within(1e-12 * radiance));
        }
    }

    /** A cold wall that lies over the point and looks down into the warm open: what it reflects is its reflectance times what it gets. */
    @Test
    void whatAWallReflectsIsItsReflectanceTimesWhatItGets() {
        Scene scene = new SceneBuilder()
                .sheet("wall", new Finish("half", 0.5, 0), "wall/back", Finish.ABSORBER, Place.IN_CODE)
                .quad("wall", at(-500, -500, 10), at(-500, 500, 10), at(500, 500, 10), at(500, -500, 10))
                .build(anyBeam());
        // The wall looks down into the open, which is warm; nothing else is there. It lies over all of the point's sky
        // but 2e-4.
        Warmth warmth = new Warmth(
                scene,
                surface -> 0,
                surface -> Double.POSITIVE_INFINITY,
                new Warmth.Emitter(120, 1),
                Warmth.Emitter.NONE,
                FROM,
                TO);
        double radiance = Planck.photonRadiance(120, FROM, TO);
        for (HemisphereTally bundle : look(scene, Optional.of(warmth), Vector3D.ZERO, Vector3D.Unit.PLUS_Z, 30)) {
            int wall = ReferenceStage.surface(scene, "wall").index();
            assertThat(bundle.photons(wall)).isZero();
            assertThat(bundle.reflectedPhotons(wall))
                    .isCloseTo(0.5 * radiance * bundle.seen(wall), within(1e-12 * radiance * bundle.rays()));
            assertThat(bundle.photons(bundle.open()))
                    .isCloseTo(radiance * bundle.seen(bundle.open()), within(1e-12 * radiance * bundle.rays()));
        }
    }

    private static List<HemisphereTally> inTheRoom(Scene scene, Warmth warmth, int side) {
        return look(scene, Optional.of(warmth), Vector3D.of(1, 2, -19.999), Vector3D.Unit.PLUS_Z, side);
    }
}
