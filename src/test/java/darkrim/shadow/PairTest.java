package darkrim.shadow;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import darkrim.geom.Frame;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.apache.commons.geometry.euclidean.threed.rotation.QuaternionRotation;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class PairTest {
    private static final double ROUNDING = 1e-9;
    private static final double FLAT = 1e-7;
    private static final Tolerance TOLERANCE = new Tolerance(ROUNDING, FLAT, 64 * FLAT);

    /** All of it stands turned and moved, so that no coordinate is left out by chance. */
    private static final QuaternionRotation TURN =
            QuaternionRotation.fromAxisAngle(Vector3D.of(1, -2, 0.7), Math.toRadians(77));

    private static final Vector3D MOVE = Vector3D.of(3, -5, 2);

    private static Vector3D placed(double x, double y, double z) {
        return TURN.apply(Vector3D.of(x, y, z)).add(MOVE);
    }

    private static FlatPiece square(double half, double z, boolean up) {
        Frame frame = Frame.of(
                placed(0, 0, z),
                TURN.apply(Vector3D.Unit.PLUS_X),
                TURN.apply(up ? Vector3D.Unit.PLUS_Y : Vector3D.Unit.MINUS_Y));
        return FlatPiece.of(frame, new double[] {-half, -half, half, -half, half, half, -half, half});
    }

    private static Pair pair(double radius) {
        return new Pair(square(2, 10, false), square(1, 0, true), radius, TOLERANCE);
    }

    /** A number stands before the nine coordinates. */
    private static double[] triangle(double... nine) {
        double[] all = new double[10];
        all[0] = 55;
        for (int i = 0; i < 9; i += 3) {
            System.arraycopy(placed(nine[i], nine[i + 1], nine[i + 2]).toArray(), 0, all, 1 + i, 3);
        }
        return all;
    }

    @ParameterizedTest
    @CsvSource({
        "0.99e-7, true, false",
        "1.01e-7, false, false",
        "0.99e-9, true, true",
        "1.01e-9, true, false",
        "0, true, true"
    })
    void whatLiesInThePlaneOfTheFaceOrBehindItIsOutOfReach(double height, boolean out, boolean surely) {
        double[] t = triangle(0, 0, -1, 1, 0, height, 0, 1, -2);
        assertThat(pair(0).isOutOfReach(t, 1)).isEqualTo(out);
        assertThat(pair(0).isSurelyOutOfReach(t, 1)).isEqualTo(surely);
        assertThat(pair(0).isEdgeOutOfReach(t, 1)).isEqualTo(out);
        // A face that is moved leaves nothing behind it.
        assertThat(pair(0.1).isOutOfReach(t, 1)).isFalse();
        assertThat(pair(0.1).isSurelyOutOfReach(t, 1)).isFalse();
        assertThat(pair(0.1).isEdgeOutOfReach(t, 1)).isFalse();
    }

    @ParameterizedTest
    @CsvSource({"0.9e-7, true", "1.1e-7, false"})
    void whatLiesInThePlaneOfThePupilOrBehindItIsOutOfReach(double depth, boolean out) {
        double[] t = triangle(0, 0, 12, 1, 0, 10 - depth, 0, 1, 13);
        for (double radius : new double[] {0, 0.1}) {
            assertThat(pair(radius).isOutOfReach(t, 1)).isEqualTo(out);
            assertThat(pair(radius).isSurelyOutOfReach(t, 1)).isEqualTo(out);
            assertThat(pair(radius).isEdgeOutOfReach(t, 1)).isEqualTo(out);
        }
    }

    @Test
    void anEdgeIsAskedForItsOwnTwoEnds() {
        double[] ends = triangle(0, 0, 0, 1, 1, 0, 1, 1, 5);
        assertThat(pair(0).isEdgeOutOfReach(ends, 1)).isTrue();
        assertThat(pair(0).isOutOfReach(ends, 1)).isFalse();
    }

    /** A wall at x = 1 + off that runs up along the side of the face, and one turned the other way round. */
    private static double[] wall(double off, double lean, boolean turned) {
        double low = 1 + off;
        return turned
                ? triangle(low, -5, 0, low + lean, 0, 5, low, 5, 0)
                : triangle(low, -5, 0, low, 5, 0, low + lean, 0, 5);
    }

    @ParameterizedTest
    @CsvSource({"0, true", "0.9e-9, true", "-0.9e-9, true", "-1.1e-9, false", "-1e-3, false"})
    void aWallAlongTheSideOfAFaceIsBesideItIfItCutsOffNoMoreThanRounding(double off, boolean beside) {
        for (boolean turned : new boolean[] {false, true}) {
            // It leans outward, so that the pupil, wider than the face by 0.1 a millimetre, stays on its side.
            assertThat(pair(0).isBeside(wall(off, 1.5, turned), 1)).isEqualTo(beside);
            assertThat(pair(0.1).isBeside(wall(off, 1.5, turned), 1)).isFalse();
            assertThat(pair(0).restingPlane(wall(off, 1.5, turned), 1).length > 0)
                    .isEqualTo(beside);
            // Upright it parts the pupil.
            assertThat(pair(0).isBeside(wall(off, 0, turned), 1)).isFalse();
        }
    }

    @Test
    void theRestingPlaneOfAWallPointsToTheFace() {
        for (boolean turned : new boolean[] {false, true}) {
            double[] plane = pair(0).restingPlane(wall(0, 5, turned), 1);
            // Through (1, y, 0), up by 5 for 5 outward: (-1, 0, 1) / sqrt 2.
            Vector3D normal = TURN.apply(Vector3D.of(-1, 0, 1)).normalize();
            assertThat(Vector3D.of(plane[0], plane[1], plane[2]).distance(normal))
                    .isLessThan(1e-12);
            assertThat(plane[3]).isCloseTo(normal.dot(placed(1, 0, 0)), within(1e-12));
            // A wall that stands off by more than counts as lying in the plane is beside the face, not against it.
            assertThat(pair(0).isBeside(wall(1, 5, turned), 1)).isTrue();
            assertThat(pair(0).restingPlane(wall(1, 5, turned), 1)).isEmpty();
            assertThat(pair(0).restingPlane(wall(1.2e-7 * Math.sqrt(2), 5, turned), 1))
                    .isEmpty();
            assertThat(pair(0).restingPlane(wall(0.8e-7 * Math.sqrt(2), 5, turned), 1))
                    .hasSize(4);
        }
    }

    /** Both pieces above a flat sheet: it must stay clear of the face, for it meets it at no angle. */
    @ParameterizedTest
    @CsvSource({"1e-3, true", "1.1e-7, true", "0.9e-7, false", "0, false"})
    void aSheetUnderAFaceIsBesideItOnlyIfItIsClearOfIt(double below, boolean beside) {
        double[] t = triangle(-9, -9, -below, 9, -9, -below, 0, 9, -below);
        assertThat(pair(0).isBeside(t, 1)).isEqualTo(beside);
        double[] back = triangle(-9, -9, -below, 0, 9, -below, 9, -9, -below);
        assertThat(pair(0).isBeside(back, 1)).isEqualTo(beside);
    }

    @Test
    void aTriangleBetweenThePiecesTouchesNeitherAndOneThatRunsIntoAPieceDoes() {
        assertThat(pair(0).isTouchedBy(triangle(-9, -9, 5, 9, -9, 5, 0, 9, 5), 1))
                .isFalse();
        // Steeply through the face, and through the pupil.
        assertThat(pair(0).isTouchedBy(triangle(0, -9, -1, 0, 9, -1, 0.2, 0, 1), 1))
                .isTrue();
        assertThat(pair(0).isTouchedBy(triangle(0, -9, 9, 0, 9, 9, 0.2, 0, 11), 1))
                .isTrue();
        // The same beside them.
        assertThat(pair(0).isTouchedBy(triangle(3, -9, -1, 3, 9, -1, 3.2, 0, 1), 1))
                .isFalse();
        assertThat(pair(0).isTouchedBy(triangle(0, 3, -1, 1, 3, -1, 0.2, 3.2, 1), 1))
                .isFalse();
        assertThat(pair(0).isTouchedBy(triangle(0, -4, -1, 1, -4, -1, 0.2, -3.2, 1), 1))
                .isFalse();
        // A thin one has no plane that can be trusted.
        assertThat(pair(0).isTouchedBy(triangle(1, -9, -1, 1, 0, 0, 1, 9, 1 + 1e-5), 1))
                .isTrue();
        assertThat(pair(0).isTouchedBy(triangle(1, -9, -1, 1, 0, 0, 1, 9, 1 + 1e-2), 1))
                .isFalse();
    }

    @ParameterizedTest
    @ValueSource(doubles = {0, 0.4})
    void aSheetAboveAFaceTouchesItIfItComesNearerThanItsGrowth(double radius) {
        for (double off : new double[] {-3e-8, 3e-8}) {
            double z = radius + FLAT + off;
            double[] t = triangle(-9, -9, z, 9, -9, z, 0, 9, z);
            assertThat(pair(radius).isTouchedBy(t, 1)).isEqualTo(off < 0);
            // In front of the pupil nothing grows.
            double top = 10 - FLAT - off;
            assertThat(pair(radius).isTouchedBy(triangle(-9, -9, top, 9, -9, top, 0, 9, top), 1))
                    .isEqualTo(off < 0);
        }
    }

    @Test
    void aWallThatStandsOnTheSideOfAFaceDoesNotTouchItsInsideUnlessTheFaceMoves() {
        for (boolean turned : new boolean[] {false, true}) {
            assertThat(pair(0).isTouchedBy(wall(0, 1.5, turned), 1)).isFalse();
            assertThat(pair(0).isTouchedBy(wall(0.9e-7, 1.5, turned), 1)).isFalse();
            assertThat(pair(0).isTouchedBy(wall(-1e-3, 1.5, turned), 1)).isTrue();
            assertThat(pair(0.1).isTouchedBy(wall(0, 1.5, turned), 1)).isTrue();
            assertThat(pair(0.1).isTouchedBy(wall(0.2, 1.5, turned), 1)).isFalse();
        }
        // At a slope of 1 in 20 it is not trusted, at 1 in 10 it is.
        assertThat(pair(0).isTouchedBy(triangle(1, -5, 0, 1, 5, 0, 5, 0, 0.2), 1))
                .isTrue();
        assertThat(pair(0).isTouchedBy(triangle(1, -5, 0, 1, 5, 0, 5, 0, 0.4), 1))
                .isFalse();
    }

    @Test
    void pointsWithinAPieceAreItsMiddleAndThenOthersInside() {
        Pair pair = pair(0);
        assertThat(distance(pair.pupilPoint(0), placed(0, 0, 10))).isLessThan(1e-12);
        assertThat(distance(pair.facePoint(0), placed(0, 0, 0))).isLessThan(1e-12);
        for (int i = 1; i < 6; i++) {
            double[] point = pair.facePoint(i);
            // 0.37 of the way to a corner.
            assertThat(distance(point, placed(0, 0, 0))).isCloseTo(0.37 * Math.sqrt(2), within(1e-12));
            assertThat(pair.face().frame().height(Vector3D.of(point[0], point[1], point[2])))
                    .isCloseTo(0, within(1e-12));
            assertThat(point).isNotEqualTo(pair.facePoint(i + 1));
        }
    }

    /** In a triangle as well: on the way from the mean of the corners to one of them. */
    @Test
    void pointsWithinATriangleLieInIt() {
        Frame frame = square(1, 0, true).frame();
        double[] corners = {2, 1, 8, 1, 2, 10};
        Pair pair = new Pair(square(2, 10, false), FlatPiece.of(frame, corners), 0, TOLERANCE);
        for (int i = 1; i < 7; i++) {
            int corner = i % 3;
            Vector3D expected =
                    frame.at(4 + 0.37 * (corners[2 * corner] - 4), 4 + 0.37 * (corners[2 * corner + 1] - 4));
            assertThat(distance(pair.facePoint(i), expected)).isLessThan(1e-12);
        }
        assertThat(distance(pair.facePoint(0), frame.at(4, 4))).isLessThan(1e-12);
    }

    private static double distance(double[] point, Vector3D other) {
        return Vector3D.of(point[0], point[1], point[2]).distance(other);
    }

    /** A wall beside the face whose plane runs through a corner of the pupil, or passes it by a little more than counts as in it. */
    @Test
    void aWallWhosePlaneTouchesThePupilIsNotBesideIt() {
        for (boolean turned : new boolean[] {false, true}) {
            // From x = 1 at the face to x = 2 at the pupil, 10 up.
            double lean = 0.5;
            assertThat(pair(0).isBeside(wall(0, lean, turned), 1)).isFalse();
            assertThat(pair(0).isBeside(wall(0, lean - 1e-3, turned), 1)).isFalse();
            assertThat(pair(0).isBeside(wall(0, lean + 1e-3, turned), 1)).isTrue();
            // 10 up the plane is off by 2 for 1 in lean.
            assertThat(pair(0).isBeside(wall(0, lean + 0.4e-7, turned), 1)).isFalse();
            assertThat(pair(0).isBeside(wall(0, lean + 0.6e-7, turned), 1)).isTrue();
        }
    }

    /** What lies on the other side of a wall that a face rests against is hidden by it; what stands on the side of the face is not. */
    @Test
    void aRestingPlaneHidesWhatLiesBehindIt() {
        double[][] others = {
            triangle(2.6, -1, 1, 2.6, 1, 1, 3, 0, 3), triangle(0, -1, 1, 0, 1, 1, 0.2, 0, 3),
            triangle(0.5, -1, 2, 9, -1, 2, 9, 1, 2), triangle(1, -5, 0, 1, 5, 0, 1.15, 0, 0.5)
        };
        boolean[] hidden = {true, false, false, true};
        for (int i = 0; i < 4; i++) {
            double[] both = new double[18];
            System.arraycopy(wall(0, 1.5, false), 1, both, 0, 9);
            System.arraycopy(others[i], 1, both, 9, 9);
            RestingPlanes resting = new RestingPlanes(pair(0), both, new int[] {0, 1});
            assertThat(resting.hide(9)).as("other %d", i).isEqualTo(hidden[i]);
            assertThat(resting.hide(0)).isTrue();
            // Nothing rests against the face: nothing is hidden.
            RestingPlanes none = new RestingPlanes(pair(0.1), both, new int[] {0, 1});
            assertThat(none.hide(9)).isFalse();
        }
    }

    /** An upright triangle that runs through the plane of the face: its own plane cuts the face, but it stands beside it. */
    @Test
    void aTriangleBesideAPieceDoesNotTouchItThoughItsPlaneRunsThroughIt() {
        Tolerance tolerance = new Tolerance(ROUNDING, FLAT, 64 * FLAT);
        for (int axis = 0; axis < 3; axis++) {
            FlatPiece face = level(axis, 0, 1, 1);
            Pair pair = new Pair(level(axis, 50, 1, -1), face, 0, tolerance);
            for (double[] at :
                    new double[][] {{2, 0}, {-2, 0}, {0, 2}, {0, -2}, {2, 2}, {-2, -2}, {0.5, 0}, {0, 0.5}}) {
                // Its plane holds the middle of the face and stands up from it.
                Vector3D foot = turned(axis, at[0], at[1], -1);
                Vector3D low = turned(axis, 1.1 * at[0], 1.1 * at[1], -1);
                Vector3D high = turned(axis, at[0], at[1], 3);
                double[] t = new double[9];
                Vector3D[] corners = {foot, low, high};
                for (int k = 0; k < 3; k++) {
                    System.arraycopy(corners[k].toArray(), 0, t, 3 * k, 3);
                }
                boolean over = Math.max(Math.abs(at[0]), Math.abs(at[1])) < 1;
                assertThat(pair.isTouchedBy(t, 0))
                        .as("axis %d, %s %s", axis, at[0], at[1])
                        .isEqualTo(over);
            }
        }
    }

    private static Vector3D turned(int axis, double x, double y, double z) {
        return axis == 0 ? Vector3D.of(x, y, z) : axis == 1 ? Vector3D.of(y, z, x) : Vector3D.of(z, x, y);
    }

    private static FlatPiece level(int axis, double z, double half, int sign) {
        Frame frame = Frame.of(turned(axis, 0, 0, z), turned(axis, 1, 0, 0), turned(axis, 0, sign, 0));
        return FlatPiece.of(frame, new double[] {-half, -half, half, -half, half, half, -half, half});
    }
}
