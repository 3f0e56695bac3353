package darkrim.view.parts;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import darkrim.view.camera.Camera;
import darkrim.view.camera.Direction;
import darkrim.view.camera.SightLine;
import java.util.Optional;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Test;

/** In nightglow-a the lid lies from 3.8 to 5 mm above the detectors; die[1,1] is centred at (-20.1, -20.1). */
class PickerTest {
    private static final Stage STAGE = Stages.of("nightglow-a.yaml");
    private static final Picker PICKER = new Picker(STAGE);

    private static SightLine down(double x, double y) {
        return new SightLine(Vector3D.of(x, y, 200), Vector3D.Unit.MINUS_Z);
    }

    private static boolean isShown(int surface, String hidden) {
        return !STAGE.scene().surfaces().get(surface).name().startsWith(hidden);
    }

    @Test
    void aLineThroughAnOpeningMeetsTheDetector() {
        Hit hit = PICKER.first(down(-20.1, -20.1), s -> true, Optional.empty()).orElseThrow();
        assertThat(hit.name()).isEqualTo("mosaic/die[1,1]/active");
        assertThat(hit.point().distance(Vector3D.of(-20.1, -20.1, 0))).isLessThan(1e-9);
    }

    @Test
    void whatIsHiddenIsLookedThrough() {
        assertThat(PICKER.first(down(0.5, -20.1), s -> true, Optional.empty()))
                .get()
                .extracting(Hit::name)
                .isEqualTo("lid/top");
        Hit below = PICKER.first(down(0.5, -20.1), s -> isShown(s, "lid"), Optional.empty())
                .orElseThrow();
        assertThat(below.name()).startsWith("mosaic/");
    }

    @Test
    void aSectionThroughTheLidShowsItsCutFace() {
        Optional<Section> section = Optional.of(new Section(2, 4.4, false));
        Hit hit = PICKER.first(down(0.5, -20.1), s -> true, section).orElseThrow();
        assertThat(hit.surface()).isEmpty();
        assertThat(hit.name()).isEqualTo("lid");
        assertThat(hit.point().getZ()).isCloseTo(4.4, within(1e-9));
        Hit hidden =
                PICKER.first(down(0.5, -20.1), s -> isShown(s, "lid"), section).orElseThrow();
        assertThat(hidden.name()).startsWith("mosaic/");
    }

    @Test
    void nothingIsMetBeyondASection() {
        Optional<Section> below = Optional.of(new Section(2, 3, true));
        assertThat(PICKER.first(down(-20.1, -20.1), s -> true, below)).isEmpty();
        SightLine away = new SightLine(Vector3D.of(0, 0, 2), Vector3D.Unit.MINUS_Z);
        assertThat(PICKER.first(away, s -> true, below)).isEmpty();
    }

    @Test
    void thePixelWhereTheCameraShowsAPointPicksIt() {
        Camera camera = Camera.at(STAGE.box(), 1.6).from(Direction.TOP);
        Vector3D seen = camera.project(Vector3D.of(20.1, 20.1, 0), 640, 400);
        SightLine line = camera.through(seen.getX(), seen.getY(), 640, 400, 500);
        assertThat(PICKER.first(line, s -> true, Optional.empty()))
                .get()
                .extracting(Hit::name)
                .isEqualTo("mosaic/die[2,2]/active");
    }
}
