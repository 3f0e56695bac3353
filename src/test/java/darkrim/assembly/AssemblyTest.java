package darkrim.assembly;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import darkrim.diagnostic.Findings;
import darkrim.diagnostic.Place;
import darkrim.geom.Placement;
import darkrim.layout.FinishRule;
import darkrim.layout.Layout;
import darkrim.layout.MapSpec;
import darkrim.layout.Part;
import darkrim.layout.Shape;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Test;

class AssemblyTest {
    private static final Part MOSAIC = Layouts.part("mosaic", Layouts.mosaic());

    private static final Part BAR = Layouts.part("bar", new Shape.Block(4, 100, 3));

    private static final Part STOP = Layouts.part("stop", new Shape.Disc(30, 20));

    private static Place line(int number) {
        return new Place("case.yaml", number, 3);
    }

    @Test
    void aLaterFinishRuleWinsOverAnEarlierOneAndOverThePart() {
        Part painted = new Part("bar", BAR.shape(), Placement.NONE, Optional.empty(), Optional.of("black"), line(1));
        Layout layout = Layouts.layout(
                List.of(painted, STOP),
                List.of(
                        new FinishRule("bar/{+,-}x", "polished", line(2)),
                        new FinishRule("bar/+x", Part.NO_FINISH, line(3)),
                        new FinishRule("stop/back", "polished", line(4))),
                List.of(),
                MapSpec.DEFAULT);
        Assembly assembly = Layouts.assemble(layout);
        assertThat(assembly.finishOf("bar/+z")).isEqualTo("black");
        assertThat(assembly.finishOf("bar/-x")).isEqualTo("polished");
        assertThat(assembly.finishOf("bar/+x")).isEqualTo(Part.NO_FINISH);
        assertThat(assembly.finishOf("stop/front")).isEqualTo(Part.NO_FINISH);
        assertThat(assembly.finishOf("stop/back")).isEqualTo("polished");
        assertThatThrownBy(() -> assembly.finishOf("bar/+w")).hasMessageContaining("bar/+w");
        assertThat(assembly.surfaces())
                .containsExactly("bar/-y", "bar/+x", "bar/+y", "bar/-x", "bar/+z", "bar/-z", "stop/front", "stop/back");
    }

    @Test
    void copiesStandInAGridAboutThePlaceOfThePart() {
        Part bars = new Part(
                "bar",
                new Shape.Block(1, 2, 3),
                Placement.NONE.thenMoved(Vector3D.of(10, 20, 5)),
                Optional.of(new Part.Repeat(3, 2, 4, 6)),
                Optional.empty(),
                line(1));
        Assembly assembly = Layouts.assemble(Layouts.layout(bars));
        assertThat(assembly.bodies())
                .extracting(Body::name)
                .containsExactly("bar[1,1]", "bar[2,1]", "bar[3,1]", "bar[1,2]", "bar[2,2]", "bar[3,2]");
        assembly.bodies().forEach(MeshLaws::hold);
        assertThat(middle(assembly.bodies().get(0)).distance(Vector3D.of(6, 17, 6.5)))
                .isLessThan(1e-12);
        assertThat(middle(assembly.bodies().get(5)).distance(Vector3D.of(14, 23, 6.5)))
                .isLessThan(1e-12);
        assertThat(assembly.surfaces()).contains("bar[1,2]/+x");
    }

    @Test
    void theOnlyCopyOfAPartHasNoNumber() {
        Part bar = new Part(
                "bar",
                BAR.shape(),
                Placement.NONE,
                Optional.of(new Part.Repeat(1, 1, 0, 0)),
                Optional.empty(),
                line(1));
        assertThat(Layouts.assemble(Layouts.layout(bar)).surfaces()).contains("bar/+x");
    }

    private static Vector3D middle(Body body) {
        Vector3D low = Vector3D.of(Double.POSITIVE_INFINITY, Double.POSITIVE_INFINITY, Double.POSITIVE_INFINITY);
        Vector3D high = low.negate();
        for (Triangle t : body.triangles().toList()) {
            for (Vector3D c : List.of(t.a(), t.b(), t.c())) {
                low = Vector3D.of(
                        Math.min(low.getX(), c.getX()), Math.min(low.getY(), c.getY()), Math.min(low.getZ(), c.getZ()));
                high = Vector3D.of(
                        Math.max(high.getX(), c.getX()),
                        Math.max(high.getY(), c.getY()),
                        Math.max(high.getZ(), c.getZ()));
            }
        }
        return low.lerp(high, 0.5);
    }

    @Test
    void mapsAreGivenToWhateverIsOneRectangle() {
        List<String> mapped = new ArrayList<>();
        Layout layout = Layouts.layout(
                List.of(MOSAIC, BAR), List.of(), List.of(), new MapSpec("{mosaic/die[2,2],bar}", 4, 2, line(1)));
        Findings findings = new Findings();
        Assembly assembly = Assembly.of(layout, findings);
        for (String name : assembly.surfaces()) {
            assembly.mapOf(name).ifPresent(map -> {
                mapped.add(name);
                Face face = assembly.faces()
                        .filter(f -> f.name().equals(name))
                        .findFirst()
                        .orElseThrow();
                assertThat(map.alongColumns().norm() * map.alongRows().norm())
                        .as(name)
                        .isCloseTo(face.area(), within(1e-9 * face.area()));
                assertThat(map.alongColumns().dot(map.alongRows())).isCloseTo(0, within(1e-9));
            });
        }
        // Butted sides of the readout carry corners of the ledge in their upper seam and are still rectangles; mitred
        // faces are not.
        assertThat(mapped)
                .contains(
                        "mosaic/die[2,2]/active",
                        "mosaic/die[2,2]/edge/-x",
                        "mosaic/die[2,2]/readout/-x",
                        "mosaic/die[2,2]/carrier/bottom",
                        "bar/+x")
                .doesNotContain("mosaic/die[2,2]/rim/+x", "mosaic/die[2,2]/ledge/+y", "mosaic/die[2,2]/underfill/+x");
    }

    @Test
    void columnsRunNearestToTheXAxisAlsoOnAPartThatIsTurned() {
        Placement turned = Placement.NONE
                .thenMirrored(Vector3D.Unit.PLUS_Y)
                .thenTurned(Vector3D.Unit.PLUS_Z, 170)
                .thenMoved(Vector3D.of(1, 2, 3));
        Layout layout = Layouts.layout(
                List.of(Layouts.part("flag", new Shape.Rectangle(10, 4), turned)),
                List.of(),
                List.of(),
                new MapSpec("flag", 5, 2, line(1)));
        Assembly assembly = Layouts.assemble(layout);
        MapGrid map = assembly.mapOf("flag/front").orElseThrow();
        assertThat(assembly.mapOf("flag/back")).contains(map);
        assertThat(map.alongColumns().norm()).isCloseTo(10, within(1e-12));
        assertThat(map.alongColumns().getX()).isPositive();
        assertThat(map.alongRows().norm()).isCloseTo(4, within(1e-12));
        assertThat(map.alongRows().getY()).isPositive();
        Vector3D middle = map.origin()
                .add(map.alongColumns().multiply(0.5))
                .add(map.alongRows().multiply(0.5));
        assertThat(middle.distance(Vector3D.of(1, 2, 3))).isLessThan(1e-12);
    }
}
