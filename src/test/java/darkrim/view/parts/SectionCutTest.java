package darkrim.view.parts;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import darkrim.scene.Scene;
import darkrim.scene.Surface;
import java.util.Arrays;
import java.util.stream.DoubleStream;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Test;

/** In nightglow-a the lid is a plate of 130 x 130 x 1.2 mm, its underside at 3.8 mm, with four openings of 38.6 mm. */
class SectionCutTest {
    private static final Stage STAGE = Stages.of("nightglow-a.yaml");
    private static final Scene SCENE = STAGE.scene();
    private static final int LID = STAGE.names().indexOf("lid");

    private static double area(double[] triangles) {
        double area = 0;
        for (int at = 0; at < triangles.length; at += 9) {
            area += signedArea(triangles, at);
        }
        return area;
    }

    /** Of the projection on the xy plane. */
    private static double signedArea(double[] t, int at) {
        return ((t[at + 3] - t[at]) * (t[at + 7] - t[at + 1]) - (t[at + 4] - t[at + 1]) * (t[at + 6] - t[at])) / 2;
    }

    @Test
    void theCutFaceOfALidHasTheAreaOfThePlateWithoutItsOpenings() {
        SectionCut cut = new SectionCut(SCENE, new Section(2, 4.4, false));
        double[] filled = cut.fill(cut.outline(STAGE.solids().get(LID)));
        assertThat(area(filled)).isCloseTo(130 * 130 - 4 * 38.6 * 38.6, within(1e-9));
        assertThat(filled[2]).isEqualTo(4.4);
    }

    @Test
    void theCutFaceFacesTheSideThatIsCutAway() {
        for (boolean flipped : new boolean[] {false, true}) {
            SectionCut cut = new SectionCut(SCENE, new Section(2, 4.4, flipped));
            double[] filled = cut.fill(cut.outline(STAGE.solids().get(LID)));
            for (int at = 0; at < filled.length; at += 9) {
                assertThat(signedArea(filled, at) > 0).isNotEqualTo(flipped);
            }
        }
    }

    @Test
    void theTwoHalvesOfASurfaceAddUpToIt() {
        for (Surface surface : SCENE.surfaces()) {
            double kept = 0;
            for (boolean flipped : new boolean[] {false, true}) {
                SectionCut cut = new SectionCut(SCENE, new Section(0, 17.3, flipped));
                Pieces pieces = cut.pieces(surface);
                double[] corners = pieces.corners();
                for (int at = 0; at < corners.length; at += 9) {
                    kept += size(corners, at);
                }
                assertThat(cut.side(surface) == SectionCut.Side.GONE).isEqualTo(pieces.count() == 0);
            }
            assertThat(kept).as(surface.name()).isCloseTo(surface.area(), within(1e-9 * surface.area()));
        }
    }

    private static double size(double[] t, int at) {
        Vector3D a = Vector3D.of(t[at], t[at + 1], t[at + 2]);
        Vector3D b = Vector3D.of(t[at + 3], t[at + 4], t[at + 5]);
        Vector3D c = Vector3D.of(t[at + 6], t[at + 7], t[at + 8]);
        return b.subtract(a).cross(c.subtract(a)).norm() / 2;
    }

    @Test
    void cutEdgesEndInThePlane() {
        SectionCut cut = new SectionCut(SCENE, new Section(0, 17.3, false));
        double[] kept = cut.edges(new double[] {0, 1, 2, 34.6, 1, 2, 20, 0, 0, 30, 0, 0, 1, 1, 1, 2, 2, 2});
        assertThat(kept).containsExactly(new double[] {0, 1, 2, 17.3, 1, 2, 1, 1, 1, 2, 2, 2}, within(1e-12));
    }

    @Test
    void anOutlineWithAHoleIsFilledWithoutTheHole() {
        double[] square = {0, 0, 4, 0, 4, 0, 4, 4, 4, 4, 0, 4, 0, 4, 0, 0};
        double[] hole = {1, 1, 2, 3, 2, 3, 3, 1, 3, 1, 1, 1};
        double[] both =
                DoubleStream.concat(Arrays.stream(square), Arrays.stream(hole)).toArray();
        double[] flat = new EvenOddFill(both).triangles();
        double area = 0;
        for (int at = 0; at < flat.length; at += 6) {
            area += ((flat[at + 2] - flat[at]) * (flat[at + 5] - flat[at + 1])
                            - (flat[at + 3] - flat[at + 1]) * (flat[at + 4] - flat[at]))
                    / 2;
        }
        assertThat(area).isCloseTo(16 - 2, within(1e-12));
    }
}
