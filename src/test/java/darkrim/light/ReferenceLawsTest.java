package darkrim.light;

import static org.assertj.core.api.Assertions.assertThat;

import darkrim.layout.Requirement.LightClass;
import darkrim.scene.Finish;
import darkrim.scene.Scene;
import darkrim.scene.SceneBuilder;
import java.util.stream.IntStream;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * The two oldest laws of photometry under a small far pupil. What a sample can differ by is only the size of the pupil, so they hold to far
 * better than sampling usually allows: each number to 4 standard errors plus the stated difference of the pupil from a point. 19 numbers at
 * 6.3e-5 each: a right program fails in 1.2e-3 of all seeds; the seed is fixed.
 */
class ReferenceLawsTest {
    /** A pupil of 2 mm at 2 m: (r / d)^2 = 2.5e-7. */
    private static final double RADIUS = 1;

    private static final double DISTANCE = 2000;
    private static final double OF_A_POINT = 2.5e-7;

    static IntStream tilts() {
        return IntStream.iterate(0, tilt -> tilt < 90, tilt -> tilt + 10);
    }

    /** Lambert, Photometria, 1760: E is proportional to the cosine of the angle of incidence. */
    @ParameterizedTest
    @MethodSource("tilts")
    void irradianceFallsWithTheCosineOfTheAngleOfIncidence(int degrees) {
        double angle = Math.toRadians(degrees);
        // Turned about an axis in the plane that is not one of the layout's.
        Vector3D normal = Vector3D.of(0.6 * Math.sin(angle), 0.8 * Math.sin(angle), Math.cos(angle));
        Estimate got = direct(new Receiver.AtPoint("tilted " + degrees, Vector3D.ZERO, normal));
        requireClose(got, Math.cos(angle), 2 * OF_A_POINT);
    }

    /** Light that comes from behind a surface does not reach it. */
    @ParameterizedTest
    @ValueSource(ints = {91, 120, 180})
    void nothingArrivesFromBehind(int degrees) {
        double angle = Math.toRadians(degrees);
        Vector3D normal = Vector3D.of(Math.sin(angle), 0, Math.cos(angle));
        Transport transport = Transport.of(scene(), 1);
        Receiver receiver = new Receiver.AtPoint("turned away", Vector3D.ZERO, normal);
        Estimate got = transport.batch(receiver, LightClass.DIRECT, 0, 10_000).irradiance();
        assertThat(got.samples()).isEqualTo(10_000);
        assertThat(got.mean()).isZero();
    }

    /** Kepler, Ad Vitellionem Paralipomena, 1604: E is proportional to 1 / distance^2. */
    @ParameterizedTest
    @ValueSource(doubles = {100, 200, 500, 1000, 1500, 2000, 3000, 5000, 10_000, 100_000})
    void irradianceFallsWithTheSquareOfTheDistance(double distance) {
        Vector3D position = Vector3D.of(0, 0, DISTANCE - distance);
        Estimate got = direct(new Receiver.AtPoint("at " + distance, position, Vector3D.Unit.PLUS_Z));
        double ratio = DISTANCE / distance;
        // Exactly: E = pi L r^2 / (r^2 + d^2); the law is its limit.
        requireClose(got, ratio * ratio, OF_A_POINT + RADIUS * RADIUS / (distance * distance));
    }

    private static Scene scene() {
        SceneBuilder builder = TransportTest.wall(5000, 1, Finish.ABSORBER);
        return builder.build(TransportTest.disc(RADIUS, DISTANCE));
    }

    private static Estimate direct(Receiver receiver) {
        return ReferenceSampling.light(scene(), receiver, LightClass.DIRECT, 1e-5, Tally::irradiance)
                .irradiance();
    }

    private static void requireClose(Estimate got, double expected, double notAPoint) {
        assertThat(got.standardError()).isLessThanOrEqualTo(1e-5 * expected);
        assertThat(Math.abs(got.mean() - expected))
                .as("expected %s, got %s", expected, got)
                .isLessThanOrEqualTo(4 * got.standardError() + notAPoint * expected);
    }
}
