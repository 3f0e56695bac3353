package darkrim.light;

import static darkrim.light.HemisphereBundles.STUDENT;
import static darkrim.light.HemisphereBundles.anyBeam;
import static darkrim.light.HemisphereBundles.at;
import static darkrim.light.HemisphereBundles.look;
import static darkrim.light.HemisphereBundles.mean;
import static darkrim.light.HemisphereBundles.tree;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import darkrim.diagnostic.Place;
import darkrim.geom.Frame;
import darkrim.geom.Polygon;
import darkrim.geom.Ring;
import darkrim.layout.Requirement.LightClass;
import darkrim.reference.ReferenceScalar;
import darkrim.scene.Beam;
import darkrim.scene.Finish;
import darkrim.scene.Pupil;
import darkrim.scene.Scene;
import darkrim.scene.SceneBuilder;
import darkrim.scene.Surface;
import darkrim.shadow.VisiblePupil;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.apache.commons.geometry.euclidean.twod.Vector2D;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What a point sees: view factors, the pupil, the open and what is lit. */
class HemisphereViewTest {
    static Stream<ReferenceScalar> points() {
        return ReferenceScalar.family("A")
                .filter(scalar -> scalar.from()
                        .geometry()
                        .get("from")
                        .get("type")
                        .asString()
                        .startsWith("point"));
    }

    /** Discs, rectangles, polygons, caps and spheres from a point: closed forms of the literature. */
    @ParameterizedTest(name = "{0}")
    @MethodSource("points")
    void theShareOfRaysIsTheViewFactor(ReferenceScalar scalar) {
        ReferenceStage stage = new ReferenceStage(scalar, ReferenceMove.NONE).with("to", Finish.ABSORBER);
        Scene scene = stage.under(anyBeam());
        Receiver.AtPoint at = (Receiver.AtPoint) stage.receiver(scene, "from", scalar, 0);
        int target = ReferenceStage.surface(scene, "to").index();
        int back = scene.backSurface(scene.surfaces().get(target).firstFacet());
        Estimate factor = mean(
                look(scene, Optional.empty(), at.position(), at.normal(), 150),
                bundle -> bundle.seen(target) + (double) bundle.seen(back));
        assertThat(factor.mean())
                .as(scalar + ": " + factor)
                .isCloseTo(scalar.value(), within(STUDENT * factor.standardError()));
        assertThat(factor.standardError()).isLessThan(0.01 * scalar.value());
    }

    /** With another part in the way: against the contour integral over the outline less all shadows, which knows no random numbers. */
    @Test
    void aTargetPartlyHiddenIsSeenAsTheContourIntegralSays() {
        Vector3D position = Vector3D.of(1, -2, 0);
        Vector3D normal = Vector3D.of(0.1, 0.2, 1).normalize();
        Polygon target =
                Polygon.of(List.of(Vector2D.of(-9, -7), Vector2D.of(12, -5), Vector2D.of(10, 8), Vector2D.of(-6, 11)));
        Frame plane =
                Frame.about(Vector3D.of(2, 3, 25), Vector3D.of(0.2, -0.1, -1).normalize());
        Scene blockers = withBlockers(new SceneBuilder()).build(Beam.of(new Pupil(target, plane)));
        double exact = new VisiblePupil(blockers, tree(blockers))
                .from(position, normal)
                .irradiance();
        SceneBuilder builder = withBlockers(new SceneBuilder())
                .sheet("target", Finish.ABSORBER, "target/back", Finish.ABSORBER, Place.IN_CODE);
        List<Vector3D> corners = target.corners().stream()
                .map(corner -> plane.at(corner.getX(), corner.getY()))
                .toList();
        builder.quad("target", corners.get(0), corners.get(1), corners.get(2), corners.get(3));
        Scene scene = builder.build(anyBeam());
        int number = ReferenceStage.surface(scene, "target").index();
        Estimate share = mean(look(scene, Optional.empty(), position, normal, 250), bundle -> bundle.seen(number));
        assertThat(exact).isBetween(0.1, 0.5);
        assertThat(Math.PI * share.mean()).isCloseTo(exact, within(STUDENT * Math.PI * share.standardError()));
        assertThat(share.standardError()).isLessThan(0.003 * share.mean());
    }

    private static SceneBuilder withBlockers(SceneBuilder builder) {
        return builder.sheet("bar", Finish.ABSORBER, "bar/back", Finish.ABSORBER, Place.IN_CODE)
                .quad("bar", at(-20, -1, 12), at(20, -1, 12), at(20, 1, 12), at(-20, 1, 12))
                .sheet("corner", Finish.ABSORBER, "corner/back", Finish.ABSORBER, Place.IN_CODE)
                .quad("corner", at(2, 2, 9), at(30, 2, 9), at(30, 30, 9), at(2, 30, 9));
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6})
    void everyRayIsCountedOnce(long seed) {
        Scene scene = new RandomScenes(seed).open(12);
        for (HemisphereTally bundle :
                look(scene, Optional.empty(), Vector3D.of(0.3, 0.2, 1e-6), Vector3D.Unit.PLUS_Z, 50)) {
            long sum = 0;
            for (int i = 0; i < bundle.size(); i++) {
                sum += bundle.seen(i);
                assertThat(bundle.lit(i)).isBetween(0L, bundle.seen(i));
            }
            assertThat(sum).isEqualTo(bundle.rays());
            assertThat(bundle.rays()).isEqualTo(2500);
        }
    }

    /** The pupil alone in the sky: what is seen of it is the irradiance that it would give, in sr. */
    @Test
    void theOpenAndThePupilMakeUpAnEmptySky() {
        Beam beam = Beam.of(new Pupil(new Ring(20, 5), Frame.about(Vector3D.of(0, 0, 50), Vector3D.Unit.MINUS_Z)));
        Scene scene = new SceneBuilder()
                .sheet("floor", Finish.ABSORBER, "floor/back", Finish.ABSORBER, Place.IN_CODE)
                .quad("floor", at(-1, -1, -1), at(1, -1, -1), at(1, 1, -1), at(-1, 1, -1))
                .build(beam);
        List<HemisphereTally> bundles = look(scene, Optional.empty(), Vector3D.ZERO, Vector3D.Unit.PLUS_Z, 200);
        Estimate pupil = mean(bundles, bundle -> bundle.seen(bundle.pupil()));
        Estimate open = mean(bundles, bundle -> bundle.seen(bundle.open()));
        assertThat(Math.PI * pupil.mean())
                .isCloseTo(beam.referenceIrradiance(), within(STUDENT * Math.PI * pupil.standardError()));
        assertThat(pupil.mean() + open.mean()).isCloseTo(1, within(1e-12));
    }

    /**
     * A far, small pupil lights every point of a Lambertian wall with the cosine of the wall, so that what is seen and lit tells the
     * once-reflected light: reflectance times cosine times the lit share. Against the estimate that checks use.
     */
    @Test
    void whatIsSeenAndLitTellsTheOnceReflectedLight() {
        double far = 1e5;
        Frame down = Frame.of(Vector3D.of(0, 0, far), Vector3D.Unit.PLUS_X, Vector3D.Unit.MINUS_Y);
        Finish grey = new Finish("grey", 0.3, 0);
        Scene scene = new SceneBuilder()
                .sheet("wall", grey, "wall/back", Finish.ABSORBER, Place.IN_CODE)
                .quad("wall", at(8, -20, 2), at(28, -20, 32), at(28, 20, 32), at(8, 20, 2))
                .sheet("roof", grey, "roof/back", Finish.ABSORBER, Place.IN_CODE)
                .quad("roof", at(15, -30, 40), at(60, -30, 40), at(60, 5, 40), at(15, 5, 40))
                .build(Beam.of(new Pupil(Ring.disc(50), down)));
        int wall = ReferenceStage.surface(scene, "wall").index();
        Vector3D point = Vector3D.of(0.5, 0.3, 0);
        List<HemisphereTally> bundles = look(scene, Optional.empty(), point, Vector3D.Unit.PLUS_Z, 200);
        Estimate lit = mean(bundles, bundle -> bundle.lit(wall));
        Estimate seen = mean(bundles, bundle -> bundle.seen(wall));
        double cosine =
                Math.abs(scene.normal(scene.surfaces().get(wall).firstFacet()).getZ());
        Transport transport = Transport.of(scene, 5);
        Receiver.AtPoint receiver = new Receiver.AtPoint("p", point, Vector3D.Unit.PLUS_Z);
        Estimate once =
                transport.batch(receiver, LightClass.ONCE_REFLECTED, 0, 400_000).irradiance();
        double error = Math.hypot(once.standardError(), 0.3 * cosine * lit.standardError());
        assertThat(lit.mean()).isBetween(0.2 * seen.mean(), 0.9 * seen.mean());
        // The angle of the light changes by 50 mm / 1e5 mm at most, and so the cosine by less than 6e-4.
        assertThat(once.mean()).isCloseTo(0.3 * cosine * lit.mean(), within(6e-4 * once.mean() + STUDENT * error));
        for (HemisphereTally bundle : bundles) {
            assertThat(bundle.lit(ReferenceStage.surface(scene, "roof").index()))
                    .isZero();
        }
    }

    /** A surface that sends once-reflected light by the estimate of checks is seen and lit, and what is never lit sends none. */
    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6})
    void onlyWhatIsSeenAndLitSendsOnceReflectedLight(long seed) {
        Scene scene = new RandomScenes(seed).open(12);
        Vector3D point = Vector3D.of(0.3, 0.2, 1e-6);
        List<HemisphereTally> bundles = look(scene, Optional.empty(), point, Vector3D.Unit.PLUS_Z, 200);
        Tally once = Transport.of(scene, seed)
                .batch(new Receiver.AtPoint("p", point, Vector3D.Unit.PLUS_Z), LightClass.ONCE_REFLECTED, 0, 200_000);
        double all = once.irradiance().mean();
        int sending = 0;
        for (Map.Entry<Reflector, Estimate> each : once.by().entrySet()) {
            Reflector reflector = each.getKey();
            // Rarer than one in some thousand rays would be chance.
            if (reflector.part() == Reflector.Part.DIFFUSE && each.getValue().mean() > 0.02 * all) {
                sending++;
                assertThat(bundles.stream()
                                .mapToLong(bundle -> bundle.lit(reflector.surface()))
                                .sum())
                        .as(scene.surfaces().get(reflector.surface()).name())
                        .isPositive();
            }
        }
        int lighted = 0;
        for (Surface surface : scene.surfaces()) {
            long lit = bundles.stream()
                    .mapToLong(bundle -> bundle.lit(surface.index()))
                    .sum();
            if (lit > 200 && surface.finish().diffuse() > 0) {
                lighted++;
                assertThat(once.by())
                        .as(surface.name())
                        .containsKey(new Reflector(surface.index(), Reflector.Part.DIFFUSE));
            }
        }
        assertThat(sending).isPositive();
        assertThat(lighted).isPositive();
    }
}
