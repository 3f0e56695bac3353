package darkrim.shadow;

import static org.assertj.core.api.Assertions.assertThat;

import darkrim.scene.Scene;
import darkrim.scene.Surface;
import darkrim.trace.FacetTree;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Test;

/** Margins on scenes made by chance, against the exact view of the pupil from points on either side of the limit. */
class RandomMarginsTest {
    private static final ProofSettings SETTINGS = new ProofSettings(1e-4, 300, 1e-6);
    /** Points this near the limit are not looked at, mm. */
    private static final double NEAR = 2e-6;
    /** A view past a curved field limit that is tilted is known to this share of the pupil. */
    private static final double DARK = 1e-6;
    /** A polygon of 16 sides stands for a disc: a corner of it lies this much farther out. */
    private static final double POLYGON = 1 / Math.cos(Math.PI / 16);

    @Test
    void withinAShadowMarginAllIsDarkAndJustBeyondItALineOfLightArrives() {
        int looked = 0;
        int limited = 0;
        int near = 0;
        for (long seed = 1; seed <= 200; seed++) {
            Scene scene = RandomScenes.scene(seed);
            Look look = new Look(scene);
            for (Surface surface : faces(scene)) {
                Margin margin = look.margins.shadow(surface);
                if (margin.millimetres() > NEAR) {
                    looked++;
                    SplittableRandom random = new SplittableRandom(seed);
                    for (int i = 0; i < 12; i++) {
                        Vector3D point = look.near(surface, margin.millimetres() - NEAR, random);
                        assertThat(look.share(surface, point))
                                .as("seed %d, %s at %s within %s", seed, surface.name(), point, margin)
                                .isLessThan(DARK);
                    }
                }
                if (margin.millimetres() > NEAR
                        && !margin.capped()
                        && margin.line().isPresent()) {
                    Vector3D end = margin.line().get().to();
                    double distance = end.distance(look.margins.nearestPoint(surface, end));
                    assertThat(distance).isGreaterThan(margin.millimetres() - NEAR);
                    limited++;
                    near += distance <= (margin.millimetres() + NEAR) * POLYGON ? 1 : 0;
                }
            }
        }
        assertThat(looked).isGreaterThan(60);
        // Where many parts only together block, less may be proved than is true.
        assertThat(near).as("of %d", limited).isGreaterThan((int) (0.8 * limited));
    }

    @Test
    void withinAPupilMarginThePupilIsSeenWholeAndTheBlockedLineIsBlocked() {
        int looked = 0;
        int blocked = 0;
        for (long seed = 1; seed <= 200; seed++) {
            Scene scene = RandomScenes.scene(seed);
            Look look = new Look(scene);
            for (Surface surface : faces(scene)) {
                FullyLitProof.Finding found = new FullyLitProof(scene, look.tree, SETTINGS).of(surface);
                if (found.blocked().isPresent()) {
                    blocked++;
                    assertThat(look.share(surface, found.blocked().get().to()))
                            .as("seed %d, %s: %s", seed, surface.name(), found)
                            .isLessThan(1);
                }
                if (!found.proved()) {
                    continue;
                }
                Margin margin = look.margins.pupil(surface);
                looked++;
                SplittableRandom random = new SplittableRandom(seed);
                for (int i = 0; i < 12; i++) {
                    Vector3D point = look.near(surface, Math.max(0, margin.millimetres() - NEAR), random);
                    assertThat(look.share(surface, point))
                            .as("seed %d, %s at %s within %s", seed, surface.name(), point, margin)
                            .isGreaterThan(1 - 1e-9);
                }
            }
        }
        assertThat(looked).isGreaterThan(5);
        assertThat(blocked).isGreaterThan(30);
    }

    @Test
    void whatIsGrownHoldsEveryPointWithinTheDistanceAndLittleMore() {
        SplittableRandom random = new SplittableRandom(20);
        for (int i = 0; i < 200; i++) {
            double[] points = random.doubles(16, -3, 3).toArray();
            FlatPiece piece = FlatPiece.of(darkrim.geom.Frame.LAYOUT, PlanarPolygons.hull(points));
            List<Face> faces = List.of(new Face(piece, 0));
            double by = 2 * random.nextDouble();
            Growth growth = new Growth();
            growth.sharpen(random.nextDouble() - 0.5, random.nextDouble() - 0.5);
            FlatPiece grown = growth.grown(faces, by).get(0).piece();
            for (int k = 0; k < 100; k++) {
                double u = 12 * random.nextDouble() - 6;
                double v = 12 * random.nextDouble() - 6;
                double distance = NearestFace.of(faces, Vector3D.of(u, v, 0)).distance();
                boolean inside = NearestFace.of(List.of(new Face(grown, 0)), Vector3D.of(u, v, 0))
                                .distance()
                        == 0;
                if (distance < by * (1 - 1e-12)) {
                    assertThat(inside).as("%d: %s at (%s, %s)", i, by, u, v).isTrue();
                } else if (distance > by * POLYGON * (1 + 1e-12)) {
                    assertThat(inside).as("%d: %s at (%s, %s)", i, by, u, v).isFalse();
                }
            }
        }
    }

    /** A level face that looks up. */
    private static List<Surface> faces(Scene scene) {
        List<Surface> faces = new ArrayList<>(scene.surfaces().stream()
                .filter(surface -> surface.name().startsWith("face[")
                        && !surface.back()
                        && scene.normal(surface.firstFacet()).getZ() > 0.5)
                .toList());
        return faces.subList(0, 1);
    }

    /** A scene with what looks at it. */
    private static final class Look {
        private final FacetTree tree;
        private final Margins margins;
        private final VisiblePupil visible;
        private final Scene scene;

        Look(Scene scene) {
            this.scene = scene;
            tree = TestParts.tree(scene);
            margins = new Margins(scene, tree, SETTINGS, 3);
            visible = new VisiblePupil(scene, tree);
        }

        double share(Surface surface, Vector3D point) {
            return visible.from(point, scene.normal(surface.firstFacet())).areaFraction();
        }

        /** A point of the plane of a level surface within a distance of it. */
        Vector3D near(Surface surface, double distance, SplittableRandom random) {
            int f = surface.firstFacet() + random.nextInt(surface.facetCount());
            Vector3D corner =
                    scene.corner(f, random.nextInt(3)).lerp(scene.corner(f, random.nextInt(3)), random.nextDouble());
            double angle = 2 * Math.PI * random.nextDouble();
            double reach = distance * Math.sqrt(random.nextDouble());
            return corner.add(Vector3D.of(reach * Math.cos(angle), reach * Math.sin(angle), 0));
        }
    }
}
