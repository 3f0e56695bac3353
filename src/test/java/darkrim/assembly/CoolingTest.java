package darkrim.assembly;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import darkrim.diagnostic.Findings;
import darkrim.layout.Layout;
import darkrim.layout.LayoutReader;
import darkrim.layout.LayoutReading;
import darkrim.material.MaterialLibrary;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Test;

class CoolingTest {
    private static final double ALUMINIUM = contraction("aluminium-6061");
    private static final double MOLYBDENUM = contraction("molybdenum");

    private static final String MOSAIC = """
              mosaic:
                kind: detectors
                grid: [2, 2]
                spacing: 12
                pixels: 256
                pixel_pitch: 40 um
                die: {margin: 0.5, thickness: 0.2}
                readout: {ledge: 0.1, thickness: 0.3}
                carrier: {margin: 0.2, thickness: 1}
                MOSAIC
              lid:
                kind: plate
                size: [40, 40]
                height: 2
                thickness: 0.5
                openings: {shape: rectangle, size: 10, grid: [2, 2], spacing: 12}
                LID
            """;

    private static double contraction(String material) {
        return MaterialLibrary.of(material).orElseThrow().contraction().between(293, 80);
    }

    private static Layout layout(String cooldown, String parts) {
        String text = "title: t\n" + cooldown + "beam: {pupil: {shape: disc, diameter: 10, distance: 200}}\nparts:\n"
                + parts + "requirements:\n  dark: {surfaces: \"**\", direct: none}\n";
        LayoutReading reading = LayoutReader.read("t", text.getBytes(StandardCharsets.UTF_8));
        assertThat(reading.findings()).isEmpty();
        return reading.layout().orElseThrow();
    }

    private static String mosaic(String ofMosaic, String ofLid) {
        return MOSAIC.replace("MOSAIC", ofMosaic).replace("LID", ofLid);
    }

    private static List<Vector3D> corners(Layout layout) {
        List<Vector3D> corners = new ArrayList<>();
        Assembly.of(layout.partsOnly(), new Findings())
                .faces()
                .flatMap(face -> face.triangles().stream())
                .forEach(facet -> corners.addAll(List.of(facet.a(), facet.b(), facet.c())));
        return corners;
    }

    private static double width(Layout layout, String part) {
        double least = Double.POSITIVE_INFINITY;
        double most = Double.NEGATIVE_INFINITY;
        for (Body body : Assembly.of(layout.partsOnly(), new Findings()).bodies()) {
            if (body.name().equals(part)) {
                for (Triangle facet : body.triangles().toList()) {
                    for (Vector3D corner : List.of(facet.a(), facet.b(), facet.c())) {
                        least = Math.min(least, corner.getX());
                        most = Math.max(most, corner.getX());
                    }
                }
            }
        }
        return most - least;
    }

    @Test
    void noCoolDownAtAllAndNoneInDegreesAreTheSameToTheLastBit() {
        String parts = mosaic("", "at: [0.1, 0.2, 0.3]");
        List<Vector3D> plain = corners(layout("", parts));
        Layout still = layout("cooldown: {drawn_at: 80, works_at: 80, material: copper}\n", parts);
        assertThat(corners(still)).isEqualTo(plain);
        Layout cooled = layout("cooldown: {works_at: 80, material: copper}\n", parts);
        assertThat(corners(cooled.warm())).isEqualTo(plain);
        assertThat(corners(cooled)).isNotEqualTo(plain);
    }

    @Test
    void oneMaterialHeldAtOnePointKeepsAllProportions() {
        String parts = mosaic("held_at: [3, -2, 1]", "at: [0.5, 0.25, 0]\n    held_at: [2.5, -2.25, 1]");
        Layout cold = layout("cooldown: {works_at: 80, material: aluminium-6061}\n", parts);
        List<Vector3D> before = corners(cold.warm());
        List<Vector3D> after = corners(cold);
        Vector3D point = Vector3D.of(3, -2, 1);
        for (int i = 0; i < before.size(); i++) {
            Vector3D expected = point.lerp(before.get(i), 1 - ALUMINIUM);
            assertThat(after.get(i).distance(expected)).isLessThan(1e-13);
        }
    }

    @Test
    void aPartThatIsHeldMovesWithItsHolderAndThenContractsByItself() {
        Layout cold = layout("cooldown: {works_at: 80}\n", """
                  plate: {kind: block, width: 100, depth: 10, height: 1, material: molybdenum}
                  post:  {kind: block, width: 4, depth: 4, height: 10, at: [40, 0, 1], material: aluminium-6061, held_by: plate}
                """);
        Cooling cooling = Cooling.of(cold);
        Vector3D foot = cooling.of("post").orElseThrow().point(Vector3D.of(40, 0, 1));
        assertThat(foot.getX()).isCloseTo(40 * (1 - MOLYBDENUM), within(1e-13));
        assertThat(foot.getZ()).isCloseTo(1 - MOLYBDENUM, within(1e-15));
        Vector3D top = cooling.of("post").orElseThrow().point(Vector3D.of(40, 0, 11));
        assertThat(top.getZ() - foot.getZ()).isCloseTo(10 * (1 - ALUMINIUM), within(1e-13));
        assertThat(width(cold, "post")).isCloseTo(4 * (1 - ALUMINIUM), within(1e-13));
        assertThat(width(cold, "plate")).isCloseTo(100 * (1 - MOLYBDENUM), within(1e-13));
    }

    @Test
    void copiesAreHeldEachAtItsOwnPointAndMoveWithTheHolder() {
        Layout cold = layout("cooldown: {works_at: 80}\n", """
                  plate: {kind: block, width: 100, depth: 100, height: 1, material: molybdenum}
                  post:
                    {kind: block, width: 4, depth: 4, height: 5, at: [0, 0, 1], repeat: {count: [2, 1], step: [60, 1]},
                     material: aluminium-6061, held_by: plate}
                """);
        Cooling cooling = Cooling.of(cold);
        for (int i = 1; i <= 2; i++) {
            double x = i == 1 ? -30 : 30;
            Vector3D foot = cooling.ofCopy("post[" + i + ",1]").orElseThrow().point(Vector3D.of(x, 0, 1));
            assertThat(foot.getX()).isCloseTo(x * (1 - MOLYBDENUM), within(1e-13));
            assertThat(width(cold, "post[" + i + ",1]")).isCloseTo(4 * (1 - ALUMINIUM), within(1e-13));
        }
    }

    @Test
    void twoBarsFixedAtTheirMiddlesEndAsFarApartAsTheirContractionsDiffer() {
        // Reference case G09a: 100 mm, aluminium on molybdenum, 293 K to 40 K: each end moves by 0.1587665472 mm.
        Layout cold = layout("cooldown: {works_at: 40}\n", """
                  baffle: {kind: block, width: 100, depth: 2, height: 1, at: [0, 0, 2], material: aluminium-6061}
                  plate:  {kind: block, width: 100, depth: 2, height: 1, material: molybdenum}
                """);
        double baffle = width(cold, "baffle");
        double plate = width(cold, "plate");
        assertThat(100 - baffle).isCloseTo(0.4115330944, within(1e-6));
        assertThat(100 - plate).isCloseTo(0.094, within(1e-6));
        assertThat((plate - baffle) / 2).isCloseTo(0.1587665472, within(1e-6));
    }

    @Test
    void anOpeningMovesAgainstItsDieByTheDifferenceOfTheContractions() {
        Layout cold = layout("cooldown: {works_at: 80}\n", mosaic("material: molybdenum", "material: aluminium-6061"));
        List<OpeningShift> shifts =
                OpeningShift.of(cold, Assembly.of(cold.warm().partsOnly(), new Findings()));
        assertThat(shifts).hasSize(4);
        OpeningShift last = shifts.get(3);
        assertThat(last.opening()).isEqualTo("lid/opening[2,2]");
        assertThat(last.die()).isEqualTo("mosaic/die[2,2]");
        // The opening ends at 6 + 5 = 11 and begins at 1; the die of 256 x 0.04 + 2 x 0.5 at 11.62 and 0.38.
        double outer = -11 * ALUMINIUM + 11.62 * MOLYBDENUM;
        double inner = 1 * ALUMINIUM - 0.38 * MOLYBDENUM;
        assertThat(last.sides().get(0).moved()).isCloseTo(outer, within(1e-13));
        assertThat(last.sides().get(1).moved()).isCloseTo(inner, within(1e-13));
        // Stated accuracies 4 % and 8 %.
        assertThat(last.sides().get(0).uncertainty())
                .isCloseTo(0.04 * 11 * ALUMINIUM + 0.08 * 11.62 * MOLYBDENUM, within(1e-13));
    }

    @Test
    void anAccuracyThatIsNotStatedIsNotMadeUp() {
        Layout cold = layout(
                "cooldown: {works_at: 80}\nmaterials: {alloy: {contraction: [[80, 0.004], [293, 0]]}}\n",
                mosaic("material: molybdenum", "material: alloy"));
        OpeningShift shift = OpeningShift.of(cold, Assembly.of(cold.warm().partsOnly(), new Findings()))
                .get(0);
        assertThat(shift.sides()).allMatch(side -> Double.isNaN(side.uncertainty()));
        assertThat(shift.sides().get(1).moved()).isCloseTo(-11 * 0.004 + 11.62 * MOLYBDENUM, within(1e-13));
    }

    @Test
    void aCooledMosaicStillHasClosedBodiesOfSmallerVolume() {
        Layout cold = layout("cooldown: {works_at: 80, material: aluminium-6061}\n", mosaic("", ""));
        List<Body> before = Assembly.of(cold.warm().partsOnly(), new Findings()).bodies();
        List<Body> after = Assembly.of(cold.partsOnly(), new Findings()).bodies();
        for (int i = 0; i < before.size(); i++) {
            MeshLaws.hold(after.get(i));
            double expected = before.get(i).volume() * Math.pow(1 - ALUMINIUM, 3);
            assertThat(after.get(i).volume())
                    .isCloseTo(expected, within(1e-12 * before.get(i).volume() + 1e-12));
        }
    }
}
