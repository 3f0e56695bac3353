package darkrim.shadow;

import static org.assertj.core.api.Assertions.assertThat;

import darkrim.geom.Frame;
import darkrim.geom.Polygon;
import darkrim.scene.Beam;
import darkrim.scene.Scene;
import darkrim.scene.Surface;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Test;

/** A line is light only if it misses all that stands on its way beyond doubt. */
class ClearLineTest {
    private static final int TRIES = 400;

    private final SplittableRandom random = new SplittableRandom(8);

    /** A scene with a floor at z = 0, lines to it, and how they were answered. */
    private record Lines(Scene scene, ClearLine lines, Face floor) {
        static Lines in(Scene scene) {
            Tolerance tolerance = Tolerance.of(scene.bound(), ProofSettings.DEFAULT.gapWidth());
            Surface floor = scene.surface("floor").orElseThrow();
            List<Face> faces = new FaceMerge(scene, floor, tolerance).pieces();
            return new Lines(
                    scene, new ClearLine(scene, TestParts.tree(scene), scene.corners(), tolerance), faces.get(0));
        }

        Optional<WitnessRay> between(Vector3D from, Vector3D to) {
            Frame pupil = scene.covering().pupil().frame();
            return lines.between(new double[] {pupil.inU(from), pupil.inV(from)}, floor, to, "floor");
        }
    }

    private double about(double most) {
        return random.nextDouble(-most, most);
    }

    private static TestParts parts() {
        return new TestParts().sheet("floor", -5, 5, -5, 5, 0);
    }

    private static Beam beam() {
        return Beam.of(TestParts.pupilAt(10, Polygon.rectangle(40, 40)));
    }

    /** An edge from p to q is the side of a sheet that hangs from it away from the axis; the line runs through a point of that edge. */
    @Test
    void aLineThatRunsAlongAnEdgeToTheLastBitIsNotTakenForClear() {
        for (int i = 0; i < TRIES; i++) {
            Vector3D p = Vector3D.of(about(3), about(3), random.nextDouble(2, 8));
            Vector3D q = Vector3D.of(about(3), about(3), random.nextDouble(2, 8));
            Vector3D on = p.lerp(q, random.nextDouble(0.1, 0.9));
            Vector3D to = Vector3D.of(about(4), about(4), 0);
            // Where the line through both comes from, at z = 10.
            Vector3D from = to.lerp(on, 10 / on.getZ());
            Vector3D side = q.subtract(p).cross(from.subtract(to)).normalize().multiply(i % 2 == 0 ? 2 : -2);
            Scene scene = parts().sheet("sheet", p, q, q.add(side), p.add(side)).build(beam());
            if (Math.max(Math.abs(from.getX()), Math.abs(from.getY())) < 19) {
                Lines lines = Lines.in(scene);
                assertThat(lines.between(from, to)).as("%d", i).isEmpty();
                // A millionth beside it the line is clear, as much to the other side it is not.
                Vector3D off = side.multiply(1e-6);
                assertThat(lines.between(from.subtract(level(off, from, to)), to.subtract(level(off, from, to))))
                        .as("%d", i)
                        .isPresent();
                assertThat(lines.between(from.add(level(off, from, to)), to.add(level(off, from, to))))
                        .as("%d", i)
                        .isEmpty();
            }
        }
    }

    /** A step aside along the line's own slope, so that it stays level. */
    private static Vector3D level(Vector3D step, Vector3D from, Vector3D to) {
        Vector3D way = to.subtract(from);
        return step.subtract(way.multiply(step.getZ() / way.getZ()));
    }

    @Test
    void whatLiesInThePlaneOfTheFaceOrOfThePupilOrBehindThemIsNotInTheWay() {
        Scene scene = parts().sheet("beside", 5, 9, -5, 5, 0)
                .sheet("below", -9, 9, -9, 9, -1)
                .sheet("in-pupil", 0, 4, -5, 5, 10)
                .sheet("above", -9, 9, -9, 9, 11)
                .build(beam());
        Lines lines = Lines.in(scene);
        // It starts on a side of a sheet in the pupil's plane, and ends where the two facets of the floor meet.
        for (Vector3D from : List.of(Vector3D.of(0, 1, 10), Vector3D.of(0, 0, 10), Vector3D.of(-3, -3, 10))) {
            for (Vector3D to : List.of(Vector3D.of(1, 1, 0), Vector3D.of(-2, -2, 0), Vector3D.of(2, -2, 0))) {
                assertThat(lines.between(from, to)).as("%s %s", from, to).isPresent();
            }
        }
    }

    @Test
    void aLineAlongAWallIsClearBesideItAndNotInItsPlane() {
        Scene scene = parts().sheet("wall-x", at(1, -4, 1), at(1, 4, 1), at(1, 4, 9), at(1, -4, 9))
                .sheet("wall-y", at(-4, -2, 1), at(0, -2, 1), at(0, -2, 9), at(-4, -2, 9))
                .build(beam());
        Lines lines = Lines.in(scene);
        for (double off : new double[] {-1e-5, 0, 1e-5}) {
            // Straight down, beside or in the wall, and past its end in its plane.
            assertThat(lines.between(at(1 + off, 0.3, 10), at(1 + off, 0.3, 0)).isPresent())
                    .isEqualTo(off != 0);
            assertThat(lines.between(at(-1.7, -2 + off, 10), at(-1.7, -2 + off, 0))
                            .isPresent())
                    .isEqualTo(off != 0);
            assertThat(lines.between(at(1 + off, 4.5, 10), at(1 + off, 4.5, 0))).isPresent();
            assertThat(lines.between(at(1 + off, -4.5, 10), at(1 + off, -4.5, 0)))
                    .isPresent();
            assertThat(lines.between(at(0.5, -2 + off, 10), at(0.5, -2 + off, 0)))
                    .isPresent();
            assertThat(lines.between(at(-4.5, -2 + off, 10), at(-4.5, -2 + off, 0)))
                    .isPresent();
        }
        // From one side of a wall to the other.
        assertThat(lines.between(at(2, 0, 10), at(0, 0, 0))).isEmpty();
        assertThat(lines.between(at(2, 4.2, 10), at(0, 4.2, 0))).isPresent();
    }

    private static Vector3D at(double x, double y, double z) {
        return Vector3D.of(x, y, z);
    }
}
