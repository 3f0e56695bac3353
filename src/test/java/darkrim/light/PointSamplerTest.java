package darkrim.light;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import darkrim.diagnostic.Place;
import darkrim.geom.Frame;
import darkrim.geom.Ring;
import darkrim.scene.Beam;
import darkrim.scene.CellGrid;
import darkrim.scene.Finish;
import darkrim.scene.Pupil;
import darkrim.scene.Scene;
import darkrim.scene.SceneBuilder;
import darkrim.trace.FacetTree;
import darkrim.trace.StartPoints;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.apache.commons.rng.UniformRandomProvider;
import org.apache.commons.rng.simple.RandomSource;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Points drawn over a tilted strip of three triangles, with a map of 4 by 3 cells. Five standard deviations: 6e-7 of all seeds each. */
class PointSamplerTest {
    private static final int DRAWS = 6000;
    private static final Vector3D CORNER = Vector3D.of(3, -2, 7);
    private static final Vector3D U = Vector3D.of(9, 3, -3);
    private static final Vector3D V = Vector3D.of(1, 0, 3);
    private static final Scene SCENE = scene();

    /** Triangles of unequal size that share a corner. */
    private static Scene scene() {
        Vector3D a = CORNER.add(V);
        SceneBuilder builder = new SceneBuilder()
                .sheet("strip", Finish.ABSORBER, "strip/back", Finish.ABSORBER, Place.IN_CODE)
                .triangle("strip", CORNER, at(2, 0), a)
                .triangle("strip", at(2, 0), at(4, 0.5), a)
                .triangle("strip", at(4, 0.5), at(9, 1), a)
                .grid("strip", new CellGrid(CORNER, U, V, 4, 3));
        return builder.build(Beam.of(
                new Pupil(Ring.disc(5), Frame.of(Vector3D.of(0, 0, 90), Vector3D.Unit.PLUS_X, Vector3D.Unit.MINUS_Y))));
    }

    private static Vector3D at(double ninths, double share) {
        return CORNER.add(U.multiply(ninths / 9)).add(V.multiply(share));
    }

    @ParameterizedTest
    @ValueSource(strings = {"strip", "strip/back"})
    void pointsAreSpreadByAreaAndLieInTheirCells(String name) {
        FacetTree tree = FacetTree.build(SCENE.corners(), SCENE.copyPlanes(), SCENE.bound());
        StartPoints starts = new StartPoints(SCENE.corners(), tree);
        PointSampler point = new PointSampler(
                SCENE, starts, new Receiver.OnSurface(SCENE.surface(name).orElseThrow()));
        UniformRandomProvider random = RandomSource.XO_SHI_RO_256_PP.create(4);
        int first = SCENE.surface(name).orElseThrow().firstFacet();
        int[] counts = new int[3];
        Vector3D[] sums = {Vector3D.ZERO, Vector3D.ZERO, Vector3D.ZERO};
        double side = name.equals("strip") ? 1 : -1;
        for (int i = 0; i < DRAWS; i++) {
            point.next(random);
            int own = point.facet - first;
            counts[own]++;
            Vector3D drawn = Vector3D.of(point.x, point.y, point.z);
            sums[own] = sums[own].add(drawn);
            Vector3D facing = Vector3D.of(point.nx, point.ny, point.nz);
            assertThat(facing.distance(SCENE.normal(point.facet).multiply(side)))
                    .isLessThan(1e-15);
            double height = drawn.subtract(SCENE.corner(point.facet, 0)).dot(facing);
            assertThat(height).isBetween(-1e-12, 1e-9);
            assertThat(point.plane).isEqualTo(SCENE.plane(point.facet));
            double inU = drawn.subtract(CORNER).dot(U) / U.normSq();
            double inV = drawn.subtract(CORNER).dot(V) / V.normSq();
            assertThat(point.cell).isEqualTo((int) (4 * inU) + 4 * (int) (3 * inV));
        }
        double all = 0;
        for (int own = 0; own < 3; own++) {
            all += SCENE.facetArea(first + own);
        }
        for (int own = 0; own < 3; own++) {
            double share = SCENE.facetArea(first + own) / all;
            assertThat(counts[own] / (double) DRAWS)
                    .isCloseTo(share, within(5 * Math.sqrt(share * (1 - share) / DRAWS)));
            Vector3D middle = SCENE.corner(first + own, 0)
                    .add(SCENE.corner(first + own, 1))
                    .add(SCENE.corner(first + own, 2))
                    .multiply(1.0 / 3);
            // No point of a triangle is farther than 6 mm from its middle, and the mean square is far less.
            assertThat(sums[own].multiply(1.0 / counts[own]).distance(middle))
                    .isLessThan(5 * 3 / Math.sqrt(counts[own]));
        }
    }
}
