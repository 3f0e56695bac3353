package darkrim.light;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import darkrim.diagnostic.Place;
import darkrim.geom.Frame;
import darkrim.geom.Ring;
import darkrim.scene.Beam;
import darkrim.scene.Finish;
import darkrim.scene.Pupil;
import darkrim.scene.Scene;
import darkrim.scene.SceneBuilder;
import darkrim.trace.FacetTree;
import java.util.ArrayList;
import java.util.List;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Laws with closed forms that light keeps at every number of reflections. */
class ManyReflectionsLawsTest {
    private static final int MOST = 8;

    /**
     * The integrating sphere: after k reflections the flux is rho^k times what left the pupil, pi^2 r^2 for radiance 1, spread over the whole
     * wall; with many reflections it adds up to rho / (1 - rho) (integrating-sphere theory, any radiometry text). The mean over a closed wall of
     * facets keeps the law exactly, whatever its shape. 10 numbers for each finish at 4 standard errors: a false alarm in 2e-3 of all
     * seeds, which are fixed.
     */
    @ParameterizedTest
    @CsvSource({"0.9, 0", "0.5, 0", "0.05, 0", "0.4, 0.3"})
    void inASphereEachReflectionTakesTheSameShare(double diffuse, double mirror) {
        Scene scene = sphere(50, 2, new Finish("wall", diffuse, mirror));
        double rho = diffuse + mirror;
        double flux = Math.PI * Math.PI * 4 / scene.referenceIrradiance();
        double direct = flux / scene.surfaces().get(0).area();
        PathTally tally =
                many(scene).batch(new Receiver.OnSurface(scene.surfaces().get(0)), MOST, 0, 80_000);
        for (int order = 0; order <= MOST; order++) {
            double expected = direct * Math.pow(rho, order);
            Estimate got = tally.orders().get(order);
            assertThat(got.mean()).as("order %s", order).isCloseTo(expected, within(4 * got.standardError()));
            // So rare that nothing would be tested: only where Russian roulette ends nearly every walk.
            assertThat(got.standardError()).as("order %s", order).isLessThan((rho < 0.1 ? 0.9 : 0.16) * expected);
        }
        double all = direct * rho * (1 - Math.pow(rho, MOST)) / (1 - rho);
        Estimate reflected = tally.reflected();
        assertThat(reflected.mean()).isCloseTo(all, within(4 * reflected.standardError()));
    }

    /** At each point of the sphere too, but for its facets: those of 2 deg change a point's irradiance by less than 1e-3. */
    @Test
    void inASphereEveryPointGetsTheSame() {
        Scene scene = sphere(50, 2, new Finish("wall", 0.8, 0));
        double direct = Math.PI * Math.PI * 4 / scene.referenceIrradiance() / (4 * Math.PI * 50 * 50);
        for (Vector3D toward :
                List.of(Vector3D.of(1, 0.02, 0.3), Vector3D.of(-0.2, 0.5, 0.9), Vector3D.of(0.1, 0, -1))) {
            Vector3D normal = toward.normalize().negate();
            Vector3D at = Vector3D.of(0, 0, 50).subtract(normal.multiply(49.9));
            PathTally tally =
                    many(scene).batch(new Receiver.AtPoint("on the wall " + toward, at, normal), 3, 0, 60_000);
            for (int order = 1; order <= 3; order++) {
                double expected = direct * Math.pow(0.8, order);
                Estimate got = tally.orders().get(order);
                // The point stands 0.1 mm before the wall of 50 mm: as much as the facets, 2e-3 in all.
                assertThat(got.mean()).isCloseTo(expected, within(4 * got.standardError() + 4e-3 * expected));
                // Where the wall lies in the plane of the pupil, a rare sample weighs 400 times the mean.
                assertThat(got.standardError()).isLessThan(0.06 * expected);
            }
        }
    }

    /**
     * Two facing mirrors show the pupil again and again: after k reflections at 2 k times their half distance, to either side (image method,
     * any optics text). The images' irradiance is the contour integral.
     */
    @Test
    void twoFacingMirrorsShowARowOfPupils() {
        double half = 12;
        double rho = 0.8;
        Finish silver = new Finish("silver", 0, rho);
        SceneBuilder builder = new SceneBuilder();
        for (int side : new int[] {-1, 1}) {
            String name = side < 0 ? "left" : "right";
            double x = side * half;
            double y = side * 1000;
            builder.sheet(name, silver, name + "/back", Finish.ABSORBER, Place.IN_CODE)
                    .quad(name, at(x, -y, 0), at(x, -y, 100), at(x, y, 100), at(x, y, 0));
        }
        Scene scene = builder.build(Beam.of(pupil(0)));
        PathTally tally =
                many(scene).batch(new Receiver.AtPoint("middle", at(0, 0, 0.5), Vector3D.Unit.PLUS_Z), 4, 0, 600_000);
        for (int order = 1; order <= 4; order++) {
            double image = Beam.of(below(pupil(2 * order * half))).referenceIrradiance();
            double expected = 2 * Math.pow(rho, order) * image / scene.referenceIrradiance();
            Estimate got = tally.orders().get(order);
            assertThat(got.mean()).as("order %s", order).isCloseTo(expected, within(4 * got.standardError()));
            assertThat(got.standardError()).as("order %s", order).isLessThan(0.06 * expected);
            List<String> names = new ArrayList<>();
            int own = order;
            tally.by().keySet().stream().filter(path -> path.order() == own).forEach(path -> {
                assertThat(path.isGlint()).isTrue();
                names.add(scene.surfaces().get(path.last().surface()).name());
            });
            assertThat(names).containsExactlyInAnyOrder("left", "right");
        }
    }

    /** A disc of radius 10 mm, 100 mm up. */
    private static Pupil pupil(double x) {
        return new Pupil(Ring.disc(10), Frame.of(at(x, 0, 100), Vector3D.Unit.PLUS_X, Vector3D.Unit.MINUS_Y));
    }

    /** As seen from a point half a millimetre up. */
    private static Pupil below(Pupil pupil) {
        Vector3D origin = pupil.frame().origin().subtract(at(0, 0, 0.5));
        return new Pupil(pupil.outline(), Frame.of(origin, Vector3D.Unit.PLUS_X, Vector3D.Unit.MINUS_Y));
    }

    /** A hollow sphere that stands on the origin, and a small pupil in its middle that shines down. */
    private static Scene sphere(double radius, double pupil, Finish wall) {
        int rows = 45;
        int columns = 90;
        SceneBuilder builder = new SceneBuilder().solid("wall", wall, Place.IN_CODE);
        Vector3D[][] p = new Vector3D[rows + 1][columns];
        for (int i = 0; i <= rows; i++) {
            for (int j = 0; j < columns; j++) {
                double polar = Math.PI * i / rows;
                double turn = 2 * Math.PI * j / columns;
                double ring = i == 0 || i == rows ? 0 : Math.sin(polar);
                p[i][j] = at(
                        radius * ring * Math.cos(turn), radius * ring * Math.sin(turn), radius * (1 - Math.cos(polar)));
            }
        }
        for (int i = 0; i < rows; i++) {
            for (int j = 0; j < columns; j++) {
                int next = (j + 1) % columns;
                if (i < rows - 1) {
                    builder.triangle("wall", p[i][j], p[i + 1][j], p[i + 1][next]);
                }
                if (i > 0) {
                    builder.triangle("wall", p[i][j], p[i + 1][next], p[i][next]);
                }
            }
        }
        Frame middle = Frame.about(at(0, 0, radius), Vector3D.Unit.MINUS_Z);
        return builder.build(Beam.of(new Pupil(Ring.disc(pupil), middle)));
    }

    private static ManyReflections many(Scene scene) {
        FacetTree tree = FacetTree.build(scene.copyCorners(), scene.copyPlanes(), scene.bound());
        return new ManyReflections(scene, tree, 17);
    }

    private static Vector3D at(double x, double y, double z) {
        return Vector3D.of(x, y, z);
    }
}
