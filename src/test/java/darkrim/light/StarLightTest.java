package darkrim.light;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import darkrim.diagnostic.Place;
import darkrim.geom.Frame;
import darkrim.geom.Polygon;
import darkrim.geom.Ring;
import darkrim.reflection.Reflection;
import darkrim.reflection.Samples;
import darkrim.sampling.Streams;
import darkrim.scene.Beam;
import darkrim.scene.FieldLimit;
import darkrim.scene.Finish;
import darkrim.scene.Pupil;
import darkrim.scene.Scene;
import darkrim.scene.SceneBuilder;
import darkrim.scene.Surface;
import darkrim.trace.FacetTree;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Seeds are fixed. Comparisons within 3 standard errors would fail for one seed in 370 each. */
class StarLightTest {
    private static final Frame DOWN = Frame.of(Vector3D.of(0, 0, 100), Vector3D.Unit.PLUS_X, Vector3D.Unit.MINUS_Y);
    private static final Beam BEAM = Beam.of(new Pupil(Ring.disc(15), DOWN));

    static Stream<Samples.Named> finishes() {
        return Samples.all();
    }

    private static FacetTree tree(Scene scene) {
        return FacetTree.build(scene.corners(), scene.copyPlanes(), scene.bound());
    }

    private static StarTally follow(Scene scene, List<Surface> receivers, Vector3D focus, int across) {
        return new StarLight(scene, tree(scene), receivers, 7).batch(focus, 0, across);
    }

    private static Surface surface(Scene scene, String name) {
        return scene.surface(name).orElseThrow();
    }

    /** A Lambertian plate that leans over a patch on the floor. */
    private static Scene plate(double diffuse, Beam beam) {
        return new SceneBuilder()
                .sheet("patch", Finish.ABSORBER, "patch/back", Finish.ABSORBER, Place.IN_CODE)
                .sheet("plate", new Finish("grey", diffuse, 0), "plate/back", Finish.ABSORBER, Place.IN_CODE)
                .quad("patch", at(-4, -3, 0), at(5, -3, 0), at(5, 3, 0), at(-4, 3, 0))
                .quad("plate", at(8, -9, 4), at(16, -9, 16), at(16, 9, 16), at(8, 9, 4))
                .build(beam);
    }

    private static Vector3D at(double x, double y, double z) {
        return Vector3D.of(x, y, z);
    }

    /**
     * View factor from an element to a polygon that lies in front of it: F = 1/(2 pi) sum theta_i n . gamma_i (Lambert 1760; Howell, Menguc,
     * Siegel, ch. 5, chapter from memory). Corners clockwise as seen from the element's front.
     */
    private static double viewFactor(Vector3D x, Vector3D normal, List<Vector3D> corners) {
        double sum = 0;
        for (int i = 0; i < corners.size(); i++) {
            Vector3D a = corners.get(i).subtract(x);
            Vector3D b = corners.get((i + 1) % corners.size()).subtract(x);
            Vector3D cross = a.cross(b);
            sum += Math.atan2(cross.norm(), a.dot(b)) * cross.normalize().dot(normal);
        }
        return Math.abs(sum) / (2 * Math.PI);
    }

    /** Where rays from points spread evenly over the pupil toward a focus meet the plate: the mean of the view factor there, by the midpoint rule. */
    private static double quadrature(Vector3D focus) {
        List<Vector3D> patch = List.of(at(-4, -3, 0), at(5, -3, 0), at(5, 3, 0), at(-4, 3, 0));
        Vector3D normal = Vector3D.of(-12, 0, 8).normalize();
        int steps = 200;
        double[] inPupil = new double[2];
        double sum = 0;
        for (int i = 0; i < steps * steps; i++) {
            int row = i / steps;
            BEAM.pupil().outline().place((i % steps + 0.5) / steps, (row + 0.5) / steps, inPupil);
            Vector3D p = DOWN.at(inPupil[0], inPupil[1]);
            Vector3D way = focus.subtract(p);
            double t = at(8, 0, 4).subtract(p).dot(normal) / way.dot(normal);
            sum += viewFactor(p.add(way.multiply(t)), normal, patch);
        }
        return sum / (steps * steps);
    }

    @Test
    void aStarInFocusOnALeaningPlateGivesThePatchTheViewFactorOfOnePoint() {
        Vector3D onPlate = at(11, 1, 8.5);
        Scene scene = plate(0.3, BEAM);
        StarTally found = follow(scene, List.of(surface(scene, "patch")), onPlate, 150);
        double exact = 0.3
                * viewFactor(
                        onPlate,
                        Vector3D.of(-12, 0, 8).normalize(),
                        List.of(at(-4, -3, 0), at(5, -3, 0), at(5, 3, 0), at(-4, 3, 0)));
        assertThat(found.total().standardError()).isLessThan(0.01 * exact);
        assertThat(found.total().mean())
                .isCloseTo(exact, within(3 * found.total().standardError()));
        assertThat(quadrature(onPlate)).isCloseTo(exact / 0.3, within(1e-9));
    }

    /** Foci above the plate, below it, and far below it. */
    @ParameterizedTest
    @ValueSource(doubles = {20, 3, -2})
    void aStarOutOfFocusGivesThePatchTheMeanViewFactorOfItsSpot(double defocus) {
        Vector3D focus = at(12, 1, defocus);
        Scene scene = plate(0.3, BEAM);
        StarTally found = follow(scene, List.of(surface(scene, "patch")), focus, 150);
        double exact = 0.3 * quadrature(focus);
        assertThat(found.total().standardError()).isLessThan(0.02 * exact);
        assertThat(found.total().mean())
                .isCloseTo(exact, within(3 * found.total().standardError()));
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("finishes")
    void followedAndGatheredLightAgreeForEveryFinish(Samples.Named finish) {
        for (double lean : new double[] {0, 8}) {
            Scene scene = FinishedScenes.wall(finish.reflection(), lean);
            Vector3D focus = at(20, 2, -6);
            Surface floor = surface(scene, "floor");
            StarTally forward = follow(scene, List.of(floor), focus, 200);
            Estimate back = new GatheredStar(scene, tree(scene), focus)
                    .share(floor, surface(scene, "wall"), new Streams(3).stream("gathered " + lean, 0), 60_000);
            double error = Math.hypot(forward.total().standardError(), back.standardError());
            assertThat(forward.total().mean()).as("lean %s", lean).isCloseTo(back.mean(), within(3 * error));
            assertThat(error).isLessThan(0.05 * back.mean() + 1e-9);
        }
    }

    /** All that is reflected in a closed box arrives on its inside, and all that comes in has arrived once before. */
    @Test
    void nothingIsLostInAClosedBox() {
        double rho = 0.7;
        Finish grey = new Finish("grey", rho, 0);
        SceneBuilder builder = new SceneBuilder();
        for (String name : List.of("low", "high", "-x", "+x", "-y", "+y")) {
            builder.sheet(name, grey, name + "/back", Finish.ABSORBER, Place.IN_CODE);
        }
        Scene scene = builder.quad("low", at(-20, -20, -5), at(20, -20, -5), at(20, 20, -5), at(-20, 20, -5))
                .quad("high", at(-20, -20, 120), at(-20, 20, 120), at(20, 20, 120), at(20, -20, 120))
                .quad("-x", at(-20, -20, -5), at(-20, 20, -5), at(-20, 20, 120), at(-20, -20, 120))
                .quad("+x", at(20, -20, -5), at(20, -20, 120), at(20, 20, 120), at(20, 20, -5))
                .quad("-y", at(-20, -20, -5), at(-20, -20, 120), at(20, -20, 120), at(20, -20, -5))
                .quad("+y", at(-20, 20, -5), at(20, 20, -5), at(20, 20, 120), at(-20, 20, 120))
                .build(BEAM);
        List<Surface> inside =
                scene.surfaces().stream().filter(each -> !each.back()).toList();
        StarTally found = follow(scene, inside, at(19, 3, 2), 100);
        assertThat(found.direct().stream().mapToDouble(Estimate::mean).sum()).isCloseTo(1, within(1e-12));
        assertThat(found.total().mean()).isCloseTo(rho, within(3 * found.total().standardError()));
        assertThat(found.once().stream().mapToDouble(Estimate::mean).sum())
                .isCloseTo(found.total().mean(), within(1e-12));
        assertThat(found.by().values().stream().mapToDouble(Estimate::mean).sum())
                .isCloseTo(found.total().mean(), within(1e-12));
    }

    /** A mirror in the way sends every ray on to the floor: a share of exactly what it reflects, without error. */
    @Test
    void aMirrorThatTakesAllLightSendsItsReflectanceOn() {
        Scene scene = FinishedScenes.wall(Reflection.of(0, 0.8), 6);
        Vector3D focus = at(22, 0, 0);
        StarTally found = follow(scene, List.of(surface(scene, "floor")), focus, 40);
        assertThat(found.total().mean()).isCloseTo(0.8, within(1e-12));
        assertThat(found.total().standardError()).isLessThan(1e-12);
    }

    @Test
    void theFieldLimitStopsAStarBeyondIt() {
        FieldLimit limit = new FieldLimit(Polygon.rectangle(20, 20), Frame.LAYOUT);
        Beam limited = new Beam(BEAM.pupil(), Optional.of(limit), OptionalDouble.empty());
        Scene scene = plate(0.3, limited);
        assertThat(follow(scene, List.of(surface(scene, "patch")), at(12, 1, 0), 20)
                        .total()
                        .mean())
                .isZero();
        Scene open = plate(0.3, BEAM);
        assertThat(follow(open, List.of(surface(open, "patch")), at(12, 1, 0), 20)
                        .total()
                        .mean())
                .isPositive();
    }

    @Test
    void theImageItselfIsKeptApart() {
        Scene scene = plate(0.3, BEAM);
        StarTally found = follow(scene, List.of(surface(scene, "patch")), at(1, 1, 0), 20);
        assertThat(found.direct().get(0).mean()).isEqualTo(1);
        assertThat(found.total().mean()).isZero();
    }

    @Test
    void batchesAddUpToTheirMean() {
        Scene scene = plate(0.3, BEAM);
        StarLight light = new StarLight(scene, tree(scene), List.of(surface(scene, "patch")), 7);
        StarTally one = light.batch(at(12, 1, 0), 0, 20);
        StarTally two = light.batch(at(12, 1, 0), 1, 20);
        StarTally both = StarTally.none(1).and(one).and(two);
        assertThat(both.samples()).isEqualTo(800);
        assertThat(both.total().mean())
                .isCloseTo((one.total().mean() + two.total().mean()) / 2, within(1e-15));
        assertThat(one.total().mean()).isNotEqualTo(two.total().mean());
    }

    @Test
    void aFocusBehindThePupilIsRefused() {
        Scene scene = plate(0.3, BEAM);
        StarLight light = new StarLight(scene, tree(scene), List.of(), 7);
        assertThatThrownBy(() -> light.batch(at(0, 0, 120), 0, 2)).hasMessageContaining("in front of the pupil");
    }
}
