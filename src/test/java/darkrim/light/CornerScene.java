package darkrim.light;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import darkrim.diagnostic.Place;
import darkrim.geom.Frame;
import darkrim.geom.Ring;
import darkrim.light.PlateSums.Plate;
import darkrim.light.PlateSums.Step;
import darkrim.light.Reflector.Part;
import darkrim.reflection.AngleTable;
import darkrim.reflection.Fresnel;
import darkrim.reflection.ProductScatter;
import darkrim.reflection.Reflection;
import darkrim.reflection.RollOff;
import darkrim.scene.Beam;
import darkrim.scene.CellGrid;
import darkrim.scene.Finish;
import darkrim.scene.Pupil;
import darkrim.scene.Scene;
import darkrim.scene.SceneBuilder;
import darkrim.trace.FacetTree;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.apache.commons.geometry.euclidean.threed.rotation.QuaternionRotation;

/**
 * Two walls of all kinds of finish meet over a floor, all turned so that nothing lies along an axis. No part hides another from the floor, from a wall or
 * from the pupil.
 */
final class CornerScene {
    /** What the sums may be off by. */
    private static final double SUMS = 0.02;

    private static final QuaternionRotation TURN = QuaternionRotation.fromAxisAngle(Vector3D.of(0.3, -0.5, 0.8), 0.6);

    static final Plate FLOOR = plate("floor", at(6, 6, 0), at(24, 0, 0), at(0, 20, 0), Reflection.NONE);

    /** Mirrors, scatters and has a lobe. */
    static final Plate LEFT = plate(
            "left",
            at(0, 8, 6),
            at(0, 32, 0),
            at(0, 0, 64),
            Reflection.of(0.25, 0.2)
                    .and(new Reflection(
                            0, List.of(new Fresnel(3, 0, 0.3)), List.of(), List.of(new RollOff(0.05, 0.3, 1.5)))));

    /** Scatters more at a slant, and has a lobe, but no mirror: so no way has two mirrors one after the other. */
    static final Plate RIGHT = plate(
            "right",
            at(8, 0, 6),
            at(0, 0, 64),
            at(32, 0, 0),
            new Reflection(
                    0.1,
                    List.of(),
                    List.of(ProductScatter.of(new AngleTable(List.of(0.0, 90.0), List.of(0.1, 0.4)))),
                    List.of(new RollOff(0.1, 0.2, 1.5))));

    static final Pupil PUPIL =
            new Pupil(new Ring(15, 4), Frame.about(turned(at(30, 20, 100)), turned(at(-0.1, 0.05, -1))));

    static final Scene SCENE = scene(FLOOR);
    static final FacetTree TREE = FacetTree.build(SCENE.corners(), SCENE.copyPlanes(), SCENE.bound());

    static final Vector3D POINT = turned(at(20, 16, 0));
    static final Vector3D FACING = turned(at(-0.2, -0.1, 1)).normalize();

    static Vector3D at(double x, double y, double z) {
        return Vector3D.of(x, y, z);
    }

    static Vector3D turned(Vector3D vector) {
        return TURN.apply(vector);
    }

    static Plate plate(String name, Vector3D corner, Vector3D u, Vector3D v, Reflection reflection) {
        return new Plate(name, turned(corner), turned(u), turned(v), reflection);
    }

    static Scene scene(Plate floor) {
        return scene(floor, LEFT);
    }

    static Scene scene(Plate floor, Plate left) {
        SceneBuilder builder = new SceneBuilder();
        for (Plate plate : List.of(floor, left, RIGHT)) {
            builder.sheet(
                            plate.name(),
                            new Finish(plate.name(), plate.reflection()),
                            plate.name() + "/back",
                            Finish.ABSORBER,
                            Place.IN_CODE)
                    .quad(plate.name(), plate.at(0, 0), plate.at(1, 0), plate.at(1, 1), plate.at(0, 1));
        }
        builder.grid("floor", new CellGrid(floor.corner(), floor.u(), floor.v(), 3, 1));
        return builder.build(Beam.of(PUPIL));
    }

    static PlateSums sums(int cells, boolean byCosine) {
        return new PlateSums(PlateSums.pupil(PUPIL, 4), cells, byCosine);
    }

    static Receiver.OnSurface floor() {
        return new Receiver.OnSurface(SCENE.surface("floor").orElseThrow());
    }

    static String name(Step step) {
        return step.part() + " of " + step.plate().name();
    }

    static Reflector reflector(Step step) {
        return new Reflector(SCENE.surface(step.plate().name()).orElseThrow().index(), step.part());
    }

    static void agree(String what, Estimate found, double expected, double most) {
        assertThat(found.mean())
                .as("%s: %s", what, found)
                .isCloseTo(expected, within(5 * found.standardError() + SUMS * expected));
        assertThat(found.standardError()).as("%s: %s", what, found).isLessThan(most * expected);
    }

    /** The parts of both walls. */
    static Stream<Step> steps() {
        return Stream.concat(
                Arrays.stream(Part.values()).map(part -> new Step(LEFT, part)),
                Stream.of(new Step(RIGHT, Part.DIFFUSE), new Step(RIGHT, Part.LOBE)));
    }

    static double relative(double irradiance) {
        return irradiance / SCENE.referenceIrradiance();
    }

    private CornerScene() {}
}
