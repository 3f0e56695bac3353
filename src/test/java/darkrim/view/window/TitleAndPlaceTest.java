package darkrim.view.window;

import static org.assertj.core.api.Assertions.assertThat;

import darkrim.diagnostic.Findings;
import darkrim.study.irradiance.PlacedLayout;
import darkrim.view.parts.Stage;
import java.nio.file.Path;
import javafx.geometry.Rectangle2D;
import org.junit.jupiter.api.Test;

/** What stands over a side, and where the first window stands. */
class TitleAndPlaceTest {
    @Test
    void theTitleOfASideSaysWhichShapeIsShown() throws Exception {
        var layout =
                PlacedLayout.of(Path.of("geometries", "nightglow-80k.yaml")).layout();
        assertThat(SideTitle.words(Stage.of(layout, new Findings())))
                .startsWith(", revision C; cold shape, at 80 K: Night-glow camera");
        assertThat(SideTitle.words(Stage.of(layout.warm(), new Findings())))
                .startsWith(", revision C; warm shape, as drawn at 293 K: Night-glow camera");
    }

    @Test
    void theFirstWindowIsNotLargerThanItsScreenAndUsesALargeOne() {
        assertThat(ViewerWindow.fitted(new Rectangle2D(0, 0, 2560, 1440)))
                .isEqualTo(new Rectangle2D(320, 180, 1920, 1080));
        assertThat(ViewerWindow.fitted(new Rectangle2D(0, 0, 1600, 1000)))
                .isEqualTo(new Rectangle2D(160, 100, 1280, 800));
        assertThat(ViewerWindow.fitted(new Rectangle2D(0, 0, 1280, 720))).isEqualTo(new Rectangle2D(0, 0, 1280, 720));
        assertThat(ViewerWindow.fitted(new Rectangle2D(100, 30, 2000, 700)))
                .isEqualTo(new Rectangle2D(350, 30, 1500, 700));
        assertThat(ViewerWindow.fitted(new Rectangle2D(0, 0, 1024, 768))).isEqualTo(new Rectangle2D(0, 0, 1024, 768));
    }
}
