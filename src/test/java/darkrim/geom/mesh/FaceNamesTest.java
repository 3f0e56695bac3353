package darkrim.geom.mesh;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Test;

/** Faces are found along creases; their names tell where they lie and nothing of the order of the file. */
class FaceNamesTest {
    private static List<MeshFace> faces(Meshes mesh) {
        FacetMesh mended = Mending.of(mesh.mesh()).mesh();
        return NamedFaces.of(mended, CreaseFaces.of(mended, 20));
    }

    private static List<String> names(Meshes mesh) {
        return faces(mesh).stream().map(MeshFace::name).toList();
    }

    @Test
    void aBoxHasSixFacesNamedBySideAndPlace() {
        assertThat(names(Meshes.box(-5, -3, 0, 5, 3, 4)))
                .containsExactly("+x[5,0,2]", "+y[0,3,2]", "+z[0,0,4]", "-x[-5,0,2]", "-y[0,-3,2]", "-z[0,0,0]");
    }

    @Test
    void aCylinderHasThreeFacesAndItsWallGoesAround() {
        List<MeshFace> faces = faces(Meshes.prism(48, 5, 0, 4));
        assertThat(faces).extracting(MeshFace::name).containsExactly("+z[0,0,4]", "-z[0,0,0]", "outside[0,0,2]");
        MeshFace wall = faces.get(2);
        assertThat(wall.size().flat()).isFalse();
        assertThat(wall.size().normal()).isEmpty();
        assertThat(wall.size().area()).isEqualTo(48 * 2 * 5 * StrictMath.sin(Math.PI / 48) * 4, within(1e-9));
        assertThat(faces(Meshes.prism(48, 5, 0, 4).insideOut())).hasSize(3);
        // Twelve sides meet at 30 deg: more than the crease.
        assertThat(faces(Meshes.prism(12, 5, 0, 4))).hasSize(14);
    }

    @Test
    void theOrderOfTheFileDoesNotMatter() {
        List<String> names = names(Meshes.prism(48, 5, 0, 4).and(Meshes.box(6, 0, 0, 7, 1, 1)));
        for (long seed = 1; seed <= 5; seed++) {
            Meshes again =
                    Meshes.prism(48, 5, 0, 4).and(Meshes.box(6, 0, 0, 7, 1, 1)).shuffled(seed);
            assertThat(names(again)).isEqualTo(names);
        }
    }

    @Test
    void lastDigitsOfDrawnNumbersDoNotChooseTheName() {
        // 3.225 and its float differ by 5e-8; a name to a hundredth that split at the half would come out two ways.
        for (double z : new double[] {3.225, 3.225f, 3.225 - 1e-7, 3.225 + 1e-7}) {
            assertThat(names(Meshes.box(-1, -1, 2 * z - 9, 1, 1, 9))).contains("+x[1,0,3.23]");
        }
    }

    @Test
    void facesWithOneMiddleAreToldApartByTheirReach() {
        // Farthest from the middle are the corners: sqrt(25 + 4) and sqrt(9 + 4).
        Meshes two = Meshes.prism(48, 5, 0, 4).and(Meshes.prism(48, 3, 0, 4));
        assertThat(names(two))
                .doesNotHaveDuplicates()
                .contains("outside[0,0,2,r5.39]", "outside[0,0,2,r3.61]", "+z[0,0,4,r5]", "+z[0,0,4,r3]");
    }

    @Test
    void aNameFindsItsFaceInTheNextRevisionAndNotAnother() {
        FaceAnchor top = new FaceAnchor("top", Vector3D.of(1, 1, 4), Vector3D.of(0, 0, 2));
        FacetMesh next = Mending.of(Meshes.box(-6, -2, 0, 5, 3, 4.3)
                        .and(Meshes.box(8, 0, 0, 9, 1, 4))
                        .shuffled(7)
                        .mesh())
                .mesh();
        List<MeshFace> faces = NamedFaces.of(next, CreaseFaces.of(next, 20));
        AnchoredFaces.Match found =
                AnchoredFaces.of(next, faces, List.of(top), 0.5).get(0);
        assertThat(faces.get(found.face()).name()).isEqualTo("+z[-0.5,0.5,4.3]");
        assertThat(found.distance()).isEqualTo(0.3, within(1e-12));
        assertThat(NamedFaces.renamed(faces, List.of(found)))
                .extracting(MeshFace::name)
                .contains("top");
        AnchoredFaces.Match lost =
                AnchoredFaces.of(next, faces, List.of(top), 0.2).get(0);
        assertThat(lost.face()).isNegative();
        assertThat(lost.distance()).isEqualTo(0.3, within(1e-12));
    }

    @Test
    void aPlaceBetweenTwoFacesFindsNeither() {
        FacetMesh mesh = Mending.of(Meshes.box(0, 0, 0, 1, 1, 4)
                        .and(Meshes.box(1.2, 0, 0, 2, 1, 4))
                        .mesh())
                .mesh();
        List<MeshFace> faces = NamedFaces.of(mesh, CreaseFaces.of(mesh, 20));
        FaceAnchor between = new FaceAnchor("top", Vector3D.of(1.1, 0.5, 4), Vector3D.Unit.PLUS_Z);
        AnchoredFaces.Match match =
                AnchoredFaces.of(mesh, faces, List.of(between), 0.5).get(0);
        assertThat(match.face()).isNegative();
        assertThat(match.other()).isNotNegative();
    }

    @Test
    void distancesToTrianglesAreThoseToPlaneSideAndCorner() {
        Vector3D a = Vector3D.ZERO;
        Vector3D b = Vector3D.of(4, 0, 0);
        Vector3D c = Vector3D.of(0, 3, 0);
        assertThat(PointToTriangle.distance(Vector3D.of(1, 1, 2), a, b, c)).isEqualTo(2);
        assertThat(PointToTriangle.distance(Vector3D.of(2, -3, 4), a, b, c)).isEqualTo(5);
        assertThat(PointToTriangle.distance(Vector3D.of(-3, -4, 12), a, b, c)).isEqualTo(13);
        // 3 x + 4 y = 12 at (4, 3): (12 + 12 - 12) / 5.
        assertThat(PointToTriangle.distance(Vector3D.of(4, 3, 0), a, b, c)).isEqualTo(2.4, within(1e-12));
    }
}
