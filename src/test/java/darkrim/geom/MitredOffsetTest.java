package darkrim.geom;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.apache.commons.geometry.euclidean.twod.Vector2D;
import org.junit.jupiter.api.Test;

class MitredOffsetTest {
    @Test
    void aSquareGrowsByTheDistanceOnEverySide() {
        List<Vector2D> square = Polygon.rectangle(2, 2).corners();
        assertThat(MitredOffset.outward(square, 0.5))
                .isEqualTo(Polygon.rectangle(3, 3).corners());
    }

    /** Steiner: a convex polygon of area A and perimeter P, mitred outward by d, gains P d + d^2 sum tan(turn / 2). */
    @Test
    void theAreaOfATriangleGrowsAsSteinerSays() {
        List<Vector2D> triangle = List.of(Vector2D.of(0, 0), Vector2D.of(4, 0), Vector2D.of(0, 3));
        double d = 0.25;
        double corners = Math.tan(Math.PI / 4)
                + Math.tan((Math.PI - Math.atan2(3, 4)) / 2)
                + Math.tan((Math.PI - Math.atan2(4, 3)) / 2);
        assertThat(Polygon.signedArea(MitredOffset.outward(triangle, d)))
                .isCloseTo(6 + 12 * d + corners * d * d, within(1e-12));
    }

    @Test
    void aSideThatWouldTurnRoundIsRefused() {
        List<Vector2D> notch = List.of(
                Vector2D.of(0, 0),
                Vector2D.of(4, 0),
                Vector2D.of(4, 4),
                Vector2D.of(2.5, 4),
                Vector2D.of(2.5, 2),
                Vector2D.of(1.5, 2),
                Vector2D.of(1.5, 4),
                Vector2D.of(0, 4));
        assertThat(MitredOffset.outward(notch, 0.4)).hasSize(8);
        assertThatThrownBy(() -> MitredOffset.outward(notch, 0.6))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("would vanish");
    }
}
