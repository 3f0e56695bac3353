package darkrim.shadow;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import darkrim.geom.Frame;
import darkrim.geom.Ring;
import darkrim.scene.Beam;
import darkrim.scene.Pupil;
import darkrim.scene.Scene;
import darkrim.scene.Surface;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * A wall at x = 30, from z = 40 to z = 50, faces the axis. Light enters through a disc of radius 10 at z = 100, a receiver of radius 5 at z = 0
 * looks up: light that makes an angle comes from the far rim, 40 across.
 */
class LitAndSeenTest {
    private static final Pupil ENTRANCE =
            new Pupil(Ring.disc(10), Frame.about(Vector3D.of(0, 0, 100), Vector3D.Unit.MINUS_Z));
    private static final Pupil RECEIVER = new Pupil(Ring.disc(5), Frame.about(Vector3D.ZERO, Vector3D.Unit.PLUS_Z));

    private static TestParts wall() {
        return new TestParts()
                .sheet(
                        "wall",
                        Vector3D.of(30, -1, 40),
                        Vector3D.of(30, -1, 50),
                        Vector3D.of(30, 1, 50),
                        Vector3D.of(30, 1, 40));
    }

    private static void screen(TestParts parts, double low, double high) {
        parts.sheet(
                "screen",
                Vector3D.of(20, -20, low),
                Vector3D.of(20, -20, high),
                Vector3D.of(20, 20, high),
                Vector3D.of(20, 20, low));
    }

    private static LitAndSeen.Found find(TestParts parts, double angle) {
        Scene scene = parts.build(Beam.of(ENTRANCE));
        Surface wall = scene.surface("wall").orElseThrow();
        return new LitAndSeen(scene, TestParts.tree(scene), ENTRANCE, angle, RECEIVER)
                .of(wall, wall.firstFacet(), wall.facetCount());
    }

    /** At the top of the wall, 50 below the entrance: atan(40 / 50), a little more to the side. */
    @Test
    void nothingIsLitBeyondTheSteepestAngle() {
        double top = Math.toDegrees(Math.atan2(Math.hypot(40, 1), 50));
        assertThat(find(wall(), top + 0.05)).isInstanceOf(LitAndSeen.Apart.class);
        LitAndSeen.Found found = find(wall(), top - 0.5);
        assertThat(found).isInstanceOf(LitAndSeen.Both.class);
        LitAndSeen.Both both = (LitAndSeen.Both) found;
        assertThat(both.lit().to()).isEqualTo(both.seen().to());
        assertThat(both.lit().to().getX()).isCloseTo(30, within(1e-9));
        assertThat(both.lit().to().getZ()).isBetween(40.0, 50.0);
        Vector3D way = both.lit().to().subtract(both.lit().from());
        assertThat(Math.toDegrees(Math.atan2(Math.hypot(way.getX(), way.getY()), -way.getZ())))
                .isGreaterThanOrEqualTo(top - 0.5 - 1e-9);
        assertThat(both.lit().from().getZ()).isCloseTo(100, within(1e-9));
        assertThat(both.seen().from().getZ()).isCloseTo(0, within(1e-9));
        assertThat(Math.hypot(both.seen().from().getX(), both.seen().from().getY()))
                .isLessThanOrEqualTo(5);
        assertThat(Math.hypot(both.lit().from().getX(), both.lit().from().getY()))
                .isLessThanOrEqualTo(10);
    }

    /**
     * At 36 degrees or more only what lies above 100 - 40 / tan 36 = 44.945 is lit; below a screen that ends at z over x = 20 the receiver sees up
     * to z 25 / 15. It takes light from nowhere above that.
     */
    @ParameterizedTest
    @CsvSource({"26.6, true", "26.9, true", "27.2, false", "27.6, false"})
    void whatIsSeenBelowAScreenAndWhatIsLitAboveItAreToldApart(double low, boolean apart) {
        TestParts parts = wall();
        screen(parts, low, 45);
        LitAndSeen.Found found = find(parts, 36);
        assertThat(found).isInstanceOf(apart ? LitAndSeen.Apart.class : LitAndSeen.Both.class);
        if (found instanceof LitAndSeen.Apart proved) {
            assertThat(proved.pieces()).isGreaterThan(1);
        }
    }

    @Test
    void aWallThatIsCoveredFromEitherSideIsApart() {
        TestParts fromReceiver = wall();
        screen(fromReceiver, 20, 45);
        assertThat(find(fromReceiver, 0)).isInstanceOf(LitAndSeen.Apart.class);
        TestParts fromEntrance = wall();
        screen(fromEntrance, 40, 90);
        assertThat(find(fromEntrance, 0)).isInstanceOf(LitAndSeen.Apart.class);
        assertThat(find(wall(), 0)).isInstanceOf(LitAndSeen.Both.class);
        assertThat(find(wall().sheet("lid", -90, 90, -90, 90, 70), 0)).isInstanceOf(LitAndSeen.Apart.class);
    }

    @Test
    void anAngleOffAxisLiesFromNothingToARightAngle() {
        for (double angle : new double[] {-1, 90, Double.NaN}) {
            assertThatThrownBy(() -> find(wall(), angle)).isInstanceOf(IllegalArgumentException.class);
        }
        assertThat(find(wall(), 89.9)).isInstanceOf(LitAndSeen.Apart.class);
    }
}
