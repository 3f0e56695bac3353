package darkrim.shadow;

import static org.assertj.core.api.Assertions.assertThat;

import darkrim.geom.Polygon;
import darkrim.scene.Beam;
import darkrim.scene.Scene;
import java.util.stream.IntStream;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class FacetEdgesTest {
    private static final Beam BEAM = Beam.of(TestParts.pupilAt(10, Polygon.rectangle(4, 4)));

    @Test
    void aBlockHasItsEdgesAndIsClosedAndASheetIsNot() {
        Scene scene = new TestParts()
                .block("b", 0, 1, 0, 2, 0, 3)
                .sheet("s", 5, 6, 5, 6, 1)
                .build(BEAM);
        FacetEdges edges = FacetEdges.of(scene);
        assertThat(edges).isSameAs(FacetEdges.of(scene));
        assertThat(edges.facetCount()).isEqualTo(14);
        assertThat(edges.count()).isEqualTo(18 + 5);
        int single = 0;
        for (int f = 0; f < 14; f++) {
            for (int k = 0; k < 3; k++) {
                int edge = edges.of(f, k);
                single += edges.useCount(edge) == 1 ? 1 : 0;
                assertThat(edges.useCount(edge)).isBetween(1, 2);
                boolean own = false;
                for (int u = 0; u < edges.useCount(edge); u++) {
                    own |= edges.use(edge, u) == f;
                }
                assertThat(own).isTrue();
                Vector3D[] ends = {
                    Vector3D.of(edges.ends()[6 * edge], edges.ends()[6 * edge + 1], edges.ends()[6 * edge + 2]),
                    Vector3D.of(edges.ends()[6 * edge + 3], edges.ends()[6 * edge + 4], edges.ends()[6 * edge + 5])
                };
                assertThat(ends).containsExactlyInAnyOrder(scene.corner(f, k), scene.corner(f, (k + 1) % 3));
            }
        }
        assertThat(single).isEqualTo(4);
        assertThat(edges.isClosed(edges.solid(0))).isTrue();
        assertThat(edges.isClosed(edges.solid(13))).isFalse();
        assertThat(edges.solid(0)).isEqualTo(edges.solid(11)).isNotEqualTo(edges.solid(12));
        assertThat(edges.facets(edges.solid(0)))
                .containsExactly(IntStream.range(0, 12).toArray());
        assertThat(edges.facets(edges.solid(12))).containsExactly(12, 13);
        double[] box = {0, 0, 0, 1, 2, 3};
        for (int k = 0; k < 6; k++) {
            assertThat(edges.bound(edges.solid(0), k)).isEqualTo(box[k]);
        }
    }

    @ParameterizedTest
    @CsvSource({"0.4, false", "0.6, true"})
    void boxesTouchWithinADistanceAlongEveryAxis(double distance, boolean touch) {
        for (int axis = 0; axis < 3; axis++) {
            for (double side : new double[] {-1.5, 1.5}) {
                double[] at = new double[3];
                at[axis] = side;
                Scene scene = new TestParts()
                        .block("a", 0, 1, 0, 1, 0, 1)
                        .block("b", at[0], at[0] + 1, at[1], at[1] + 1, at[2], at[2] + 1)
                        .build(BEAM);
                FacetEdges edges = FacetEdges.of(scene);
                assertThat(edges.boxesTouch(edges.solid(0), edges.solid(12), distance))
                        .isEqualTo(touch);
                assertThat(edges.boxesTouch(edges.solid(12), edges.solid(0), distance))
                        .isEqualTo(touch);
                double[] points = {at[0], at[1], at[2], at[0] + 1, at[1] + 1, at[2] + 1};
                assertThat(edges.boxTouches(edges.solid(0), points, distance)).isEqualTo(touch);
            }
        }
    }

    /** Three sheets that meet at one edge: a hinge. And a block turned inside out is as closed as any. */
    @Test
    void anEdgeMayHaveMoreThanTwoFacets() {
        Vector3D a = Vector3D.of(0, 0, 0);
        Vector3D b = Vector3D.of(0, 1, 0);
        Scene scene = new TestParts()
                .sheet("x", a, b, Vector3D.of(1, 1, 0), Vector3D.of(1, 0, 0))
                .sheet("y", a, b, Vector3D.of(-1, 1, 0.5), Vector3D.of(-1, 0, 0.5))
                .sheet("z", a, b, Vector3D.of(0, 1, 1), Vector3D.of(0, 0, 1))
                .build(BEAM);
        FacetEdges edges = FacetEdges.of(scene);
        int most = 0;
        for (int e = 0; e < edges.count(); e++) {
            most = Math.max(most, edges.useCount(e));
        }
        assertThat(most).isEqualTo(3);
        assertThat(edges.solid(0)).isEqualTo(edges.solid(5));
    }
}
