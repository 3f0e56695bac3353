package darkrim.shadow;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import darkrim.geom.Ring;
import darkrim.scene.Beam;
import darkrim.scene.Scene;
import java.util.List;
import org.junit.jupiter.api.Test;

class RimMarginTest {
    @Test
    void marginsAlongTheRimOfAnActiveAreaAreThoseOfItsSidesAndCorners() {
        // Opening of half sides 10, 12 at h = 20; the fully lit zone is 10 s - m by 12 s - m with s = H / (H - h), m =
        // r h / (H - h).
        double scale = 200 / 180.0;
        double image = 15 * 20 / 180.0;
        Scene scene = new TestParts()
                .plate(
                        "lid",
                        new double[] {-90, 90, -90, 90},
                        List.of(new double[] {-10, 10, -12, 12}),
                        new double[][] {{20, 0}, {19.999999999, 0}})
                .sheet("active", -9, 10, -11, 11, 0)
                .build(Beam.of(TestParts.pupilAt(200, Ring.disc(15))));
        double x = 10 * scale - image;
        double y = 12 * scale - image;
        List<RimMargin> rim =
                TestParts.margins(scene).pupilAlongRim(scene.surface("active").orElseThrow());
        assertThat(rim).hasSize(8);
        for (RimMargin place : rim) {
            double inX = x - Math.abs(place.point().getX());
            double inY = y - Math.abs(place.point().getY());
            double expected = Math.min(inX, inY);
            if (expected < 0) {
                // Moved in along the direction until the nearer side of the zone is reached.
                double cosine = Math.abs(
                        inX < inY ? place.outward().getX() : place.outward().getY());
                expected /= cosine;
            }
            assertThat(place.margin().millimetres()).as("%s", place.point()).isCloseTo(expected, within(1e-6));
            assertThat(place.margin().setBy()).contains("lid/opening[0]");
        }
    }
}
