package darkrim.shadow;

import static org.assertj.core.api.Assertions.assertThat;

import darkrim.geom.Frame;
import java.util.Optional;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Test;

class IsDarkBeyondTest {
    private static final Tolerance TOLERANCE = new Tolerance(1e-9, 4e-9, 256e-9);
    private static final Frame DOWN = Frame.about(Vector3D.of(0, 0, 10), Vector3D.Unit.MINUS_Z);

    /** Never dark; every line is a counterexample. */
    private static final class Open implements Question {
        @Override
        public boolean holds(Shaft shaft, Pair pair, int[] facets) {
            return false;
        }

        @Override
        public boolean holdsAfterAll(Shaft shaft, Pair pair, int[] facets) {
            return facets.length > 0;
        }

        @Override
        public int openCount() {
            return 5;
        }

        @Override
        public int open(int number) {
            return 10 + number;
        }

        @Override
        public Optional<WitnessRay> counterexample(double[] pupilPoint, Face face, Vector3D end) {
            return Optional.of(new WitnessRay(end, end, ""));
        }

        @Override
        public Optional<Aim> aim(Pair pair) {
            return Optional.empty();
        }
    }

    private static FlatPiece square(Frame frame, double half) {
        return FlatPiece.of(frame, new double[] {-half, -half, half, -half, half, half, -half, half});
    }

    private static Pair pair(double x, double y) {
        return new Pair(
                square(DOWN, 2), square(Frame.about(Vector3D.of(x, y, 0), Vector3D.Unit.PLUS_Z), 1), 0, TOLERANCE);
    }

    private static IsDarkBeyond beyond(double angle) {
        return new IsDarkBeyond(new Open(), DOWN, angle, TOLERANCE);
    }

    /** From the corner (-2, -2) of the pupil to the corner (x + 1, y + 1) of the face, 10 below. */
    @Test
    void itHoldsWhereTheSteepestLineIsNearerToTheAxisThanTheAngle() {
        double[][] places = {{0, 0}, {3, 4}, {-3, 4}, {-7, -2}, {0, 9}};
        for (double[] place : places) {
            double across = Math.hypot(Math.abs(place[0]) + 3, Math.abs(place[1]) + 3);
            double angle = Math.toDegrees(Math.atan(across / 10));
            Pair pair = pair(place[0], place[1]);
            assertThat(beyond(angle + 1e-5).holds(pair.shaft(), pair, new int[0]))
                    .isTrue();
            assertThat(beyond(angle - 1e-5).holds(pair.shaft(), pair, new int[0]))
                    .isFalse();
        }
    }

    @Test
    void aLineThatMakesAtLeastTheAngleIsACounterexample() {
        // 10 down and 10 across: 45 degrees; DOWN's origin is the start.
        Face face = new Face(pair(0, 0).face(), 0);
        double[] middle = {0, 0};
        assertThat(beyond(44.9).counterexample(middle, face, Vector3D.of(6, 8, 0)))
                .isPresent();
        assertThat(beyond(45.1).counterexample(middle, face, Vector3D.of(6, 8, 0)))
                .isEmpty();
        assertThat(beyond(0).counterexample(middle, face, Vector3D.of(0, 0, 0))).isPresent();
        assertThat(beyond(1).counterexample(middle, face, Vector3D.of(0, 0, 0))).isEmpty();
    }

    @Test
    void theAimIsAcrossTheAxisAwayFromTheFace() {
        Question.Aim aim = beyond(30).aim(pair(3, 4)).orElseThrow();
        assertThat(aim.pupil().distance(Vector3D.of(-3, -4, 0))).isLessThan(1e-12);
        assertThat(aim.face().distance(Vector3D.of(3, 4, 0))).isLessThan(1e-12);
        assertThat(beyond(30).aim(pair(0, 0))).isEmpty();
    }

    @Test
    void theRestIsAskedOfTheOther() {
        Pair pair = pair(0, 0);
        assertThat(beyond(1).holdsAfterAll(pair.shaft(), pair, new int[1])).isTrue();
        assertThat(beyond(1).holdsAfterAll(pair.shaft(), pair, new int[0])).isFalse();
        assertThat(beyond(1).openCount()).isEqualTo(5);
        assertThat(beyond(1).open(2)).isEqualTo(12);
    }

    /** At 45 degrees, 1 mm across for each of the 10 down and 0.2 for rounding of 0.1: the farthest corner lies 3 + x across. */
    @Test
    void aLineBelowTheAngleByLessThanRoundingMayStillMakeIt() {
        Tolerance coarse = new Tolerance(0.1, 0.4, 25.6);
        IsDarkBeyond beyond = new IsDarkBeyond(new Open(), DOWN, 45, coarse);
        for (double excess : new double[] {-0.25, -0.15, -0.05, 0.05, 0.15, 0.25}) {
            FlatPiece face = FlatPiece.of(
                    Frame.about(Vector3D.of(7 + excess, 0, 0), Vector3D.Unit.PLUS_Z),
                    new double[] {-1, -1e-9, 1, -1e-9, 1, 1e-9, -1, 1e-9});
            FlatPiece pupil = FlatPiece.of(DOWN, new double[] {-2, -1e-9, 2, -1e-9, 2, 1e-9, -2, 1e-9});
            Pair pair = new Pair(pupil, face, 0, coarse);
            assertThat(beyond.holds(pair.shaft(), pair, new int[0])).isEqualTo(excess < -0.2);
        }
    }
}
