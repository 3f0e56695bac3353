package darkrim.geom;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.SplittableRandom;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.apache.commons.geometry.euclidean.threed.rotation.QuaternionRotation;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Parts are turned, mirrored and moved in the order that is written, without losing a digit that need not be lost. */
class PlacementTest {
    private static final Vector3D X = Vector3D.Unit.PLUS_X;
    private static final Vector3D Y = Vector3D.Unit.PLUS_Y;
    private static final Vector3D Z = Vector3D.Unit.PLUS_Z;
    private static final Vector3D POINT = Vector3D.of(1.1, 2.7, -3.3);

    @ParameterizedTest
    @CsvSource({
        "90, -2.7, 1.1",
        "180, -1.1, -2.7",
        "270, 2.7, -1.1",
        "360, 1.1, 2.7",
        "-90, 2.7, -1.1",
        "450, -2.7, 1.1",
        "36090, -2.7, 1.1",
        "-179820, -1.1, -2.7",
        "0, 1.1, 2.7"
    })
    void quarterTurnsAreExact(double degrees, double x, double y) {
        Vector3D turned = Placement.NONE.thenTurned(Z, degrees).point(POINT);
        // + 0.0: the sign of a zero is no matter.
        assertThat(turned.getX() + 0.0).isEqualTo(x);
        assertThat(turned.getY() + 0.0).isEqualTo(y);
        assertThat(turned.getZ()).isEqualTo(-3.3);
    }

    @Test
    void aTurnIsRightHandedAboutItsAxis() {
        assertThat(Placement.NONE.thenTurned(X, 90).direction(Y)).isEqualTo(Z);
        assertThat(Placement.NONE.thenTurned(Y, 90).direction(Z)).isEqualTo(X);
        assertThat(Placement.NONE.thenTurned(Z, 90).direction(X)).isEqualTo(Y);
        Vector3D thirds = Placement.NONE.thenTurned(Vector3D.of(1, 1, 1), 120).direction(X);
        assertThat(thirds.distance(Y)).isLessThan(1e-15);
    }

    /** 1 - cos a = a^2 / 2 to 1e-16 of it for these angles. */
    @ParameterizedTest
    @ValueSource(doubles = {1e-3, 1e-4, 1e-5})
    void aTurnAllButAQuarterKeepsItsDigits(double short0) {
        Vector3D turned = Placement.NONE.thenTurned(Z, 90 - short0).direction(X);
        double angle = Math.toRadians(short0);
        // sin a = a - a^3/6; the double nearest to 90 - a is off by up to 7e-15 degrees, 1.3e-16 radians.
        assertThat(turned.getX()).isCloseTo(angle - angle * angle * angle / 6, within(4e-16));
        assertThat(turned.getY()).isCloseTo(1 - angle * angle / 2, within(4e-16));
    }

    @Test
    void turnsAgreeWithQuaternionsAndKeepLengths() {
        SplittableRandom random = new SplittableRandom(3);
        for (int i = 0; i < 1000; i++) {
            Vector3D axis = vector(random);
            double degrees = 720 * random.nextDouble() - 360;
            Vector3D expected = QuaternionRotation.fromAxisAngle(axis, Math.toRadians(degrees))
                    .apply(POINT);
            Vector3D turned = Placement.NONE.thenTurned(axis, degrees).point(POINT);
            assertThat(turned.distance(expected)).isLessThan(2e-14);
            assertThat(turned.norm()).isCloseTo(POINT.norm(), within(2e-15 * POINT.norm()));
        }
    }

    @Test
    void aMirrorFlipsTheCoordinateAlongItsAxisExactlyAndExchangesLeftAndRight() {
        Placement mirror = Placement.NONE.thenMirrored(Vector3D.of(-2, 0, 0));
        assertThat(mirror.point(POINT)).isEqualTo(Vector3D.of(-1.1, 2.7, -3.3));
        assertThat(mirror.mirrors()).isTrue();
        assertThat(mirror.thenMirrored(Y).mirrors()).isFalse();
        assertThat(mirror.thenMirrored(Y).point(POINT)).isEqualTo(Vector3D.of(-1.1, -2.7, -3.3));
        assertThat(mirror.thenTurned(Z, 33).thenMoved(POINT).mirrors()).isTrue();
        assertThat(Placement.NONE.mirrors()).isFalse();
    }

    @Test
    void stepsAreTakenInTheOrderWritten() {
        Vector3D step = Vector3D.of(10, 0, 0);
        assertThat(Placement.NONE.thenMoved(step).thenTurned(Z, 90).point(X)).isEqualTo(Vector3D.of(0, 11, 0));
        assertThat(Placement.NONE.thenTurned(Z, 90).thenMoved(step).point(X)).isEqualTo(Vector3D.of(10, 1, 0));
        Placement first = Placement.NONE.thenMoved(step).thenMirrored(X);
        Placement next = Placement.NONE.thenTurned(Y, 90).thenMoved(Z);
        assertThat(first.then(next).point(POINT)).isEqualTo(next.point(first.point(POINT)));
    }

    @Test
    void directionsAreTurnedButNotMoved() {
        Placement placement = Placement.NONE.thenTurned(X, 180).thenMoved(Vector3D.of(5, 6, 7));
        assertThat(placement.direction(Z)).isEqualTo(Vector3D.of(0, 0, -1));
    }

    private static Vector3D vector(SplittableRandom random) {
        return Vector3D.of(random.nextDouble() - 0.5, random.nextDouble() - 0.5, random.nextDouble() - 0.5);
    }
}
