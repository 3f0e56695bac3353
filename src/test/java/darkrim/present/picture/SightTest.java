package darkrim.present.picture;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import darkrim.geom.Frame;
import darkrim.geom.Ring;
import darkrim.scene.Pupil;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class SightTest {
    private static final List<Vector3D> CORNERS = PictureScenes.subject(
                    PictureScenes.block(), s -> 1, Map.of(), Optional.empty())
            .corners();

    static Stream<ViewDirection> directions() {
        return Stream.of(
                ViewDirection.TOP,
                ViewDirection.BOTTOM,
                ViewDirection.FRONT,
                ViewDirection.BACK,
                ViewDirection.LEFT,
                ViewDirection.RIGHT,
                ViewDirection.CORNER,
                new ViewDirection(123, -17));
    }

    @Test
    void fromTheTopALayoutLiesAsItIsDrawn() {
        assertThat(ViewDirection.TOP.right()).isEqualTo(Vector3D.Unit.PLUS_X);
        assertThat(ViewDirection.TOP.up().distance(Vector3D.Unit.PLUS_Y)).isZero();
        assertThat(ViewDirection.TOP.away().distance(Vector3D.Unit.MINUS_Z)).isZero();
        assertThat(ViewDirection.FRONT.away().distance(Vector3D.Unit.PLUS_Y)).isZero();
        assertThat(ViewDirection.RIGHT.away().distance(Vector3D.Unit.MINUS_X)).isZero();
        assertThat(ViewDirection.BACK.right().distance(Vector3D.Unit.MINUS_X)).isZero();
    }

    @ParameterizedTest
    @MethodSource("directions")
    void directionsAreSquareAndRightHanded(ViewDirection from) {
        assertThat(from.right().dot(from.up())).isCloseTo(0, within(1e-15));
        assertThat(from.up().norm()).isCloseTo(1, within(1e-15));
        assertThat(from.right().cross(from.up()).distance(from.away().negate())).isLessThan(1e-15);
    }

    @ParameterizedTest
    @MethodSource("directions")
    void allCornersAreInThePictureAndOneIsAtItsRim(ViewDirection from) {
        for (boolean perspective : new boolean[] {false, true}) {
            Camera camera = new View(from, perspective, CORNERS, 1).camera(1.6);
            double farthest = 0;
            double[] place = new double[2];
            for (Vector3D corner : CORNERS) {
                assertThat(camera.place(corner, place)).isTrue();
                farthest = Math.max(farthest, Math.max(Math.abs(place[0]) / 1.6, Math.abs(place[1])));
            }
            assertThat(farthest).as("%s, perspective %s", from, perspective).isCloseTo(0.94, within(1e-9));
        }
    }

    @ParameterizedTest
    @MethodSource("directions")
    void aLineOfSightGoesThroughWhatAppearsThere(ViewDirection from) {
        Vector3D point = Vector3D.of(3, -2, 1.5);
        SightLine line = new SightLine();
        double[] place = new double[2];
        Frame element = Frame.about(Vector3D.of(0, 0, -3), Vector3D.of(0.1, -0.2, 1));
        Pupil pupil = new Pupil(Ring.disc(10), Frame.LAYOUT);
        for (Sight sight : List.of(
                new View(from, false, CORNERS, 2).camera(1.6),
                new View(from, true, CORNERS, 2).camera(1.6),
                new Fisheye(element, 90, pupil),
                new Fisheye(element, 65, pupil))) {
            assertThat(sight.place(point, place)).isTrue();
            assertThat(sight.line(place[0], place[1], line)).isTrue();
            Vector3D start = Vector3D.of(line.x, line.y, line.z);
            Vector3D along = Vector3D.of(line.dx, line.dy, line.dz);
            assertThat(along.norm()).isCloseTo(1, within(1e-12));
            assertThat(along.cross(point.subtract(start)).norm()).isLessThan(1e-9);
        }
    }

    @Test
    void anglesAreInProportionToTheDistanceFromTheMiddleOfWhatAPointSees() {
        Fisheye sight = new Fisheye(Frame.LAYOUT, 90, new Pupil(Ring.disc(10), Frame.LAYOUT));
        double[] place = new double[2];
        assertThat(sight.place(Vector3D.of(0, 0, 7), place)).isTrue();
        assertThat(place).containsExactly(0, 0);
        assertThat(sight.place(Vector3D.of(4, 0, 4), place)).isTrue();
        assertThat(place[0]).isCloseTo(0.97 / 2, within(1e-12));
        assertThat(sight.place(Vector3D.of(0, -1, 1e-9), place)).isTrue();
        assertThat(place[1]).isCloseTo(-0.97, within(1e-8));
        assertThat(sight.place(Vector3D.of(0, 1, -0.1), place)).isFalse();
        assertThat(sight.line(0.98, 0, new SightLine())).isFalse();
    }
}
