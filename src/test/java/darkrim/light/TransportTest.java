package darkrim.light;

import static org.assertj.core.api.Assertions.assertThat;

import darkrim.diagnostic.Place;
import darkrim.geom.Frame;
import darkrim.geom.Ring;
import darkrim.layout.Requirement.LightClass;
import darkrim.scene.Beam;
import darkrim.scene.Finish;
import darkrim.scene.Pupil;
import darkrim.scene.Scene;
import darkrim.scene.SceneBuilder;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Test;

/** Sampled values against closed forms: within 4 standard errors, so each check is false in 6e-5 of all seeds; the seed is fixed. */
class TransportTest {
    private static final Beam BEAM = disc(20, 150);

    static Beam disc(double radius, double distance) {
        Frame frame = Frame.of(Vector3D.of(0, 0, distance), Vector3D.Unit.PLUS_X, Vector3D.Unit.MINUS_Y);
        return Beam.of(new Pupil(Ring.disc(radius), frame));
    }

    static SceneBuilder wall(double x, double reach, Finish finish) {
        SceneBuilder builder =
                new SceneBuilder().sheet("wall/front", finish, "wall/back", Finish.ABSORBER, Place.IN_CODE);
        return builder.quad(
                "wall/front",
                Vector3D.of(x, -reach, 0),
                Vector3D.of(x, -reach, reach),
                Vector3D.of(x, reach, reach),
                Vector3D.of(x, reach, 0));
    }

    private static Tally measure(Scene scene, Receiver receiver, LightClass light, int batches) {
        Transport transport = Transport.of(scene, 1);
        Tally tally = transport.nothing(receiver, light);
        for (int i = 0; i < batches; i++) {
            tally = tally.and(transport.batch(receiver, light, i, 10_000));
        }
        return tally;
    }

    @Test
    void thePupilOnTheAxisGivesPiSineSquared() {
        // E = pi L sin^2(theta), tan(theta) = r/H; any radiometry text, e.g. Boyd.
        assertThat(BEAM.referenceIrradiance())
                .isCloseTo(Math.PI * 400 / (400 + 22500), org.assertj.core.data.Percentage.withPercentage(1e-9));
    }

    @Test
    void aPlaneMirrorShowsTheImageOfThePupil() {
        // Image method; reference case D03a: 0.021236144347637074 for L = 1 and reflectance 0.9.
        Scene scene = wall(60, 1000, new Finish("mirror", 0, 0.9)).build(BEAM);
        Receiver point = new Receiver.AtPoint("point", Vector3D.of(10, 5, 0), Vector3D.Unit.PLUS_Z);
        Estimate got = measure(scene, point, LightClass.ONCE_REFLECTED, 20)
                .irradiance()
                .times(BEAM.referenceIrradiance());
        assertThat(Math.abs(got.mean() - 0.021236144347637074)).isLessThan(4 * got.standardError());
        assertThat(got.standardError()).isLessThan(0.002 * got.mean());
    }

    @Test
    void aPupilThatTurnsItsBackOnTheOriginIsRefused() {
        Frame up = Frame.of(Vector3D.of(0, 0, 150), Vector3D.Unit.PLUS_X, Vector3D.Unit.PLUS_Y);
        Scene scene = wall(60, 10, Finish.ABSORBER).build(Beam.of(new Pupil(Ring.disc(20), up)));
        org.assertj.core.api.Assertions.assertThatThrownBy(() -> Transport.of(scene, 1))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("does not shine on the origin");
    }
}
