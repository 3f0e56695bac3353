package darkrim.study.section;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import darkrim.assembly.Assembly;
import darkrim.assembly.Body;
import darkrim.diagnostic.Findings;
import darkrim.layout.Layout;
import darkrim.layout.LayoutReader;
import darkrim.scene.Scene;
import darkrim.shadow.VisiblePupil;
import darkrim.study.Check;
import darkrim.study.CheckResult;
import darkrim.study.Effort;
import darkrim.trace.FacetTree;
import darkrim.verdict.Watch;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class LayoutSectionTest {
    private static final Effort PROOFS = new Effort(2, Optional.empty(), Optional.of(1L));

    private static CheckResult nightglow;

    @BeforeAll
    static void check() throws Exception {
        nightglow = Check.of(Path.of("geometries/nightglow-b.yaml"), PROOFS, Watch.NONE);
    }

    private static CheckResult checked(String parts) throws Exception {
        String text = """
                title: Section
                units: {length: mm}
                finishes: {black: {diffuse: 0.04}}
                beam: {pupil: {shape: disc, diameter: 40, distance: 300}}
                parts:
                """ + parts;
        Layout layout = LayoutReader.read("section.yaml", text.getBytes(StandardCharsets.UTF_8))
                .layout()
                .orElseThrow();
        return Check.of(layout, new Findings(), PROOFS, Watch.NONE);
    }

    private static final String BLOCK =
            "  block: {kind: block, width: 10, depth: 6, height: 4, at: [1, 2, 3], finish: black}\n";

    @Test
    void aBlockCutSquareIsARectangle() throws Exception {
        CheckResult result = checked(BLOCK);
        CutBody upright =
                LayoutSection.of(result, SectionPlane.square(0, 2)).bodies().get(0);
        assertThat(upright.area()).isCloseTo(6 * 4, within(1e-12));
        assertThat(upright.length()).isCloseTo(2 * (6 + 4), within(1e-12));
        assertThat(upright.outlines()).hasSize(1).allMatch(outline -> outline.size() == 4);
        double level = LayoutSection.of(result, SectionPlane.square(2, 3.5))
                .bodies()
                .get(0)
                .area();
        assertThat(level).isCloseTo(10 * 6, within(1e-12));
    }

    /** Through the middle along the diagonal of two sides: as long as the narrower side times root 2, as high as the block. */
    @Test
    void aBlockCutAslantHasTheAreaOfTheDiagonal() throws Exception {
        SectionPlane plane = SectionPlane.through(Vector3D.of(1, 2, 3), Vector3D.of(1, 1, 0));
        CutBody cut = LayoutSection.of(checked(BLOCK), plane).bodies().get(0);
        assertThat(cut.area()).isCloseTo(6 * Math.sqrt(2) * 4, within(1e-12));
    }

    @Test
    void aPlaneInAFaceCutsAsIfJustInFrontOfIt() throws Exception {
        CheckResult result = checked(BLOCK);
        double top = Assembly.of(result.layout(), new Findings())
                .faces()
                .flatMap(face -> face.triangles().stream())
                .mapToDouble(facet -> facet.a().getZ())
                .max()
                .orElseThrow();
        assertThat(LayoutSection.of(result, SectionPlane.square(2, top)).bodies())
                .isEmpty();
        assertThat(LayoutSection.of(result, SectionPlane.square(2, top - 4))
                        .bodies()
                        .get(0)
                        .area())
                .isCloseTo(60, within(1e-12));
    }

    /** A tube is the same at every height: its volume, found by the divergence theorem over all facets, over its length. */
    @Test
    void aTubeCutAcrossHasItsVolumeOverItsLength() throws Exception {
        CheckResult result = checked(
                "  tube: {kind: tube, inner_diameter: 24, outer_diameter: 27, base: 4, height: 50, finish: black}\n");
        Body body = Assembly.of(result.layout(), new Findings()).bodies().get(0);
        CutBody cut =
                LayoutSection.of(result, SectionPlane.square(2, 20.3)).bodies().get(0);
        assertThat(cut.outlines()).hasSize(2);
        assertThat(cut.area()).isCloseTo(body.volume() / 50, within(1e-9 * cut.area()));
    }

    /** Through the axis, where the plane runs along edges of the polygons: two strips, and what is cut a hair beside it. */
    @ParameterizedTest
    @ValueSource(
            strings = {
                "kind: tube, inner_diameter: 24, outer_diameter: 27",
                "kind: cone, base_diameter: 24, top_diameter: 34, thickness: 1.5"
            })
    void aRoundWallCutAlongItsAxisHasTwoSides(String wall) throws Exception {
        CheckResult result = checked("  wall: {" + wall + ", base: 4, height: 50, finish: black}\n");
        for (int axis = 0; axis < 2; axis++) {
            CutBody cut = LayoutSection.of(result, SectionPlane.square(axis, 0))
                    .bodies()
                    .get(0);
            CutBody beside = LayoutSection.of(result, SectionPlane.square(axis, 1e-7))
                    .bodies()
                    .get(0);
            assertThat(cut.outlines()).hasSize(2);
            assertThat(cut.outlines()).allMatch(outline -> outline.size() == 4);
            assertThat(cut.lines()).isEmpty();
            assertThat(cut.area()).isCloseTo(beside.area(), within(1e-5)).isCloseTo(150, within(2.0));
        }
    }

    /** By similar triangles: past the lower end of the land at height h, from the far rim, R from the axis at a distance D. */
    @Test
    void lightEndsWhereTheLineFromTheFarRimPutsIt() {
        LayoutSection section = LayoutSection.of(nightglow, SectionPlane.square(0, 20.1));
        assertThat(section.edges()).hasSize(4);
        double edge = 40.2 / 2 * (1 - 2.4 / 320) + 37.0 / 2;
        double low = 2.35;
        SectionRay ray = section.rays().stream()
                .filter(each -> each.kind() == SectionRay.Kind.LIGHT_ENDS
                        && each.edge().words().equals("lid/opening[2,2] +y"))
                .findFirst()
                .orElseThrow();
        // 1e-6 mm beside the edge.
        assertThat(ray.to().getY()).isCloseTo(edge + (edge + 22.5) * low / (320 - low), within(1.1e-6));
        assertThat(ray.to().getX()).isCloseTo(20.1, within(1e-12));
        assertThat(ray.to().getZ()).isCloseTo(0, within(1e-12));
        assertThat(ray.surface()).isEqualTo("mosaic/die[2,2]/rim/+y");
    }

    /** The exact view of the pupil knows no rays: it is cut from polygons. Also where edges run aslant to the plane, and beside the axis. */
    @Test
    void thePupilIsSeenFromOneSideOfEachLandingAsTheRaySays() {
        Scene scene = nightglow.scene();
        FacetTree tree = FacetTree.build(scene.corners(), scene.copyPlanes(), scene.bound());
        VisiblePupil visible = new VisiblePupil(scene, tree);
        Vector3D point = Vector3D.of(20, 21, 0);
        for (SectionPlane plane : List.of(
                SectionPlane.square(0, 20.1),
                SectionPlane.square(1, -12),
                SectionPlane.through(point, Vector3D.of(1, 0.5, 0)),
                SectionPlane.through(point, Vector3D.of(-0.3, 1, 0.1)))) {
            LayoutSection section = LayoutSection.of(nightglow, plane);
            int looked = 0;
            for (SectionRay ray : section.rays()) {
                if (Math.abs(ray.to().getZ()) < 1e-9) {
                    looked++;
                    look(visible, plane, ray);
                }
            }
            assertThat(looked).as(plane.words()).isGreaterThanOrEqualTo(9);
        }
    }

    private static void look(VisiblePupil visible, SectionPlane plane, SectionRay ray) {
        double step = 1e-3;
        double inward =
                Math.signum(ray.edge().open().getX() - ray.edge().narrowest().getX());
        // In front of the surface by less than shifts a line by a tenth of the step.
        Vector3D at = ray.to().add(Vector3D.of(0, 0, 1e-4));
        Vector3D way = plane.frame().u().multiply(inward * step);
        double within = share(visible, at.add(way));
        double beyond = share(visible, at.subtract(way));
        switch (ray.kind()) {
            case LIGHT_ENDS -> {
                assertThat(within).as(ray.toString()).isPositive();
                assertThat(beyond).as(ray.toString()).isZero();
            }
            case PUPIL_WHOLE -> {
                assertThat(within).as(ray.toString()).isCloseTo(1, within(1e-9));
                assertThat(beyond).as(ray.toString()).isLessThan(1 - 1e-7);
            }
            case CHIEF -> assertThat(within).isGreaterThan(0.4).isLessThan(0.6);
        }
    }

    private static double share(VisiblePupil visible, Vector3D at) {
        var view = visible.from(at, Vector3D.Unit.PLUS_Z);
        return view.isNone() ? 0 : view.areaFraction();
    }

    @Test
    void roomsOfEdgesAreThoseOfTheCheck() {
        LayoutSection section = LayoutSection.of(nightglow, SectionPlane.square(0, 20.1));
        List<SectionMargin.OfEdge> rooms = section.margins().stream()
                .filter(SectionMargin.OfEdge.class::isInstance)
                .map(SectionMargin.OfEdge.class::cast)
                .toList();
        assertThat(rooms)
                .hasSize(4)
                .allSatisfy(room -> assertThat(nightglow.margins().openings()).anySatisfy(known -> {
                    assertThat(known.opening()).isEqualTo(room.edge().name());
                    assertThat(known.sides()).containsExactly(room.edge().side());
                    assertThat(known.outward()).isEqualTo(room.outward());
                }));
    }

    @Test
    void aPlaneAcrossTheLightHoldsNoRay() {
        LayoutSection section = LayoutSection.of(nightglow, SectionPlane.square(2, 2));
        assertThat(section.pupil()).isEmpty();
        assertThat(section.rays()).isEmpty();
        assertThat(section.bodies()).isNotEmpty();
    }
}
