package darkrim.scene;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import darkrim.diagnostic.Place;
import java.util.Optional;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class DistantBodyTest {
    private static final Scene FLOOR = new SceneBuilder()
            .sheet("floor", Finish.ABSORBER, "floor/back", Finish.ABSORBER, Place.IN_CODE)
            .quad(
                    "floor",
                    Vector3D.of(-30, -30, 0),
                    Vector3D.of(30, -30, 0),
                    Vector3D.of(30, 30, 0),
                    Vector3D.of(-30, 30, 0))
            .build(Beam.of(new Pupil(
                    darkrim.geom.Ring.disc(10),
                    darkrim.geom.Frame.about(Vector3D.of(0, 0, 100), Vector3D.Unit.MINUS_Z))));

    private static DistantBody body(double offAxis, double azimuth, double diameter) {
        return new DistantBody(offAxis, azimuth, diameter, Optional.empty());
    }

    /** A horizontal plane gets the cosine of what a facing plane gets: exact for a body of any size that stands above the horizon. */
    @ParameterizedTest
    @CsvSource({"0, 0, 0.53", "25, 0, 0.53", "60, 137, 0.01", "80, -90, 5", "40, 10, 30"})
    void aLevelPlaneGetsTheCosine(double offAxis, double azimuth, double diameter) {
        Scene lit = body(offAxis, azimuth, diameter).over(FLOOR);
        assertThat(1 / DistantBody.facing(lit)).isCloseTo(Math.cos(Math.toRadians(offAxis)), within(1e-6));
    }

    @ParameterizedTest
    @CsvSource({"0, 0", "25, 0", "60, 137", "89, 271"})
    void itsDirectionIsTheSameEverywhere(double offAxis, double azimuth) {
        DistantBody body = body(offAxis, azimuth, 0.53);
        Vector3D centre = body.over(FLOOR).beam().pupil().frame().origin();
        for (double x : new double[] {-30, 0, 30}) {
            for (double y : new double[] {-30, 30}) {
                Vector3D seen = centre.subtract(Vector3D.of(x, y, 0)).normalize();
                assertThat(seen.distance(body.direction())).isLessThan(1.0001e-5);
            }
        }
        assertThat(body.direction().getZ()).isCloseTo(Math.cos(Math.toRadians(offAxis)), within(1e-15));
    }

    /** From every point the disc reaches at least as far from the direction of the body as the body, and at most 2.1e-5 rad farther. */
    @ParameterizedTest
    @CsvSource({"0.53, 0", "0.01, 30", "5, 70"})
    void theDiscCoversTheBodyFromEveryPoint(double diameter, double offAxis) {
        DistantBody body = body(offAxis, 20, diameter);
        Pupil pupil = body.over(FLOOR).beam().pupil();
        double half = Math.toRadians(diameter / 2);
        for (int i = 0; i < 16; i++) {
            double turn = i * Math.PI / 8;
            Vector3D rim = body.direction()
                    .multiply(Math.cos(half))
                    .add(pupil.frame().u().multiply(Math.sin(half) * Math.cos(turn)))
                    .add(pupil.frame().v().multiply(Math.sin(half) * Math.sin(turn)));
            for (Vector3D from : new Vector3D[] {Vector3D.of(30, 30, 0), Vector3D.of(-30, 30, 0), Vector3D.ZERO}) {
                double t = pupil.frame().height(from) / -rim.dot(pupil.frame().normal());
                Vector3D met = from.add(rim.multiply(t));
                double out = Math.hypot(pupil.frame().inU(met), pupil.frame().inV(met));
                assertThat(out).isLessThanOrEqualTo(pupil.outline().reach());
                assertThat(Math.atan(pupil.outline().reach() / t) - Math.atan(out / t))
                        .isLessThan(2.1e-5);
            }
        }
    }

    @Test
    void aBodyThatDipsBelowTheFocalPlaneIsRefused() {
        assertThatThrownBy(() -> body(89.8, 0, 0.53)).hasMessageContaining("above the focal plane");
        assertThatThrownBy(() -> body(10, 0, 0)).hasMessageContaining("above the focal plane");
    }
}
