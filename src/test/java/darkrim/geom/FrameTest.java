package darkrim.geom;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.SplittableRandom;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A frame is right-handed and square, and its coordinates are those of the point they came from. */
class FrameTest {
    private static final double ROUNDING = 1e-14;

    @Test
    void aFrameFromTwoSkewDirectionsIsRightHandedAndSquare() {
        SplittableRandom random = new SplittableRandom(1);
        for (int i = 0; i < 1000; i++) {
            Vector3D along = vector(random);
            Vector3D towards = vector(random);
            Frame frame = Frame.of(vector(random), along, towards);
            requireSquare(frame);
            assertThat(frame.u().dot(along)).isCloseTo(along.norm(), within(ROUNDING));
            assertThat(frame.v().dot(towards)).isPositive();
        }
    }

    @ParameterizedTest
    @CsvSource({"0, 0, 1", "0, 0, -1", "1, 0, 0", "-1, 0, 0", "0, 1, 0", "0, -3, 0", "1, 1, 1", "0.95, 0.3, -0.1"})
    void aFrameAboutAnyNormalHasThatNormal(double x, double y, double z) {
        Vector3D normal = Vector3D.of(x, y, z);
        Frame frame = Frame.about(Vector3D.of(1, 2, 3), normal);
        requireSquare(frame);
        assertThat(frame.normal().dot(normal)).isCloseTo(normal.norm(), within(ROUNDING));
    }

    @Test
    void coordinatesLeadBackToThePoint() {
        SplittableRandom random = new SplittableRandom(2);
        for (int i = 0; i < 1000; i++) {
            Frame frame = Frame.of(vector(random), vector(random), vector(random));
            double u = 100 * random.nextDouble() - 50;
            double v = 100 * random.nextDouble() - 50;
            Vector3D point = frame.at(u, v);
            assertThat(frame.inU(point)).isCloseTo(u, within(1e-12));
            assertThat(frame.inV(point)).isCloseTo(v, within(1e-12));
            assertThat(frame.height(point)).isCloseTo(0, within(1e-12));
            assertThat(frame.height(point.add(frame.normal()))).isCloseTo(1, within(1e-12));
        }
    }

    @Test
    void directionsThatMakeNoPlaneAreRefused() {
        Vector3D x = Vector3D.Unit.PLUS_X;
        assertThatThrownBy(() -> Frame.of(Vector3D.ZERO, x, Vector3D.of(-2, 0, 0)))
                .isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> Frame.of(Vector3D.ZERO, Vector3D.ZERO, x))
                .isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> Frame.about(Vector3D.ZERO, Vector3D.ZERO))
                .isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> Frame.about(Vector3D.of(0, Double.NaN, 0), x))
                .isInstanceOf(IllegalArgumentException.class);
    }

    @Test
    void aLeftHandedOrSkewSetIsRefused() {
        Vector3D x = Vector3D.Unit.PLUS_X;
        Vector3D y = Vector3D.Unit.PLUS_Y;
        Vector3D z = Vector3D.Unit.PLUS_Z;
        assertThatThrownBy(() -> new Frame(Vector3D.ZERO, y, x, z)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new Frame(Vector3D.ZERO, x, Vector3D.of(0, 2, 0), z))
                .isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new Frame(Vector3D.ZERO, x, Vector3D.of(0.6, 0.8, 0), z))
                .isInstanceOf(IllegalArgumentException.class);
    }

    private static void requireSquare(Frame frame) {
        assertThat(frame.u().norm()).isCloseTo(1, within(ROUNDING));
        assertThat(frame.v().norm()).isCloseTo(1, within(ROUNDING));
        assertThat(frame.u().dot(frame.v())).isCloseTo(0, within(ROUNDING));
        assertThat(frame.u().cross(frame.v()).distance(frame.normal())).isLessThan(ROUNDING);
    }

    private static Vector3D vector(SplittableRandom random) {
        return Vector3D.of(random.nextDouble() - 0.5, random.nextDouble() - 0.5, random.nextDouble() - 0.5);
    }
}
