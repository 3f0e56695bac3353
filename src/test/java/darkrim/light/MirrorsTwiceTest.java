package darkrim.light;

import static darkrim.light.CornerScene.FACING;
import static darkrim.light.CornerScene.POINT;
import static darkrim.light.CornerScene.PUPIL;
import static darkrim.light.CornerScene.agree;
import static darkrim.light.CornerScene.at;
import static darkrim.light.CornerScene.turned;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import darkrim.diagnostic.Place;
import darkrim.geom.Frame;
import darkrim.geom.Ring;
import darkrim.layout.Requirement.LightClass;
import darkrim.light.PlateSums.Element;
import darkrim.scene.Beam;
import darkrim.scene.Finish;
import darkrim.scene.Pupil;
import darkrim.scene.Scene;
import darkrim.scene.SceneBuilder;
import darkrim.scene.Window;
import darkrim.trace.FacetTree;
import java.util.List;
import java.util.OptionalDouble;
import java.util.function.UnaryOperator;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Images of images (image method, any optics text): at tilted points, by sums over the pupil. Comparisons at 5 standard errors fail for 6e-7 of all seeds. */
class MirrorsTwiceTest {
    private static FacetTree tree(Scene scene) {
        return FacetTree.build(scene.corners(), scene.copyPlanes(), scene.bound());
    }

    /** Irradiance of a pupil that is moved as an image is, each of its pieces as bright as before. */
    private static double irradiance(Pupil pupil, Vector3D point, Vector3D facing, UnaryOperator<Vector3D> image) {
        double sum = 0;
        for (Element piece : PlateSums.pupil(pupil, 20)) {
            Vector3D way = image.apply(piece.at()).subtract(point);
            Vector3D normal = image.apply(piece.at().add(piece.normal())).subtract(image.apply(piece.at()));
            double cosines =
                    Math.max(0, way.normalize().dot(facing)) * -way.normalize().dot(normal);
            sum += cosines * piece.area() / way.normSq();
        }
        return sum;
    }

    /** Two wide mirrors that meet at the z axis, on the fronts or on the backs of their sheets. */
    private static Scene corner(boolean onBacks) {
        Finish left = new Finish("left", 0, 0.9);
        Finish right = new Finish("right", 0, 0.7);
        List<Vector3D> onLeft = List.of(at(0, 0, -300), at(0, 300, -300), at(0, 300, 90), at(0, 0, 90));
        List<Vector3D> onRight = List.of(at(0, 0, -300), at(0, 0, 90), at(300, 0, 90), at(300, 0, -300));
        SceneBuilder builder = new SceneBuilder();
        if (onBacks) {
            builder.sheet("left", Finish.ABSORBER, "left/back", left, Place.IN_CODE)
                    .sheet("right", Finish.ABSORBER, "right/back", right, Place.IN_CODE);
            onLeft = reversed(onLeft);
            onRight = reversed(onRight);
        } else {
            builder.sheet("left", left, "left/back", Finish.ABSORBER, Place.IN_CODE)
                    .sheet("right", right, "right/back", Finish.ABSORBER, Place.IN_CODE);
        }
        quad(builder, "left", onLeft);
        quad(builder, "right", onRight);
        return builder.build(Beam.of(PUPIL));
    }

    private static List<Vector3D> reversed(List<Vector3D> corners) {
        return List.of(corners.get(3), corners.get(2), corners.get(1), corners.get(0));
    }

    private static void quad(SceneBuilder builder, String name, List<Vector3D> corners) {
        builder.quad(
                name, turned(corners.get(0)), turned(corners.get(1)), turned(corners.get(2)), turned(corners.get(3)));
    }

    /** In the corner of two wide mirrors the image of the image is the same for both orders: the pupil turned by half a turn about the edge. */
    @ParameterizedTest
    @ValueSource(booleans = {false, true})
    void aCornerOfTwoMirrorsShowsThePupilTurnedAboutItsEdge(boolean onBacks) {
        Scene scene = corner(onBacks);
        Vector3D x = turned(at(1, 0, 0));
        Vector3D y = turned(at(0, 1, 0));
        UnaryOperator<Vector3D> left = p -> p.subtract(x.multiply(2 * p.dot(x)));
        UnaryOperator<Vector3D> right = p -> p.subtract(y.multiply(2 * p.dot(y)));
        PathTally found = new ManyReflections(scene, tree(scene), 7)
                .batch(new Receiver.AtPoint("point", POINT, FACING), 3, 0, 60_000);
        double reference = scene.referenceIrradiance();
        double byLeft = 0.9 * irradiance(PUPIL, POINT, FACING, left) / reference;
        double byRight = 0.7 * irradiance(PUPIL, POINT, FACING, right) / reference;
        agree("once", found.orders().get(1), byLeft + byRight, 0.02);
        Tally once = Transport.of(scene, 9)
                .batch(new Receiver.AtPoint("point", POINT, FACING), LightClass.ONCE_REFLECTED, 0, 10_000);
        agree("by the first", once.by().get(once.by().firstKey()), byLeft, 0.03);
        agree("by the second", once.by().get(once.by().lastKey()), byRight, 0.03);
        assertThat(once.by()).hasSize(2);
        double twice = 0.9 * 0.7 * irradiance(PUPIL, POINT, FACING, p -> left.apply(right.apply(p)));
        agree("twice", found.orders().get(2), twice / reference, 0.06);
        // A third time there is none to be seen in a square corner.
        assertThat(found.orders().get(3).mean()).isZero();
        assertThat(found.reflected().mean())
                .isCloseTo(found.orders().get(1).mean() + found.orders().get(2).mean(), within(1e-12));
    }

    /**
     * A mirror on the floor under a coated plate of index 1: light that the plate throws back after k round trips in it comes from a pupil that is
     * higher by 2 (bottom + k thickness).
     */
    @Test
    void aMirrorUnderAWindowShowsThePupilFromAsFarAsItsLightWent() {
        Pupil pupil = new Pupil(new Ring(50, 10), Frame.of(at(6, -4, 60), at(0.8, 0.6, 0), at(0.6, -0.8, 0)));
        Window pane = new Window("pane", 15, 6, 1, OptionalDouble.of(0.4), OptionalDouble.of(0.3), 1);
        Scene scene = new SceneBuilder()
                .sheet("mirror", new Finish("mirror", 0, 0.8), "back", Finish.ABSORBER, Place.IN_CODE)
                .quad("mirror", at(-4e3, -4e3, 0), at(4e3, -4e3, 0), at(4e3, 4e3, 0), at(-4e3, 4e3, 0))
                .build(Beam.of(pupil).through(pane));
        Vector3D point = at(-9, 5, 3);
        Vector3D facing = at(-0.3, 0.4, 1).normalize();
        double expected = 0;
        for (int k = 0; k < 20; k++) {
            double back = k == 0 ? 0.4 : 0.36 * Math.pow(0.3, k) * Math.pow(0.4, k - 1);
            double higher = 2 * (15 + 6 * k);
            expected += back * irradiance(pupil, point, facing, p -> p.add(at(0, 0, higher)));
        }
        double passes = 0.6 * 0.7 / (1 - 0.12);
        PathTally found = new ManyReflections(scene, tree(scene), 5)
                .batch(new Receiver.AtPoint("point", point, facing), 2, 0, 60_000);
        Estimate twice = found.orders().get(2);
        agree("twice", twice, 0.8 * passes * expected / scene.referenceIrradiance(), 0.03);
        assertThat(found.by()).hasSize(1);
        assertThat(found.by().firstKey().reflectors())
                .isEqualTo(List.of(
                        new Reflector(scene.surface("mirror").orElseThrow().index(), Reflector.Part.MIRROR),
                        new Reflector(scene.surfaces().size(), Reflector.Part.MIRROR)));
        // From over the mirror the pupil is seen straight through the pane, and nothing else.
        agree(
                "direct",
                found.orders().get(0),
                passes * irradiance(pupil, point, facing, p -> p) / scene.referenceIrradiance(),
                0.02);
    }

    /** One mirror and a pupil that leans by 40 degrees, so that each of its axes has a part along every axis of the layout. */
    @Test
    void aMirrorShowsALeaningPupilWhereItIs() {
        Pupil leaning = new Pupil(new Ring(30, 5), Frame.about(turned(at(30, 20, 60)), turned(at(-0.7, 0.5, -1))));
        SceneBuilder builder = new SceneBuilder()
                .sheet("left", new Finish("left", 0, 0.9), "left/back", Finish.ABSORBER, Place.IN_CODE);
        quad(builder, "left", List.of(at(0, -300, -300), at(0, 300, -300), at(0, 300, 300), at(0, -300, 300)));
        Scene scene = builder.build(Beam.of(leaning));
        Vector3D x = turned(at(1, 0, 0));
        double expected = 0.9 * irradiance(leaning, POINT, FACING, p -> p.subtract(x.multiply(2 * p.dot(x))));
        Receiver point = new Receiver.AtPoint("point", POINT, FACING);
        Estimate found = Transport.of(scene, 9)
                .batch(point, LightClass.ONCE_REFLECTED, 0, 40_000)
                .irradiance();
        assertThat(found.mean() * scene.referenceIrradiance())
                .isCloseTo(
                        expected, within(0.003 * expected + 5 * found.standardError() * scene.referenceIrradiance()));
        assertThat(found.standardError()).isLessThan(0.005 * found.mean());
    }
}
