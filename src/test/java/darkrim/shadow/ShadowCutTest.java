package darkrim.shadow;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import darkrim.geom.Frame;
import darkrim.geom.Polygon;
import darkrim.scene.Pupil;
import java.util.List;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Test;

class ShadowCutTest {
    /** At z = 100, 2 mm in x; the cut keeps clear of a shadow by a millionth of the reach. */
    private static final Pupil PUPIL = new Pupil(
            Polygon.rectangle(20, 20),
            new Frame(Vector3D.of(2, 0, 100), Vector3D.Unit.PLUS_X, Vector3D.Unit.MINUS_Y, Vector3D.Unit.MINUS_Z));

    private static final double CLEAR = 1e-6 * PUPIL.outline().reach();

    private static final FlatPiece CELL =
            FlatPiece.of(PUPIL.frame(), new double[] {-10, -10, 10, -10, 10, 10, -10, 10});
    private static final FlatPiece PIECE = FlatPiece.of(
            Frame.about(Vector3D.of(0, 0.5, 4), Vector3D.Unit.PLUS_Z), new double[] {-1, -1, 1, -1, 1, 1, -1, 1});

    /** A triangle whose first side hides what lies beyond it, and whose other sides are far away. */
    private static double[] beyond(double x, double y, double acrossX, double acrossY, double z) {
        double far = 500;
        return new double[] {
            x - far * acrossY,
            y + far * acrossX,
            z,
            x + far * acrossY,
            y - far * acrossX,
            z,
            x + 9 * far * acrossX,
            y + 9 * far * acrossY,
            z
        };
    }

    /** From the corner of the piece nearest to the facet, by intersecting lines: clear is what every point of the piece sees past the side. */
    @Test
    void theCellIsCutWhereTheShadowOfASideOfTheFacetEnds() {
        // The side at x = 4, z = 52, in the middle between 4 and 100: seen from x = 1 it stands before x = 7, 5 in the
        // pupil's frame.
        assertClear(beyond(4, 0, 1, 0, 52), 15 - CLEAR, 20);
        // From x = -1 the side at x = -2 stands before x = -3.
        assertClear(beyond(-2, 0, -1, 0, 52), 15 - CLEAR, 20);
        // Along y, at z = 28, a quarter of the way: from y = 1.5 the side at y = 3 stands before y = 7.5, from
        // y = -0.5 that at -1 before -2.5.
        assertClear(beyond(0, 3, 0, 1, 28), 17.5 - CLEAR, 20);
        assertClear(beyond(0, -1, 0, -1, 28), 12.5 - CLEAR, 20);
    }

    private static void assertClear(double[] facet, double width, double length) {
        // The second facet of three.
        double[] corners = new double[27];
        System.arraycopy(facet, 0, corners, 9, 9);
        ShadowCut cut = new ShadowCut(corners, PUPIL);
        List<FlatPiece> parts = cut.cut(CELL, PIECE, List.of(1));
        assertThat(parts).hasSize(2);
        assertThat(parts.get(1).area()).isCloseTo(width * length, within(1e-9));
        assertThat(parts.get(0).area()).isCloseTo(400 - width * length, within(1e-9));
        assertThat(cut.steps()).isGreaterThan(4);
    }

    @Test
    void noCutIsWorthItWhereTheShadowLeavesNextToNothingOrAlmostAll() {
        ShadowCut none = new ShadowCut(new double[9], PUPIL);
        assertThat(none.cut(CELL, PIECE, List.of())).isEmpty();
        // Without a side of any length there is no plane.
        assertThat(none.cut(CELL, PIECE, List.of(0))).isEmpty();
        assertThat(none.steps()).isZero();
        for (double[] each : new double[][] {{6.31}, {6.29}, {-3.29}, {-3.31}}) {
            // On either side of a strip of 0.4, a fiftieth of the cell.
            double x = each[0];
            List<FlatPiece> parts = new ShadowCut(beyond(x, 0, 1, 0, 52), PUPIL).cut(CELL, PIECE, List.of(0));
            double clear = 2 * x - 1 - 2 + 10;
            assertThat(parts.isEmpty()).as("%s leaves %s", x, clear).isEqualTo(clear < 0.4 || clear > 19.6);
        }
    }
}
