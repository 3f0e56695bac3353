package darkrim.geom.mesh;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import darkrim.geom.mesh.MeshFlaw.Kind;
import java.util.List;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Test;

/** What is wrong with a mesh is found with its place and size; what is mended leaves volume and area of the true shape. */
class MendingTest {
    private static final double EPS = 1e-9;

    /** 10 x 6 x 4: volume 240, area 2 (60 + 40 + 24) = 248. */
    private static Meshes box() {
        return Meshes.box(-5, -3, 0, 5, 3, 4);
    }

    private static MendedMesh isTheBox(Meshes mesh) {
        MendedMesh mended = Mending.of(mesh.mesh());
        assertThat(mended.openShells()).isZero();
        assertThat(mended.mesh().volume()).isEqualTo(240, within(1e-4));
        assertThat(mended.mesh().area()).isEqualTo(248, within(1e-4));
        return mended;
    }

    private static List<Kind> kinds(MendedMesh mesh) {
        return mesh.flaws().stream().map(MeshFlaw::kind).toList();
    }

    @Test
    void aSoundMeshIsLeftAlone() {
        FacetMesh mesh = box().mesh();
        MendedMesh mended = Mending.of(mesh);
        assertThat(mended.flaws()).isEmpty();
        assertThat(mended.mesh()).isSameAs(mesh);
        isTheBox(box());
    }

    @Test
    void volumesAndAreasOfPrismsAreThoseOfTheirPolygons() {
        for (int sides : new int[] {3, 4, 17, 360}) {
            double polygon = sides / 2.0 * 25 * StrictMath.sin(2 * Math.PI / sides);
            double around = sides * 2 * 5 * StrictMath.sin(Math.PI / sides);
            MendedMesh mended = Mending.of(Meshes.prism(sides, 5, 1, 4).mesh());
            assertThat(mended.mesh().volume()).isEqualTo(3 * polygon, within(EPS));
            assertThat(mended.mesh().area()).isEqualTo(2 * polygon + 3 * around, within(EPS));
            assertThat(mended.shellCount()).isEqualTo(1);
            assertThat(mended.openShells()).isZero();
        }
    }

    @Test
    void aMissingFacetIsThreeOpenEdgesOfWhichTheLongestIsNamed() {
        MendedMesh mended = Mending.of(box().without(2).mesh());
        assertThat(mended.openShells()).isEqualTo(1);
        assertThat(mended.flaws()).hasSize(1);
        MeshFlaw flaw = mended.flaws().get(0);
        assertThat(flaw.kind()).isEqualTo(Kind.OPEN_EDGE);
        assertThat(flaw.count()).isEqualTo(3);
        // The diagonal of the top.
        assertThat(flaw.size()).isEqualTo(Math.sqrt(136), within(EPS));
        assertThat(flaw.at()).isEqualTo(Vector3D.of(0, 0, 4));
    }

    @Test
    void facetsThatStandThereTwiceOrFaceTheWrongWayAreMended() {
        assertThat(kinds(isTheBox(box().twice(4).twice(4)))).containsExactly(Kind.DUPLICATE);
        assertThat(kinds(isTheBox(box().turned(1).turned(7)))).containsExactly(Kind.FLIPPED);
        assertThat(kinds(isTheBox(box().insideOut()))).containsExactly(Kind.INSIDE_OUT);
    }

    /** Volumes about the origin have terms of 1e11 mm3 there, whose last digits are larger than the box. */
    @Test
    void aSmallShellFarFromTheOriginIsNotTakenForOneThatFacesInward() {
        for (int i = 0; i < 20; i++) {
            double x = 6e3 + 7.3 * i;
            double y = -5e3 - 1.7 * i;
            assertThat(kinds(Mending.of(Meshes.box(x, y, 4e3, x + 0.01, y + 0.02, 4e3 + 0.03)
                            .mesh())))
                    .as("box %s", i)
                    .isEmpty();
            assertThat(kinds(Mending.of(Meshes.box(x, y, 4e3, x + 0.01, y + 0.02, 4e3 + 0.03)
                            .insideOut()
                            .mesh())))
                    .as("box %s", i)
                    .containsExactly(Kind.INSIDE_OUT);
        }
    }

    @Test
    void aCrackOfLastDigitsIsClosedAndAWiderOneIsNot() {
        MendedMesh mended = isTheBox(box().cracked(3, Vector3D.of(1e-6, 0, 2e-6)));
        assertThat(kinds(mended)).containsExactly(Kind.POINTS_MERGED);
        assertThat(mended.flaws().get(0).size()).isEqualTo(Math.sqrt(5) * 1e-6, within(1e-12));
        // 2^-20 of the extent of 10 mm is 9.5e-6 mm.
        assertThat(kinds(Mending.of(box().cracked(3, Vector3D.of(2e-5, 0, 0)).mesh())))
                .containsExactly(Kind.OPEN_EDGE);
    }

    @Test
    void aFacetWithoutAreaAlongASeamIsTakenOutAndTheSeamStaysClosed() {
        for (int facet = 0; facet < 12; facet++) {
            MendedMesh mended = isTheBox(box().seamed(facet));
            assertThat(kinds(mended)).containsExactly(Kind.WITHOUT_AREA);
            assertThat(mended.mesh().facetCount()).isEqualTo(14);
        }
        // A seam on a seam.
        isTheBox(box().seamed(5).seamed(5).seamed(12));
    }

    @Test
    void anEdgeOfFourFacetsAndFacetsBackToBackAreNamedAndLetNoLightThrough() {
        Meshes pinched = new Meshes().and(Meshes.box(0, 0, 0, 1, 1, 3)).and(Meshes.box(1, 1, 0, 2, 2, 3));
        FacetMesh welded = Welding.of(pinched.mesh(), 0, new FlawList());
        // Boxes with points of their own do not share the edge; a file that is read shares equal points.
        assertThat(kinds(Mending.of(welded))).isEmpty();
        MendedMesh fin = Mending.of(box().twice(4).turned(12).mesh());
        assertThat(kinds(fin)).contains(Kind.BACK_TO_BACK);
    }

    @Test
    void aHollowStaysHollowAndAnInsideOutNeighbourIsTurned() {
        // A box of 8 x 8 x 8 with a hollow of 2 x 2 x 2: 512 - 8.
        MendedMesh hollow = Mending.of(Meshes.box(-4, -4, -4, 4, 4, 4)
                .and(Meshes.box(-1, -1, -1, 1, 1, 1).insideOut())
                .mesh());
        assertThat(hollow.flaws()).isEmpty();
        assertThat(hollow.mesh().volume()).isEqualTo(504, within(EPS));
        // Beside it, in the corner of a bracket whose box holds it: not inside the material.
        Meshes bracket =
                Meshes.box(0, 0, 0, 10, 1, 10).and(Meshes.box(3, 4, 3, 5, 6, 5).insideOut());
        bracket.and(Meshes.box(0, 8, 0, 10, 9, 10));
        MendedMesh beside = Mending.of(bracket.mesh());
        assertThat(kinds(beside)).containsExactly(Kind.INSIDE_OUT);
        assertThat(beside.mesh().volume()).isEqualTo(100 + 8 + 100, within(EPS));
    }

    @Test
    void aSliverIsNamedByItsWidth() {
        MendedMesh mended = Mending.of(Meshes.box(0, 0, 0, 10, 1e-4, 1).mesh());
        MeshFlaw sliver = mended.flaws().get(0);
        assertThat(sliver.kind()).isEqualTo(Kind.SLIVER);
        assertThat(sliver.size()).isEqualTo(1e-4, within(1e-8));
    }
}
