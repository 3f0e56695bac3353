package darkrim.view.camera;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

class CameraTest {
    private static final Vector3D POINT = Vector3D.of(12, -7, 31);

    private static Camera camera(boolean parallel) {
        return new Camera(Vector3D.of(3, 4, 5), -50, 25, 80, parallel);
    }

    @ParameterizedTest
    @ValueSource(booleans = {false, true})
    void theLineOfSightThroughWhereAPointIsSeenRunsThroughThePoint(boolean parallel) {
        Camera camera = camera(parallel);
        Vector3D seen = camera.project(POINT, 640, 400);
        SightLine line = camera.through(seen.getX(), seen.getY(), 640, 400, 500);
        Vector3D to = POINT.subtract(line.origin());
        assertThat(to.cross(line.direction()).norm()).isLessThan(1e-9);
        assertThat(to.dot(line.direction())).isPositive();
    }

    @ParameterizedTest
    @ValueSource(booleans = {false, true})
    void aPointThatIsOrbitedOrZoomedAboutStaysInItsPixel(boolean parallel) {
        Camera camera = camera(parallel);
        Vector3D before = camera.project(POINT, 640, 400);
        for (Camera moved : new Camera[] {camera.orbited(POINT, 33, -20), camera.zoomed(POINT, 0.3)}) {
            Vector3D after = moved.project(POINT, 640, 400);
            assertThat(after.getX()).isCloseTo(before.getX(), within(1e-9));
            assertThat(after.getY()).isCloseTo(before.getY(), within(1e-9));
        }
    }

    @ParameterizedTest
    @ValueSource(booleans = {false, true})
    void panningByWhatAPixelMeasuresMovesAPointByAPixel(boolean parallel) {
        Camera camera = camera(parallel);
        double scale = camera.millimetresPerPixel(POINT, 400);
        Vector3D before = camera.project(POINT, 640, 400);
        Vector3D after = camera.panned(10 * scale, 4 * scale).project(POINT, 640, 400);
        assertThat(after.getX() - before.getX()).isCloseTo(10, within(1e-9));
        assertThat(after.getY() - before.getY()).isCloseTo(4, within(1e-9));
    }

    @ParameterizedTest
    @EnumSource(Direction.class)
    void aStandardDirectionShowsItsAxesUpright(Direction direction) {
        Camera camera = camera(true).from(direction);
        Vector3D right = camera.right();
        Vector3D up = camera.up();
        assertThat(camera.back().distance(right.cross(up))).isLessThan(1e-12);
        Vector3D expected = switch (direction) {
            case TOP -> Vector3D.Unit.PLUS_Y;
            case BOTTOM -> Vector3D.Unit.MINUS_Y;
            default -> Vector3D.Unit.PLUS_Z;
        };
        assertThat(up.distance(expected)).isLessThan(1e-12);
    }

    @ParameterizedTest
    @ValueSource(booleans = {false, true})
    void whatIsFittedFillsThePictureAndNoMore(boolean parallel) {
        Box box = new Box(Vector3D.of(-60, -40, -3), Vector3D.of(70, 45, 30));
        for (double width : new double[] {300, 900}) {
            Camera camera = camera(parallel).fitted(box, width / 400);
            double used = 0;
            for (Vector3D corner : box.corners()) {
                Vector3D seen = camera.project(corner, width, 400);
                assertThat(seen.getX()).isBetween(0.0, width);
                assertThat(seen.getY()).isBetween(0.0, 400.0);
                used = Math.max(used, Math.max(Math.abs(seen.getX() / width - 0.5), Math.abs(seen.getY() / 400 - 0.5)));
            }
            // Room of 6 % around it, a little less in perspective.
            assertThat(used).isBetween(0.44, 0.5);
        }
    }

    @Test
    void changingTheProjectionKeepsTheSizeAtTheFocus() {
        Camera camera = camera(false);
        Vector3D beside = camera.focus().add(camera.right().multiply(10));
        assertThat(camera.projecting(true).project(beside, 640, 400).getX())
                .isCloseTo(camera.project(beside, 640, 400).getX(), within(1e-9));
    }

    @Test
    void theViewerNeverTurnsOverThePole() {
        assertThat(camera(false).orbited(POINT, 0, 500).elevation()).isEqualTo(90);
        assertThat(camera(false).orbited(POINT, 0, -500).elevation()).isEqualTo(-90);
    }

    @Test
    void theBoxAroundPointsHoldsThemExactly() {
        assertThat(Box.around(new double[] {1, 2, 3, -1, 5, 0, 0, 0, 9}))
                .isEqualTo(new Box(Vector3D.of(-1, 0, 0), Vector3D.of(1, 5, 9)));
    }
}
