package darkrim.shadow;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import darkrim.geom.Frame;
import darkrim.geom.Outline;
import darkrim.geom.Polygon;
import darkrim.geom.Ring;
import darkrim.scene.Beam;
import darkrim.scene.FieldLimit;
import darkrim.scene.Scene;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.apache.commons.geometry.euclidean.twod.Vector2D;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What the point (1, 2, 0) sees of a rectangle 40 by 40, 100 up, through a field limit alone. */
class FieldProjectionTest {
    private static final Vector3D POINT = Vector3D.of(1, 2, 0);
    private static final double AREA = 1600;

    private static PupilView view(Outline outline, Frame frame) {
        FieldLimit limit = new FieldLimit(outline, frame);
        Scene scene = new TestParts()
                .sheet("far", 500, 501, 500, 501, 0)
                .build(new Beam(
                        TestParts.pupilAt(100, Polygon.rectangle(40, 40)), Optional.of(limit), OptionalDouble.empty()));
        return new VisiblePupil(scene, TestParts.tree(scene)).withoutParts(POINT, Vector3D.Unit.PLUS_Z);
    }

    private static double area(Outline outline, Frame frame) {
        return view(outline, frame).areaFraction() * AREA;
    }

    private static Frame level(double x, double y, double z, boolean up) {
        Vector3D v = up ? Vector3D.Unit.PLUS_Y : Vector3D.Unit.MINUS_Y;
        return Frame.of(Vector3D.of(x, y, z), Vector3D.Unit.PLUS_X, v);
    }

    /** Through z the pupil's plane is seen 100 / z times as large about the point; below the point it is turned over. */
    @ParameterizedTest
    @ValueSource(doubles = {50, 20, 130, -30, -50})
    void aRectangleIsSeenScaledFromThePoint(double z) {
        double scale = 100 / z;
        for (boolean up : new boolean[] {true, false}) {
            // A limit of 2 by 1 about the point's own axis, moved by 0.5 and 0.3.
            double u0 = 1 + scale * (0.5 - 1);
            double u1 = 1 + scale * (0.5 + 1);
            double v0 = 2 + scale * (0.3 - 0.5);
            double v1 = 2 + scale * (0.3 + 0.5);
            double expected = overlap(u0, u1) * overlap(v0, v1);
            assertThat(area(Polygon.rectangle(2, 1), level(1.5, 2.3, z, up))).isCloseTo(expected, within(1e-9));
        }
    }

    /** How much of a stretch, run through either way, lies within the pupil. */
    private static double overlap(double from, double to) {
        return Math.max(0, Math.min(20, Math.max(from, to)) - Math.max(-20, Math.min(from, to)));
    }

    @ParameterizedTest
    @ValueSource(doubles = {50, 20, -30})
    void aRoundLimitAndItsHoleAreSeenScaledFromThePoint(double z) {
        double scale = Math.abs(100 / z);
        for (boolean up : new boolean[] {true, false}) {
            double disc = Math.PI * scale * scale;
            assertThat(area(Ring.disc(1), level(1.5, 2.3, z, up))).isCloseTo(disc, within(1e-9));
            assertThat(area(new Ring(1, 0.6), level(1.5, 2.3, z, up))).isCloseTo(0.64 * disc, within(1e-9));
        }
        // The middle of what is seen lies at 1 + 0.5 scale, 2 + 0.3 scale: half of it is right of that.
        assertThat(area(Ring.disc(100), level(1, 2, z, true))).isCloseTo(AREA, within(1e-9));
        assertThat(area(Ring.disc(1), level(400, 2, z, true))).isZero();
    }

    /** Tilted by 30 degrees about y: the projection of a strip of the plane x cos + z sin, by its two ends. */
    @ParameterizedTest
    @ValueSource(doubles = {40, -40})
    void aTiltedRectangleIsSeenByTheProjectionsOfItsCorners(double z) {
        double cosine = Math.cos(Math.PI / 6);
        double sine = 0.5;
        for (int turned = -1; turned <= 1; turned += 2) {
            Frame frame = Frame.of(Vector3D.of(1, 2, z), Vector3D.of(cosine, 0, sine), Vector3D.of(0, turned, 0));
            double[] corners = new double[8];
            double[][] own = {{-2, -1}, {2, -1}, {2, 1}, {-2, 1}};
            for (int i = 0; i < 4; i++) {
                double height = z + own[i][0] * sine;
                corners[2 * i] = own[i][0] * cosine * 100 / height;
                corners[2 * i + 1] = own[i][1] * 100 / height;
            }
            double expected = Math.abs(PlanarPolygons.area(corners));
            assertThat(area(Polygon.rectangle(4, 2), frame)).isCloseTo(expected, within(1e-9));
            // An ellipse or a ring of it: its polygon of 1,024 sides has its area to a millionth.
            double disc = area(Ring.disc(1), frame);
            if (turned > 0 && z > 0) {
                assertThat(area(new Ring(1, 0.5), frame)).isCloseTo(disc - area(Ring.disc(0.5), frame), within(1e-6));
            }
            // a^2 pi times the mean of the cube of 100 / height over the disc, about 100 cos / z: area of a projection.
            assertThat(disc).isCloseTo(Math.PI * cosine * 1e4 / 1600 * shape(sine / z), within(1e-6));
        }
    }

    /** The area of a disc seen in perspective over that along its axis: 1 / (1 - (r sin / z)^2)^(3/2), for a circle becomes an ellipse. */
    private static double shape(double ratio) {
        return Math.pow(1 - ratio * ratio, -1.5);
    }

    @Test
    void aLimitThroughThePointPassesAllOrNothing() {
        assertThat(area(Ring.disc(1), level(1.5, 2.3, 0, true))).isCloseTo(AREA, within(1e-9));
        assertThat(area(Ring.disc(1), level(5, 2.3, 0, true))).isZero();
        assertThat(area(Polygon.rectangle(2, 1), level(1.5, 2.3, 0, true))).isCloseTo(AREA, within(1e-9));
        assertThat(area(Polygon.rectangle(2, 1), level(1.5, 2.6, 0, true))).isZero();
    }

    @Test
    void theTwoPartsOfALimitThatIsNotConvexAddUp() {
        Polygon l = Polygon.of(List.of(
                Vector2D.of(-2, -2),
                Vector2D.of(2, -2),
                Vector2D.of(2, 0),
                Vector2D.of(0, 0),
                Vector2D.of(0, 2),
                Vector2D.of(-2, 2)));
        assertThat(area(l, level(1, 2, 50, true))).isCloseTo(12 * 4, within(1e-9));
    }

    /** A limit that stands upright behind the point: lines are drawn out backward through it. */
    @Test
    void aLimitBesideThePointIsMetByLinesDrawnOutBackward() {
        // The plane x = -9 from z = -15 to -5 and y = 2 +- 1: lines to u = 1 + 10 t, 100 = 10 t .. : x moves by -10 for
        // z of -10.
        Frame frame = Frame.of(Vector3D.of(-9, 2, -60), Vector3D.Unit.PLUS_Y, Vector3D.Unit.PLUS_Z);
        // Heights -80 to -40: at the pupil x = 1 + 10 * 100 / height, from 13.5 to 26; y = 2 +- 100 / height.
        double expected = 0;
        int n = 20_000;
        for (int i = 0; i < n; i++) {
            double x = 12.5 + 6.5 * (i + 0.5) / n;
            // x - 1 = 1000 / height, half width 100 / height = (x - 1) / 10, to the pupil's edge at 20.
            expected += 6.5 / n * 2 * x / 10;
        }
        assertThat(area(Polygon.rectangle(2, 40), frame)).isCloseTo(expected, within(1e-6));
    }
}
