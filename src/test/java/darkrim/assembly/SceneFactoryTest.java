package darkrim.assembly;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import darkrim.diagnostic.Place;
import darkrim.geom.Outline;
import darkrim.geom.Polygon;
import darkrim.geom.Ring;
import darkrim.layout.BeamSpec;
import darkrim.layout.BeamSpec.FieldSpec;
import darkrim.layout.BeamSpec.PupilSpec;
import darkrim.layout.FinishRule;
import darkrim.layout.MapSpec;
import darkrim.layout.Shape;
import darkrim.scene.Beam;
import darkrim.scene.CellGrid;
import darkrim.scene.Finish;
import darkrim.scene.Scene;
import darkrim.scene.SceneFactory;
import darkrim.scene.Surface;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.apache.commons.geometry.euclidean.twod.Vector2D;
import org.junit.jupiter.api.Test;

class SceneFactoryTest {
    private static Beam beam(Outline outline, Vector3D centre, double tiltX, double tiltY) {
        return SceneFactory.beam(new BeamSpec(
                new PupilSpec(outline, centre, tiltX, tiltY), Optional.empty(), Optional.of(2.5), Place.IN_CODE));
    }

    @Test
    void theSceneHasTheSurfacesOfTheAssemblyWithTheirAreasAndFinishes() {
        var layout = Layouts.layout(
                List.of(
                        Layouts.part("mosaic", Layouts.mosaic()),
                        Layouts.part("stop", new Shape.Disc(30, 20)),
                        Layouts.part("flag", new Shape.Rectangle(4, 2))),
                List.of(
                        new FinishRule("mosaic/**/edge/*", "polished", Place.IN_CODE),
                        new FinishRule("stop/back", "black", Place.IN_CODE)),
                List.of(),
                MapSpec.DEFAULT);
        Assembly assembly = Layouts.assemble(layout);
        Scene scene = SceneFactory.of(layout, assembly);
        assertThat(scene.surfaces()).extracting(Surface::name).containsExactlyElementsOf(assembly.surfaces());
        Surface edge = scene.surface("mosaic/die[1,1]/edge/+x").orElseThrow();
        assertThat(edge.finish()).isEqualTo(new Finish("polished", 0, 0.9));
        assertThat(edge.area()).isCloseTo(37.864 * 0.2, within(1e-9));
        assertThat(scene.surface("stop/front").orElseThrow().finish()).isEqualTo(Finish.ABSORBER);
        assertThat(scene.surface("stop/back").orElseThrow().finish().diffuse()).isEqualTo(0.04);
        assertThat(scene.surface("stop/back").orElseThrow().back()).isTrue();
        Surface active = scene.surface("mosaic/die[2,1]/active").orElseThrow();
        CellGrid grid = active.grid().orElseThrow();
        assertThat(grid.count()).isEqualTo(256);
        assertThat(grid.at(0, 0).distance(Vector3D.of(20.1 - 18.36, -20.1 - 18.36, 0)))
                .isLessThan(1e-12);
        assertThat(grid.at(1, 0).distance(Vector3D.of(20.1 + 18.36, -20.1 - 18.36, 0)))
                .isLessThan(1e-12);
        assertThat(edge.grid()).isEmpty();
        for (int facet = active.firstFacet(); facet < active.firstFacet() + active.facetCount(); facet++) {
            assertThat(scene.normal(facet).getZ()).isEqualTo(1);
        }
    }

    @Test
    void theUntiltedPupilLooksDownAndKeepsItsOutline() {
        List<Vector2D> corners = List.of(Vector2D.of(0, 0), Vector2D.of(5, 0), Vector2D.of(0, 3));
        Beam beam = beam(Polygon.of(corners), Vector3D.of(1, 2, 100), 0, 0);
        assertThat(beam.pupil().frame().normal()).isEqualTo(Vector3D.of(0, 0, -1));
        assertThat(beam.radiance()).isEqualTo(OptionalDouble.of(2.5));
        List<Vector3D> placed = ((Polygon) beam.pupil().outline())
                .corners().stream()
                        .map(corner -> beam.pupil().frame().at(corner.getX(), corner.getY()))
                        .toList();
        assertThat(placed)
                .containsExactlyInAnyOrder(Vector3D.of(1, 2, 100), Vector3D.of(6, 2, 100), Vector3D.of(1, 5, 100));
        // A small pupil straight above: irradiance is area over distance squared; here with the cosines of a finite one
        // within 1 %.
        assertThat(beam.referenceIrradiance()).isCloseTo(7.5 / 1e4, within(1e-5));
    }

    @Test
    void thePupilIsTiltedAboutXFirstAndThenAboutY() {
        Beam beam = beam(Ring.disc(10), Vector3D.of(0, 0, 100), 90, 90);
        // About x by 90 deg: -z goes to +y; about y, +y stays.
        assertThat(beam.pupil().frame().normal().distance(Vector3D.of(0, 1, 0))).isLessThan(1e-15);
        Beam leaning = beam(Ring.disc(10), Vector3D.of(0, 0, 100), 0, 10);
        // About y by a: -z goes to (-sin a, 0, -cos a).
        double a = Math.toRadians(10);
        assertThat(leaning.pupil().frame().normal().distance(Vector3D.of(-Math.sin(a), 0, -Math.cos(a))))
                .isLessThan(1e-15);
        assertThat(leaning.pupil()
                        .frame()
                        .u()
                        .cross(leaning.pupil().frame().v())
                        .distance(leaning.pupil().frame().normal()))
                .isLessThan(1e-15);
    }

    @Test
    void theFieldLimitIsLevelAtItsHeight() {
        Beam beam = SceneFactory.beam(new BeamSpec(
                Layouts.BEAM.pupil(),
                Optional.of(new FieldSpec(Polygon.rectangle(10, 4), Vector3D.of(1, 0, 50))),
                Optional.empty(),
                Place.IN_CODE));
        var limit = beam.fieldLimit().orElseThrow();
        assertThat(limit.passes(5.9, 1.9, 0, 0, 0, 1)).isTrue();
        assertThat(limit.passes(6.1, 0, 0, 0, 0, 1)).isFalse();
        assertThat(limit.passes(-4.1, 0, 0, 0, 0, 1)).isFalse();
        assertThat(limit.passes(0, 2.1, 0, 0, 0, 1)).isFalse();
        assertThat(limit.passes(0, 0, 0, 6.1 / 50, 0, 1)).isFalse();
        assertThat(beam.radiance()).isEmpty();
    }
}
