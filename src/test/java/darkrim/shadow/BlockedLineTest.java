package darkrim.shadow;

import static org.assertj.core.api.Assertions.assertThat;

import darkrim.geom.Frame;
import darkrim.geom.Ring;
import darkrim.scene.Beam;
import darkrim.scene.FieldLimit;
import darkrim.scene.Scene;
import darkrim.scene.Window;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Test;

/** A line counts as blocked, or as clear, only where neither rounding nor a window leaves a doubt. */
class BlockedLineTest {
    private static Optional<WitnessRay> blocked(Scene scene, double u, double v, Vector3D to) {
        Tolerance tolerance = Tolerance.of(scene.bound(), 1e-6);
        return new BlockedLine(scene, TestParts.tree(scene), scene.corners(), tolerance)
                .between(new double[] {u, v}, floor(scene, tolerance), to, "floor");
    }

    private static Optional<WitnessRay> clear(Scene scene, double u, double v, Vector3D to) {
        Tolerance tolerance = Tolerance.of(scene.bound(), 1e-6);
        return new ClearLine(scene, TestParts.tree(scene), scene.corners(), tolerance)
                .between(new double[] {u, v}, floor(scene, tolerance), to, "floor");
    }

    private static Face floor(Scene scene, Tolerance tolerance) {
        return new FaceMerge(scene, scene.surface("floor").orElseThrow(), tolerance)
                .pieces()
                .get(0);
    }

    private static TestParts parts() {
        return new TestParts().sheet("floor", -5, 5, -5, 5, 0);
    }

    /** The pupil's v runs against y. */
    @Test
    void aLineIsBlockedWithinAFacetAndNotAlongItsSides() {
        Scene scene = parts().sheet("lid", 1, 3, -2, 2, 50).build(Beam.of(TestParts.pupilAt(100, Ring.disc(10))));
        WitnessRay found = blocked(scene, 4, 1, Vector3D.of(1, 1.5, 0)).orElseThrow();
        assertThat(found.from().distance(Vector3D.of(4, -1, 100))).isLessThan(1e-12);
        assertThat(found.to()).isEqualTo(Vector3D.of(1, 1.5, 0));
        assertThat(found.toSurface()).isEqualTo("floor");
        // Past it; along its side; along the diagonal where its facets meet; from outside the pupil; to a point behind.
        assertThat(blocked(scene, -4, 1, Vector3D.of(1, 1.5, 0))).isEmpty();
        assertThat(blocked(scene, 2, 1, Vector3D.of(0, 1.5, 0))).isEmpty();
        assertThat(blocked(scene, 3, 0, Vector3D.of(1, 0, 0))).isEmpty();
        assertThat(blocked(scene, 9, -9, Vector3D.of(-5, -5, 0))).isEmpty();
        assertThat(blocked(scene, 4, 1, Vector3D.of(1, 1.5, 120))).isEmpty();
    }

    @Test
    void aLineThatMissesTheFieldLimitIsBlocked() {
        FieldLimit limit = new FieldLimit(Ring.disc(2), Frame.about(Vector3D.of(0, 0, 50), Vector3D.Unit.PLUS_Z));
        Scene scene = parts().build(
                        new Beam(TestParts.pupilAt(100, Ring.disc(10)), Optional.of(limit), OptionalDouble.empty()));
        assertThat(blocked(scene, 5, 0, Vector3D.of(0, 0, 0))).isPresent();
        assertThat(blocked(scene, 3, 0, Vector3D.of(0, 0, 0))).isEmpty();
        assertThat(clear(scene, 5, 0, Vector3D.of(0, 0, 0))).isEmpty();
        assertThat(clear(scene, 3, 0, Vector3D.of(0, 0, 0))).isPresent();
    }

    /** Straight lines through a window come from a wider pupil: those from its rim may come from beyond the true one. */
    @Test
    void throughAWindowOnlyLinesThatSurelyComeFromThePupilCount() {
        Window window = new Window("window", 60, 6, 1.5, OptionalDouble.empty(), OptionalDouble.empty(), 1);
        Beam beam = Beam.of(TestParts.pupilAt(100, Ring.disc(10))).through(window);
        Scene open = parts().sheet("far", 30, 31, 30, 31, 0).build(beam);
        Scene lid = parts().sheet("lid", -20, 20.5, -20, 20, 30).build(beam);
        double rim = open.covering().pupil().outline().reach() * (1 - 1e-9);
        for (Vector3D to : List.of(Vector3D.of(4, 0, 0), Vector3D.of(-4, 0, 0))) {
            double away = -Math.signum(to.getX());
            for (double share : new double[] {0, 0.5, 0.9}) {
                assertThat(blocked(lid, away * share * 10, 0, to)).isPresent();
                assertThat(clear(open, away * share * 10, 0, to)).isPresent();
                assertThat(blocked(open, away * share * 10, 0, to)).isEmpty();
                assertThat(clear(lid, away * share * 10, 0, to)).isEmpty();
            }
            boolean shines = open.beam()
                    .surelyShines(
                            to,
                            open.covering().pupil().frame().at(away * rim, 0).subtract(to));
            assertThat(blocked(lid, away * rim, 0, to).isPresent()).isEqualTo(shines);
            assertThat(clear(open, away * rim, 0, to).isPresent()).isEqualTo(shines);
            // Straight up from the point the pupil ends at its own radius.
            assertThat(blocked(lid, -away * rim, 0, Vector3D.of(-away * rim, 0, 0)))
                    .isEmpty();
            assertThat(clear(open, -away * rim, 0, Vector3D.of(-away * rim, 0, 0)))
                    .isEmpty();
        }
    }
}
