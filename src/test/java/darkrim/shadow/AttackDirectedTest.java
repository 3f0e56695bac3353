package darkrim.shadow;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import darkrim.geom.Frame;
import darkrim.geom.Ring;
import darkrim.scene.Beam;
import darkrim.scene.Finish;
import darkrim.scene.Pupil;
import darkrim.scene.Scene;
import darkrim.scene.SceneBuilder;
import darkrim.scene.Surface;
import java.util.ArrayList;
import java.util.List;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Test;

/** Scenes made to break one step of a proof; each holds a point that is lit by construction. */
class AttackDirectedTest {
    private static final Pupil DISC = TestParts.pupilAt(200, Ring.disc(20));

    /** A sheet of n by n squares of two triangles, facing +z. */
    private static void grid(SceneBuilder builder, String name, double from, double step, int n, double z) {
        builder.sheet(name, Finish.ABSORBER, name + "/back", Finish.ABSORBER, TestParts.NOWHERE);
        for (int i = 0; i < n; i++) {
            for (int j = 0; j < n; j++) {
                double x = from + i * step;
                double y = from + j * step;
                builder.quad(
                        name,
                        Vector3D.of(x, y, z),
                        Vector3D.of(x + step, y, z),
                        Vector3D.of(x + step, y + step, z),
                        Vector3D.of(x, y + step, z));
            }
        }
    }

    @Test
    void thePiecesOfAMeshedSurfaceAreConvexAndHaveItsArea() {
        for (int n = 1; n <= 9; n++) {
            TestParts parts = new TestParts();
            grid(parts.builder(), "face", -4, 1, n, 0);
            Scene scene = parts.build(Beam.of(DISC));
            Surface surface = scene.surface("face").orElseThrow();
            double area = 0;
            for (Face face : new FaceMerge(scene, surface, Tolerance.of(scene.bound(), 1e-6)).pieces()) {
                area += face.piece().area();
                double[] hull = PlanarPolygons.hull(face.piece().plane());
                assertThat(PlanarPolygons.area(hull))
                        .as("n = %d", n)
                        .isEqualTo(face.piece().area());
                assertThat(winding(face.piece())).as("n = %d", n).isEqualTo(1);
            }
            assertThat(area).isEqualTo(surface.area());
        }
    }

    @Test
    void facetsThatFoldBackOverEachOtherKeepTheirArea() {
        TestParts parts = new TestParts();
        Vector3D a = Vector3D.of(0, -2, 2);
        Vector3D b = Vector3D.of(1, -3, 1);
        Vector3D c = Vector3D.of(2, -2, 0);
        Vector3D d = Vector3D.of(0, 1, 2);
        parts.builder()
                .sheet("face", Finish.ABSORBER, "face/back", Finish.ABSORBER, TestParts.NOWHERE)
                .triangle("face", a, d, b)
                .triangle("face", d, a, b)
                .triangle("face", d, b, c);
        Scene scene = parts.build(Beam.of(DISC));
        Surface surface = scene.surface("face").orElseThrow();
        double area = 0;
        for (Face face : new FaceMerge(scene, surface, Tolerance.of(scene.bound(), 1e-6)).pieces()) {
            area += face.piece().area();
        }
        assertThat(area).isCloseTo(surface.area(), within(1e-12));
    }

    @Test
    void cornersThatDifferInTheLastBitDoNotHideTheRestOfAHull() {
        // A cell whose leftmost side is lost in rounding: seen from that side alone the uncovered part would lie
        // outside.
        PlanarCover cover = new PlanarCover(1e-6);
        double[] loop = {-9, -9, 1, -9, 1, 9, -9, 9};
        for (int i = 0; i < 4; i++) {
            cover.add(loop[2 * i], loop[2 * i + 1], loop[(2 * i + 2) % 8], loop[(2 * i + 3) % 8], 0);
        }
        double[] cell = {-6.5, 4, -6.5, 4 + Math.ulp(4.0), -4.8, 1.5, 2.4, -4.8, 2.2, -4.5};
        assertThat(cover.covers(cell)).isFalse();
    }

    /** How often the outline of a piece turns round: 1 for a convex polygon. */
    private static long winding(FlatPiece piece) {
        double turned = 0;
        int n = piece.size();
        for (int i = 0; i < n; i++) {
            int j = (i + 1) % n;
            int k = (i + 2) % n;
            double au = piece.u(j) - piece.u(i);
            double av = piece.v(j) - piece.v(i);
            double bu = piece.u(k) - piece.u(j);
            double bv = piece.v(k) - piece.v(j);
            turned += Math.atan2(au * bv - av * bu, au * bu + av * bv);
        }
        return Math.round(turned / (2 * Math.PI));
    }

    @Test
    void aBlockOnAMeshedSheetDoesNotDarkenTheRestOfIt() {
        for (int n = 2; n <= 8; n++) {
            for (double half : new double[] {0.3, 0.9, 1.7}) {
                TestParts parts = new TestParts();
                grid(parts.builder(), "face", 0, 8.0 / n, n, 0);
                parts.block("die", 4 - half, 4 + half, 4 - half, 4 + half, 0, 0.5);
                Scene scene = parts.build(Beam.of(DISC));
                assertThat(TestParts.prove(scene, "face"))
                        .as("n = %d, half = %s", n, half)
                        .isInstanceOf(Darkness.Lit.class);
            }
        }
    }

    @Test
    void aFaceIsNoObstacleToItselfBesideAFacetThatLiesALittleHigher() {
        for (double rise : new double[] {1e-9, 1.7e-8, 3e-8, 1e-7, 1.5e-7}) {
            for (boolean below : new boolean[] {false, true}) {
                TestParts parts = new TestParts().sheet("face", -5, 5, -5, 5, 0);
                parts.sheet("scrap", 4, 4.5, 4, 4.5, rise);
                if (below) {
                    parts.sheet("under", -7, 7, -7, 7, -1e-8);
                }
                Scene scene = parts.build(Beam.of(DISC));
                assertThat(TestParts.prove(scene, "face")).as("rise %s", rise).isInstanceOf(Darkness.Lit.class);
            }
        }
    }

    @Test
    void noPlaneCoversAFaceThatLiesInIt() {
        // A lit face, and a scrap so little above it that both count as one plane: the face must not cover itself.
        for (double rise : new double[] {1.7e-8, 3e-8, 1e-7, 1.5e-7}) {
            Scene scene = new TestParts()
                    .sheet("face", -5, 5, -5, 5, 0)
                    .sheet("around", -9, 9, -9, 9, 0)
                    .sheet("scrap", 4, 4.5, 4, 4.5, rise)
                    .sheet("other", 4.1, 4.6, 4.1, 4.6, rise)
                    .build(Beam.of(DISC));
            double[] corners = scene.copyCorners();
            FacetEdges edges = new FacetEdges(scene);
            Tolerance tolerance = Tolerance.of(scene.bound(), 1e-6);
            Surface surface = scene.surface("face").orElseThrow();
            FlatPiece face =
                    new FaceMerge(scene, surface, tolerance).pieces().get(0).piece();
            FlatPiece pupil = new PupilPieces(DISC.outline(), DISC.frame(), tolerance)
                    .all()
                    .get(0);
            Pair pair = new Pair(pupil, face, 0, tolerance);
            assertThat(new CoverCut(scene, corners, edges, tolerance)
                            .covers(pair.shaft(), pair, new int[] {0, 1, 2, 3, 4, 5, 6, 7}))
                    .as("rise %s", rise)
                    .isFalse();
        }
    }

    @Test
    void aHoleRoundedByShortSidesIsSeen() {
        // A hole of radius r in one of two touching plates, the gap width smaller than the hole and larger than its
        // sides.
        double gap = 0.01;
        double r = 0.05;
        int sides = 1440;
        TestParts parts = new TestParts();
        SceneBuilder builder = parts.builder();
        builder.sheet("lid", Finish.ABSORBER, "lid/back", Finish.ABSORBER, TestParts.NOWHERE);
        double[] outer = {-60, 60, -60, 60};
        List<Vector3D> ring = new ArrayList<>();
        for (int i = 0; i < sides; i++) {
            ring.add(Vector3D.of(r * Math.cos(2 * Math.PI * i / sides), r * Math.sin(2 * Math.PI * i / sides), 30));
        }
        Vector3D[] corners = {
            Vector3D.of(outer[1], outer[3], 30),
            Vector3D.of(outer[0], outer[3], 30),
            Vector3D.of(outer[0], outer[2], 30),
            Vector3D.of(outer[1], outer[2], 30)
        };
        for (int q = 0; q < 4; q++) {
            int first = q * sides / 4;
            for (int i = 0; i < sides / 4; i++) {
                builder.triangle("lid", ring.get(first + i), corners[q], ring.get((first + i + 1) % sides));
            }
            builder.triangle("lid", ring.get((first + sides / 4) % sides), corners[q], corners[(q + 1) % 4]);
        }
        parts.block("beam", 40, 50, -70, 70, 29, 30);
        parts.sheet("face", -1, 1, -1, 1, 0);
        Scene scene = parts.build(Beam.of(DISC));
        Darkness found = new DarknessProof(scene, TestParts.tree(scene), new ProofSettings(0.3, 2000, gap))
                .of(scene.surface("face").orElseThrow());
        assertThat(found).isNotInstanceOf(Darkness.Dark.class);
        // The cover by itself, too.
        PlanarCover cover = new PlanarCover(gap);
        for (int i = 0; i < sides; i++) {
            Vector3D a = ring.get(i);
            Vector3D b = ring.get((i + 1) % sides);
            cover.add(b.getX(), b.getY(), a.getX(), a.getY(), 0);
        }
        double[] square = {-1, -1, 1, -1, 1, 1, -1, 1};
        for (int i = 0; i < 4; i++) {
            cover.add(
                    2 * square[2 * i],
                    2 * square[2 * i + 1],
                    2 * square[(2 * i + 2) % 8],
                    2 * square[(2 * i + 3) % 8],
                    0);
        }
        double[] off = {-0.9, -0.05, 0.1, -0.05, 0.1, 0.06, -0.9, 0.06};
        assertThat(cover.covers(off)).isFalse();
    }

    @Test
    void aBodyTurnedInsideOutBelowAFaceIsNotInContactFromAbove() {
        TestParts parts = new TestParts();
        parts.sheet("face", -1, 1, -1, 1, 0);
        // Mirrored: its normals point into it, so its upper side seems to carry material above.
        parts.placed(v -> Vector3D.of(v.getX(), v.getY(), -v.getZ())).block("under", -2, 2, -2, 2, 0, 1);
        Scene scene = parts.build(Beam.of(DISC));
        assertThat(TestParts.prove(scene, "face")).isNotInstanceOf(Darkness.Dark.class);
    }

    @Test
    void aSheetUnderABlockIsLitOnceItIsMovedOut() {
        Scene scene = new TestParts()
                .sheet("face", -1, 1, -1, 1, 0)
                .block("die", -1.2, 1.2, -1.2, 1.2, 0, 1)
                .build(Beam.of(DISC));
        DarknessProof proof = new DarknessProof(scene, TestParts.tree(scene));
        assertThat(TestParts.prove(scene, "face")).isInstanceOf(Darkness.Dark.class);
        assertThat(proof.moved(proof.faces(scene.surface("face").orElseThrow()), "face", 0.5)
                        .dark())
                .isFalse();
    }

    @Test
    void aSliverIsLitLikeAnyOtherSurface() {
        // Triangles 100 mm long and narrower and narrower, in a tilted plane.
        Frame tilted = Frame.about(Vector3D.of(0.3, 0.7, 0.1), Vector3D.of(0.2, 0.13, 1));
        for (double width : new double[] {1e-3, 1e-5, 1e-7, 1e-9, 1e-11, 1e-13}) {
            TestParts parts = new TestParts();
            parts.builder()
                    .sheet("face", Finish.ABSORBER, "back", Finish.ABSORBER, TestParts.NOWHERE)
                    .triangle("face", tilted.at(-50, 3), tilted.at(50, 3), tilted.at(7, 3 + width));
            Scene scene = parts.build(Beam.of(DISC));
            assertThat(TestParts.prove(scene, "face")).as("width %s", width).isNotInstanceOf(Darkness.Dark.class);
        }
    }
}
