package darkrim.scene;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import darkrim.diagnostic.Place;
import darkrim.geom.Frame;
import darkrim.geom.Ring;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Surfaces and facets come out of the scene as they were put in; nonsense does not get in. */
class SceneBuilderTest {
    private static final Vector3D O = Vector3D.ZERO;
    private static final Vector3D X = Vector3D.of(2, 0, 0);
    private static final Vector3D XY = Vector3D.of(2, 3, 0);
    private static final Vector3D Y = Vector3D.of(0, 3, 0);
    private static final Finish BLACK = new Finish("black", 0.04, 0);
    private static final Finish BRIGHT = new Finish("bright", 0.1, 0.8);

    private static Beam beam() {
        Frame down = Frame.of(Vector3D.of(0, 0, 320), Vector3D.Unit.PLUS_X, Vector3D.Unit.MINUS_Y);
        return Beam.of(new Pupil(Ring.disc(22.5), down));
    }

    private static SceneBuilder onePlate() {
        return new SceneBuilder().solid("plate", BLACK, Place.IN_CODE);
    }

    @Test
    void surfacesKeepTheirOrderAndTheBackOfASheetFollowsItsFront() {
        Scene scene = new SceneBuilder()
                .solid("b", BLACK, Place.IN_CODE)
                .sheet("film/front", BLACK, "film/back", BRIGHT, new Place("a.yaml", 3, 1))
                .solid("a", BRIGHT, Place.IN_CODE)
                .triangle("a", O, X, Y)
                .quad("film/front", O, X, XY, Y)
                .triangle("b", O, Y, X)
                .build(beam());
        assertThat(scene.surfaces()).extracting(Surface::name).containsExactly("b", "film/front", "film/back", "a");
        assertThat(scene.surfaces()).extracting(Surface::index).containsExactly(0, 1, 2, 3);
        assertThat(scene.surfaces()).extracting(Surface::firstFacet).containsExactly(0, 1, 1, 3);
        assertThat(scene.surfaces()).extracting(Surface::facetCount).containsExactly(1, 2, 2, 1);
        assertThat(scene.surfaces()).extracting(Surface::area).containsExactly(3.0, 6.0, 6.0, 3.0);
        assertThat(scene.surfaces()).extracting(Surface::back).containsExactly(false, false, true, false);
        assertThat(scene.surfaces().get(2).finish()).isEqualTo(BRIGHT);
        assertThat(scene.surfaces().get(2).place().line()).isEqualTo(3);
        assertThat(scene.facetCount()).isEqualTo(4);
        // All lie in z = 0, facing either way.
        assertThat(scene.planeCount()).isEqualTo(1);
    }

    @Test
    void aRayMeetsTheSideItComesFrom() {
        Scene scene = new SceneBuilder()
                .solid("solid", BLACK, Place.IN_CODE)
                .sheet("front", BLACK, "back", BRIGHT, Place.IN_CODE)
                .triangle("solid", O, X, Y)
                .triangle("front", O, X, Y)
                .build(beam());
        assertThat(scene.surfaceMet(0, 0, 0, -5)).isZero();
        assertThat(scene.surfaceMet(0, 0, 0, 5)).isEqualTo(Scene.INSIDE);
        assertThat(scene.surfaceMet(1, 1, 0, -1)).isEqualTo(1);
        assertThat(scene.surfaceMet(1, 1, 0, 1)).isEqualTo(2);
    }

    @Test
    void cornersComeOutToTheLastBit() {
        Vector3D odd = Vector3D.of(0.1, 1.0 / 3, -Math.PI);
        Scene scene = onePlate().triangle("plate", odd, X, Y).build(beam());
        assertThat(scene.corner(0, 0)).isEqualTo(odd);
        assertThat(scene.corner(0, 1, 0)).isEqualTo(2);
        assertThat(scene.copyCorners()).startsWith(0.1, 1.0 / 3, -Math.PI).hasSize(9);
        scene.copyCorners()[0] = 7;
        assertThat(scene.corner(0, 0, 0)).isEqualTo(0.1);
    }

    @Test
    void noCoordinateOfFacetOrPupilIsBeyondTheBound() {
        assertThat(onePlate().triangle("plate", O, X, Y).build(beam()).bound()).isCloseTo(342.5, within(1e-12));
        Scene wide =
                onePlate().triangle("plate", O, Vector3D.of(0, -5000, 0), X).build(beam());
        assertThat(wide.bound()).isEqualTo(5000);
    }

    @Test
    void aGridStaysWithItsSurface() {
        CellGrid grid = new CellGrid(O, X, Y, 4, 2);
        Scene scene = onePlate().quad("plate", O, X, XY, Y).grid("plate", grid).build(beam());
        assertThat(scene.surfaces().get(0).grid()).contains(grid);
        assertThat(grid.count()).isEqualTo(8);
        assertThat(grid.at(0.5, 1)).isEqualTo(Vector3D.of(1, 3, 0));
        assertThatThrownBy(() -> new CellGrid(O, X, Y, 0, 2)).isInstanceOf(IllegalArgumentException.class);
    }

    @ParameterizedTest
    @ValueSource(doubles = {Double.NaN, Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY, 1e200})
    void aCornerThatIsNoPlaceIsRefused(double coordinate) {
        for (int k = 0; k < 3; k++) {
            Vector3D bad = Vector3D.of(k == 0 ? coordinate : 0, k == 1 ? coordinate : 0, k == 2 ? coordinate : 0.5);
            refuse(() -> onePlate().triangle("plate", bad, X, Y), "plate");
            refuse(() -> onePlate().triangle("plate", X, bad, Y), "plate");
            refuse(() -> onePlate().triangle("plate", X, Y, bad), "plate");
        }
    }

    @Test
    void aTriangleWithoutAreaIsRefusedByTheNameOfItsSurface() {
        refuse(() -> onePlate().triangle("plate", O, X, X), "plate");
        refuse(() -> onePlate().triangle("plate", O, X, Vector3D.of(1, 0, 0)), "plate");
    }

    @Test
    void namesMustBeKnownAndDifferent() {
        refuse(() -> onePlate().triangle("lid", O, X, Y), "lid");
        refuse(() -> onePlate().grid("lid", new CellGrid(O, X, Y, 1, 1)), "lid");
        refuse(
                () -> onePlate()
                        .sheet("film", BLACK, "plate", BLACK, Place.IN_CODE)
                        .build(beam()),
                "plate");
        refuse(
                () -> new SceneBuilder()
                        .sheet("a", BLACK, "back", BLACK, Place.IN_CODE)
                        .sheet("b", BLACK, "back", BLACK, Place.IN_CODE)
                        .build(beam()),
                "back");
        refuse(
                () -> new SceneBuilder()
                        .sheet("a", BLACK, "a", BLACK, Place.IN_CODE)
                        .build(beam()),
                "a");
    }

    @Test
    void anEmptySceneIsAScene() {
        Scene scene = new SceneBuilder().build(beam());
        assertThat(scene.facetCount()).isZero();
        assertThat(scene.planeCount()).isZero();
        assertThat(scene.bound()).isPositive();
    }

    @Test
    void aFinishCannotReflectMoreThanArrives() {
        assertThat(new Finish("white", 0.7, 0.3).reflectance()).isEqualTo(1);
        assertThatThrownBy(() -> new Finish("too bright", 0.7, 0.31)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new Finish("negative", -0.1, 0.3)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new Finish("none", Double.NaN, 0)).isInstanceOf(IllegalArgumentException.class);
    }

    private static void refuse(Runnable build, String name) {
        assertThatThrownBy(build::run)
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining(name);
    }
}
