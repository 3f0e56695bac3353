package darkrim.view.look;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import darkrim.view.camera.Camera;
import java.util.List;
import java.util.Optional;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Test;

class LookTest {
    private static final Look LOOK = Look.from(new Camera(Vector3D.ZERO, 0, 0, 10, false));

    @Test
    void isolatingHidesAllOthersAndShowingBringsThemBack() {
        Look alone = LOOK.isolating(List.of("b"), List.of("a", "b", "c"));
        assertThat(alone.hidden()).containsExactly("a", "c");
        assertThat(alone.showing(List.of("a")).hidden()).containsExactly("c");
        assertThat(LOOK.hiding(List.of("x")).shows("x")).isFalse();
    }

    @Test
    void everyStepCanBeTakenBackAndAgain() {
        History<Integer> history = new History<>(1);
        history.enter(2);
        history.enter(2);
        history.enter(3);
        assertThat(history.back()).isEqualTo(2);
        assertThat(history.back()).isEqualTo(1);
        assertThat(history.back()).isEqualTo(1);
        assertThat(history.forward()).isEqualTo(2);
        history.enter(7);
        assertThat(history.canGoForward()).isFalse();
        assertThat(history.back()).isEqualTo(2);
    }

    @Test
    void aDragIsOneStep() {
        History<Integer> history = new History<>(1);
        history.enter(2);
        history.replace(3);
        history.replace(4);
        assertThat(history.back()).isEqualTo(1);
    }

    /** The mouse may be moved and come back before anything has changed. */
    @Test
    void aDragThatBeginsWhereItStandsCanBeTakenBackToo() {
        LookLine looks = new LookLine(LOOK);
        looks.drag(look -> look);
        looks.drag(look -> look.with(Light.TOTAL));
        looks.drag(look -> look.with(Light.NONE));
        looks.rest();
        looks.undo();
        assertThat(looks.now()).isEqualTo(LOOK);
        assertThat(looks.canUndo()).isFalse();
    }

    @Test
    void theFirstLookHasNoWayBackToBeforeIt() {
        LookLine looks = new LookLine(LOOK);
        looks.change(look -> look.with(Light.TOTAL));
        looks.begin(LOOK.with(Light.NONE));
        assertThat(looks.canUndo()).isFalse();
        assertThat(looks.canRedo()).isFalse();
        assertThat(looks.now().light()).isEqualTo(Light.NONE);
    }

    @Test
    void aRulerMeasuresBetweenTwoPointsAndBeginsAnewWithAThird() {
        Ruler ruler = Ruler.EMPTY.with(Vector3D.of(1, 2, 3)).with(Vector3D.of(4, 6, 3));
        assertThat(ruler.words()).isEqualTo("5.000 mm  (dx 3.000, dy 4.000, dz 0.000)");
        assertThat(ruler.with(Vector3D.ZERO).isWhole()).isFalse();
    }

    @Test
    void aRangeRunsUpward() {
        assertThatThrownBy(() -> new ScaleChoice.Range(2, 1)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new ScaleChoice.Range(-1, 1)).isInstanceOf(IllegalArgumentException.class);
    }

    @Test
    void verdictsAreMarkedInTheLightThatTheyAreAboutOnly() {
        assertThat(LOOK.marksVerdicts()).isTrue();
        Look moon = LOOK.with(Light.TOTAL).litBy(Optional.of("moon"));
        assertThat(moon.marksVerdicts()).isFalse();
        assertThat(moon.litBy(Optional.empty()).marksVerdicts()).isTrue();
        assertThat(moon.lightWords()).isEqualTo("direct + once reflected, of moon");
        assertThat(moon.with(Light.NONE).lightWords()).isEqualTo("parts only");
        assertThat(LOOK.lightWords()).isEqualTo("direct");
    }
}
