package darkrim.assembly;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import darkrim.geom.Polygon;
import darkrim.geom.Ring;
import darkrim.layout.BondWiresShape;
import darkrim.layout.CutShape.ColdStop;
import darkrim.layout.CutShape.Extruded;
import darkrim.layout.CutShape.Honeycomb;
import darkrim.layout.Shape;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.apache.commons.geometry.euclidean.twod.Vector2D;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class CutPiecesTest {
    private static Body body(Shape shape) {
        List<Body> bodies = Layouts.bodies(shape);
        assertThat(bodies).hasSize(1);
        MeshLaws.hold(bodies.get(0));
        return bodies.get(0);
    }

    private static Map<String, Double> areas(Body body) {
        return body.faces().stream().collect(Collectors.toMap(Face::name, Face::area));
    }

    @Test
    void anExtrudedAngleBracketHasItsAreaTimesItsLength() {
        Polygon angle = Polygon.of(List.of(
                Vector2D.of(0, 0),
                Vector2D.of(6, 0),
                Vector2D.of(6, 1),
                Vector2D.of(1, 1),
                Vector2D.of(1, 4),
                Vector2D.of(0, 4)));
        Body bracket = body(new Extruded(angle, List.of("foot", "toe", "in", "in", "tip", "back"), 10));
        assertThat(bracket.volume()).isCloseTo(90, within(1e-10));
        assertThat(areas(bracket).get("part/in")).isCloseTo(80, within(1e-10));
        assertThat(areas(bracket))
                .containsOnlyKeys("part/foot", "part/toe", "part/in", "part/tip", "part/back", "part/top", "part/base");
    }

    /** A hexagon of width w across flats has the area sqrt(3)/2 w^2 and the perimeter 2 sqrt(3) w. */
    @Test
    void aHoneycombIsItsOutlineWithoutItsCells() {
        Body comb = body(new Honeycomb(Polygon.rectangle(30, 20), 1, 5, 3, 0.2));
        long cells = comb.faces().stream()
                .filter(face -> face.name().contains("cell"))
                .count();
        assertThat(cells).isGreaterThan(40);
        assertThat(comb.volume()).isCloseTo(5 * (600 - cells * Math.sqrt(3) / 2 * 9), within(1e-8));
        assertThat(areas(comb).get("part/cell[1,1]")).isCloseTo(5 * 2 * Math.sqrt(3) * 3, within(1e-9));
        Body round = body(new Honeycomb(Ring.disc(15), 0, 5, 3, 0.2));
        assertThat(areas(round)).containsKeys("part/rim", "part/top", "part/underside", "part/cell[1,1]");
    }

    /**
     * The opening is the ring between opening and hub without its arms; the piece of a strip of width w within a circle of radius r has the
     * area 2 (r^2 asin(w / 2r) + (w / 2) sqrt(r^2 - w^2 / 4)).
     */
    @ParameterizedTest
    @ValueSource(ints = {2, 3, 4, 7})
    void aColdStopLosesItsRingAndKeepsItsArms(int arms) {
        Body stop = body(new ColdStop(20, 12, 4, arms, 1.5, 2, 0.5, 0.001));
        double ring = Math.PI * (144 - 16);
        double strips = arms * (halfStrip(12, 1.5) - halfStrip(4, 1.5));
        double exact = 0.5 * (Math.PI * 400 - ring + strips);
        assertThat(stop.volume()).isLessThan(exact).isGreaterThan(exact - 0.5 * 0.001 * 2 * Math.PI * (20 + 12 + 4));
        double arm = Math.sqrt(144 - 0.5625) - Math.sqrt(16 - 0.5625);
        assertThat(areas(stop).get("part/opening/1/arm-1")).isCloseTo(0.5 * arm, within(1e-9));
        assertThat(areas(stop).get("part/opening/" + arms + "/arm-1")).isCloseTo(0.5 * arm, within(1e-9));
    }

    private static double halfStrip(double r, double w) {
        return r * r * Math.asin(w / 2 / r) + w / 2 * Math.sqrt(r * r - w * w / 4);
    }

    /** A tube about a plane curve cut by planes through the curve: area of its cross-section times its length. */
    @ParameterizedTest
    @CsvSource({"0.025, 1.2, 0, 0.3", "0.025, 1.2, 0.5, 0.3", "0.05, 2, -0.1, 0.6"})
    void aBondWireHasTheVolumeOfItsLength(double diameter, double span, double drop, double loop) {
        Body wire = body(new BondWiresShape(diameter, span, drop, loop, 1, 0, 0.0005));
        double peak = span * Math.sqrt(loop) / (Math.sqrt(loop) + Math.sqrt(loop + drop));
        double bend = loop / (peak * peak);
        double exact = Math.PI * diameter * diameter / 4 * (arc(bend, peak) + arc(bend, span - peak));
        // A polygon within 0.0005 mm of a circle of 0.0125 mm lacks 4/3 of their ratio of its area: 5.3 %; of the
        // thicker wires half as much.
        assertThat(wire.volume()).isLessThan(exact).isCloseTo(exact, within(0.06 * exact));
        assertThat(areas(wire)).containsOnlyKeys("part/wire", "part/foot-1", "part/foot-2");
        double highest = wire.triangles().mapToDouble(t -> t.a().getZ()).max().orElseThrow();
        assertThat(highest).isBetween(loop + diameter / 2 - 0.002, loop + diameter / 2 + 1e-9);
        double lowest = wire.triangles().mapToDouble(t -> t.a().getZ()).min().orElseThrow();
        assertThat(lowest).isCloseTo(Math.min(0, -drop), within(1e-12));
        // Every corner lies within the true wire, up to what the mitre adds at a joint.
        for (Triangle facet : wire.triangles().toList()) {
            assertThat(distance(facet.a(), bend, peak, span)).isLessThanOrEqualTo(diameter / 2 * 1.02 + 0.001);
        }
    }

    /** Length of the parabola z = -k u^2 from 0 to u: u sqrt(1 + m^2) / 2 + asinh(m) / 4k with m = 2 k u. */
    private static double arc(double k, double u) {
        double m = 2 * k * u;
        return u * Math.sqrt(1 + m * m) / 2 + Math.log(m + Math.sqrt(1 + m * m)) / (4 * k);
    }

    /** From the parabola drawn on below its feet, where the level cut reaches beyond them. */
    private static double distance(Vector3D point, double bend, double peak, double span) {
        double least = Double.POSITIVE_INFINITY;
        double loop = bend * peak * peak;
        for (int i = -2000; i <= 12_000; i++) {
            double x = span * i / 10_000;
            double z = loop - bend * (x - peak) * (x - peak);
            least = Math.min(least, point.distance(Vector3D.of(x, 0, z)));
        }
        return least;
    }

    @Test
    void bondWiresStandInARow() {
        List<Body> wires = Layouts.bodies(new BondWiresShape(0.025, 1, 0.2, 0.3, 3, 0.1, 0.001));
        assertThat(wires).extracting(Body::name).containsExactly("part/1", "part/2", "part/3");
        wires.forEach(MeshLaws::hold);
        double low =
                wires.get(0).triangles().mapToDouble(t -> t.a().getY()).min().orElseThrow();
        assertThat(low).isCloseTo(-0.1 - 0.0125, within(1e-4));
    }
}
