package darkrim.shadow;

import static org.assertj.core.api.Assertions.assertThat;

import darkrim.geom.Ring;
import darkrim.scene.Beam;
import darkrim.scene.Scene;
import darkrim.scene.Surface;
import darkrim.trace.FacetTree;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

class MosaicTest {
    private static final double PITCH = 40.2;

    /** A 2x2 mosaic with readouts, bond blocks and a carrier behind a lid with four knife-edged openings. */
    static Scene mosaic(double halfOpening, double lidHeight) {
        TestParts parts = new TestParts();
        List<double[]> openings = new ArrayList<>();
        for (int i = -1; i <= 1; i += 2) {
            for (int j = -1; j <= 1; j += 2) {
                double x = i * PITCH / 2;
                double y = j * PITCH / 2;
                String die = "mosaic/die[" + (i + 3) / 2 + "," + (j + 3) / 2 + "]";
                double a = 18.432;
                parts.sheet(die + "/active", x - a, x + a, y - a, y + a, 0);
                double e = 19.2;
                parts.block(die + "/edge", x - e, x + e, y - e, y + e, -0.8, -0.001);
                double outX = i * 2.2;
                double[] r = {x - 19.6 + Math.min(0, outX), x + 19.6 + Math.max(0, outX), y - 19.6, y + 19.6};
                parts.block(die + "/readout", r[0], r[1], r[2], r[3], -1.5, -0.8);
                double pad = i > 0 ? r[1] - 1 : r[0];
                parts.block(die + "/bonds", pad, pad + 1, y - 15, y + 15, -0.8, -0.45);
                openings.add(new double[] {x - halfOpening, x + halfOpening, y - halfOpening, y + halfOpening});
            }
        }
        parts.block("carrier", -50, 50, -50, 50, -5, -1.5);
        parts.plate("lid", new double[] {-60, 60, -60, 60}, openings, new double[][] {
            {lidHeight + 0.8, 0}, {lidHeight + 0.75, 0}, {lidHeight, 0.4}
        });
        parts.block("wall/+x", 55, 58, -58, 58, -5, lidHeight);
        parts.block("wall/-x", -58, -55, -58, 58, -5, lidHeight);
        parts.block("wall/+y", -55, 55, 55, 58, -5, lidHeight);
        parts.block("wall/-y", -55, 55, -58, -55, -5, lidHeight);
        return parts.build(Beam.of(TestParts.pupilAt(320, new Ring(22.5, 6))));
    }

    @Test
    void allFacesBelowTheLidAreProvedDarkWithinASecond() {
        Scene scene = mosaic(18.44, 2.2);
        FacetTree tree = TestParts.tree(scene);
        List<Surface> keepDark = scene.surfaces().stream()
                .filter(s -> !s.name().startsWith("lid")
                        && !s.name().contains("active")
                        && !s.name().endsWith("edge/+z"))
                .toList();
        double seconds = Double.POSITIVE_INFINITY;
        for (int run = 0; run < 5; run++) {
            long start = System.nanoTime();
            DarknessProof proof = new DarknessProof(scene, tree);
            List<Darkness> found = keepDark.parallelStream().map(proof::of).toList();
            seconds = Math.min(seconds, (System.nanoTime() - start) * 1e-9);
            for (int i = 0; i < found.size(); i++) {
                assertThat(found.get(i)).as(keepDark.get(i).name()).isInstanceOf(Darkness.Dark.class);
            }
        }
        assertThat(seconds).as("best of five, first runs warm up").isLessThan(1);
    }
}
