package darkrim.shadow;

import static org.assertj.core.api.Assertions.assertThat;

import darkrim.geom.Frame;
import darkrim.geom.Polygon;
import darkrim.scene.Beam;
import darkrim.scene.FieldLimit;
import darkrim.scene.Scene;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.IntStream;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Test;

class IsFullyLitTest {
    private static final Frame MIDDLE = Frame.about(Vector3D.of(0, 0, 5), Vector3D.Unit.PLUS_Z);

    private final Scene scene = new TestParts()
            .block("block", 0, 1, -1, 1, 4, 6)
            .sheet("far", 15, 16, 15, 16, 5)
            .build(new Beam(
                    TestParts.pupilAt(10, Polygon.rectangle(4, 4)),
                    Optional.of(new FieldLimit(Polygon.rectangle(30, 30), MIDDLE)),
                    OptionalDouble.empty()));
    private final Tolerance tolerance = Tolerance.of(scene.bound(), 1e-6);
    private final FacetEdges edges = FacetEdges.of(scene);
    private final IsFullyLit lit = new IsFullyLit(
            scene,
            scene.corners(),
            edges,
            tolerance,
            new BlockedLine(scene, TestParts.tree(scene), scene.corners(), tolerance),
            "");

    private Pair pair(double x) {
        FlatPiece pupil = FlatPiece.of(scene.covering().pupil().frame(), new double[] {-2, -2, 2, -2, 2, 2, -2, 2});
        FlatPiece face = FlatPiece.of(
                Frame.about(Vector3D.of(x, 0, 0), Vector3D.Unit.PLUS_Z), new double[] {-1, -1, 1, -1, 1, 1, -1, 1});
        return new Pair(pupil, face, 0, tolerance);
    }

    private boolean holds(double x, int... facets) {
        return lit.holds(pair(x).shaft(), pair(x), facets);
    }

    /** The block has 12 edges where its faces meet, each between two facets, and 6 diagonals within its faces. */
    @Test
    void whatIsInTheWayIsToldWithTheEdgesWhereFacesMeetOnly() {
        int[] all = IntStream.range(0, scene.facetCount()).toArray();
        assertThat(holds(0, all)).isFalse();
        assertThat(lit.blockers())
                .hasSize(12)
                .isSubsetOf(IntStream.range(0, 12).boxed().toList());
        assertThat(lit.openCount()).isEqualTo(24);
        for (int i = 0; i < lit.openCount(); i++) {
            Vector3D[] ends = ends(lit.open(i));
            // Along an axis, and in no other way as the diagonals are.
            Vector3D way = ends[1].subtract(ends[0]);
            assertThat(Math.abs(way.getX()) + Math.abs(way.getY()) + Math.abs(way.getZ()))
                    .isEqualTo(way.norm());
        }
        assertThat(IntStream.range(0, 24).map(lit::open).distinct().count()).isEqualTo(12);
    }

    private Vector3D[] ends(int edge) {
        double[] ends = edges.ends();
        int at = 6 * edge;
        return new Vector3D[] {
            Vector3D.of(ends[at], ends[at + 1], ends[at + 2]), Vector3D.of(ends[at + 3], ends[at + 4], ends[at + 5])
        };
    }

    @Test
    void whatWasInTheWayOfOnePairIsForgottenForTheNext() {
        assertThat(holds(0, 0, 1)).isFalse();
        assertThat(lit.blockers()).containsExactly(0, 1);
        assertThat(holds(0)).isTrue();
        assertThat(lit.blockers()).isEmpty();
        assertThat(lit.openCount()).isZero();
        // The sheet far away is in nothing's way.
        assertThat(holds(0, 12, 13)).isTrue();
        // A face so far aside that its lines run beyond the limit: nothing in the way, and not lit in full.
        assertThat(holds(40)).isFalse();
        assertThat(lit.blockers()).isEmpty();
    }

    @Test
    void aLineBeyondTheFieldLimitIsLookedForTowardItsNearestSide() {
        Question.Aim aim = lit.aim(pair(28)).orElseThrow();
        // The middle line crosses at x = 14; the limit ends at 15.
        assertThat(aim.pupil().normalize().distance(Vector3D.Unit.PLUS_X)).isLessThan(1e-9);
        assertThat(aim.face().normalize().distance(Vector3D.Unit.PLUS_X)).isLessThan(1e-9);
        assertThat(lit.holdsAfterAll(pair(0).shaft(), pair(0), new int[0])).isFalse();
        assertThat(List.of(lit.aim(pair(-28)).orElseThrow().face().getX())).allMatch(x -> x < 0);
    }
}
