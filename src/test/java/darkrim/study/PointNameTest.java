package darkrim.study;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import darkrim.scene.Surface;
import darkrim.view.parts.Stage;
import darkrim.view.parts.Stages;
import org.junit.jupiter.api.Test;

class PointNameTest {
    private static final Stage STAGE = Stages.of("nightglow-a.yaml");

    @Test
    void aPointIsReadAsItIsWritten() throws NoSuchPoint {
        for (String text : new String[] {"mosaic/die[1,2]/active:0.98,0.5", "a:b/c:1e-5,1", "sheet/front:0,0"}) {
            assertThat(PointName.read(text).text()).isEqualTo(text);
        }
        assertThat(PointName.read("sheet/front")).isEqualTo(PointName.middle("sheet/front"));
    }

    @Test
    void aPointInSpaceHasTheNameThatLeadsBackToIt() throws NoSuchPoint {
        int tried = 0;
        for (Surface surface : STAGE.scene().surfaces()) {
            SurfacePoint from;
            try {
                from = SurfacePoint.of(STAGE.scene(), STAGE.tree(), surface.name(), 0.37, 0.81);
            } catch (NoSuchPoint curvedOrBesideTheOutline) {
                continue;
            }
            PointName name = PointName.at(STAGE.scene(), surface, from.position());
            SurfaceRectangle rectangle = SurfaceRectangle.of(STAGE.scene(), surface);
            double size = Math.max(rectangle.alongU().norm(), rectangle.alongV().norm());
            assertThat(rectangle.at(name.u(), name.v()).distance(from.position()))
                    .as(name.text())
                    .isLessThan(1e-5 * size);
            tried++;
        }
        assertThat(tried).isGreaterThan(50);
    }

    @Test
    void sharesStayWithinTheRectangle() {
        assertThat(PointName.rounded("a", -1e-9, 1.0000001)).isEqualTo(new PointName("a", 0, 1));
    }

    @Test
    void whatIsNoPointIsRefusedWithAnExample() {
        for (String text : new String[] {"a:", "a:0.5", "a:0.5,1.01", "a:NaN,0"}) {
            assertThatThrownBy(() -> PointName.read(text))
                    .isInstanceOf(NoSuchPoint.class)
                    .hasMessageContaining("'mosaic/die[1,2]/active:0.25,0.5'");
        }
    }
}
