package darkrim.assembly;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import darkrim.layout.DetectorsShape;
import darkrim.layout.DetectorsShape.Bonds;
import darkrim.layout.DetectorsShape.Side;
import darkrim.layout.DetectorsShape.Sides;
import darkrim.layout.DetectorsShape.Underfill;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.apache.commons.rng.UniformRandomProvider;
import org.apache.commons.rng.simple.RandomSource;
import org.junit.jupiter.api.Test;

class DetectorPiecesTest {
    private static final double PITCH = 0.018;

    /** One die of 2048 pixels: array 36.864 mm, active 36.72 mm. */
    private static DetectorsShape oneDie(
            Sides margin, Sides ledge, Optional<Underfill> underfill, Sides carrier, Optional<Bonds> bonds) {
        return new DetectorsShape(
                1, 1, 0, 0, 2048, PITCH, 4, false, margin, 0.2, ledge, 0.5, underfill, carrier, 2, bonds);
    }

    private static Map<String, Double> areas(List<Body> bodies) {
        return bodies.stream().flatMap(body -> body.faces().stream()).collect(Collectors.toMap(Face::name, Face::area));
    }

    @Test
    void aDieWithEverySideAlikeHasTheVolumeOfItsThreeSlabs() {
        Body die = Layouts.bodies(
                        oneDie(Sides.all(0.5), Sides.all(2.5), Optional.empty(), Sides.all(1), Optional.empty()))
                .get(0);
        MeshLaws.holdForSolid(die);
        double side = 36.864 + 1;
        double readout = side + 5;
        double carrier = readout + 2;
        assertThat(die.volume())
                .isCloseTo(side * side * 0.2 + readout * readout * 0.5 + carrier * carrier * 2, within(1e-9));
    }

    @Test
    void theFacesOfADieHaveTheAreasOfTheirTrapezoids() {
        List<Body> bodies = Layouts.bodies(
                oneDie(Sides.all(0.5), Sides.all(2.5), Optional.empty(), Sides.all(1), Optional.empty()));
        Map<String, Double> area = areas(bodies);
        double array = 36.864;
        double side = array + 1;
        double readout = side + 5;
        double carrier = readout + 2;
        for (String label : List.of("-x", "+x", "-y", "+y")) {
            assertThat(area.get("part/die/reference/" + label)).isCloseTo(0.072 * (36.72 + 36.864) / 2, within(1e-10));
            assertThat(area.get("part/die/rim/" + label)).isCloseTo(0.5 * (array + side) / 2, within(1e-10));
            assertThat(area.get("part/die/edge/" + label)).isCloseTo(0.2 * side, within(1e-10));
            assertThat(area.get("part/die/ledge/" + label)).isCloseTo(2.5 * (side + readout) / 2, within(1e-10));
            assertThat(area.get("part/die/readout/" + label)).isCloseTo(0.5 * readout, within(1e-10));
            assertThat(area.get("part/die/carrier/top/" + label)).isCloseTo((readout + carrier) / 2, within(1e-10));
            assertThat(area.get("part/die/carrier/side/" + label)).isCloseTo(2 * carrier, within(1e-10));
        }
        assertThat(area.get("part/die/active")).isCloseTo(36.72 * 36.72, within(1e-9));
        assertThat(area.get("part/die/carrier/bottom")).isCloseTo(carrier * carrier, within(1e-9));
        assertThat(area).hasSize(30);
    }

    @Test
    void aFilletAllRoundAddsAPrismAndItsMitredCorners() {
        Body die = Layouts.bodies(oneDie(
                        Sides.all(0.5),
                        Sides.all(2.5),
                        Optional.of(new Underfill(0.05, 0.1)),
                        Sides.all(1),
                        Optional.empty()))
                .get(0);
        MeshLaws.holdForSolid(die);
        double side = 37.864;
        double foot = side + 0.2;
        // Frustum of a square pyramid: h/3 (a^2 + a b + b^2).
        double frustum = 0.05 / 3 * (side * side + side * foot + foot * foot);
        double readout = side + 5;
        double carrier = readout + 2;
        assertThat(die.volume())
                .isCloseTo(
                        side * side * 0.15 + frustum + readout * readout * 0.5 + carrier * carrier * 2, within(1e-9));
    }

    @Test
    void aButtedSideHasNoFilletAndKeepsItsWholeEdge() {
        List<Body> bodies = Layouts.bodies(oneDie(
                Sides.all(0.5),
                new Sides(0, 2.5, 0, 2.5),
                Optional.of(new Underfill(0.05, 0.1)),
                Sides.all(1),
                Optional.empty()));
        MeshLaws.holdForSolid(bodies.get(0));
        Map<String, Double> area = areas(bodies);
        double side = 37.864;
        double slope = Math.hypot(0.05, 0.1);
        assertThat(area).doesNotContainKeys("part/die/underfill/-x", "part/die/ledge/-x", "part/die/ledge/-y");
        assertThat(area.get("part/die/edge/-x")).isCloseTo(0.2 * side, within(1e-10));
        assertThat(area.get("part/die/edge/+x")).isCloseTo(0.15 * side, within(1e-10));
        // Mitred at the corner of two fillets, cut square at the butted side, where its end shows as a triangle.
        assertThat(area.get("part/die/underfill/+x"))
                .isCloseTo(slope * (side + 0.1 / 2) + 0.05 * 0.1 / 2, within(1e-10));
        assertThat(area.get("part/die/ledge/+x")).isCloseTo(2.4 * (side + 0.1 + side + 2.5) / 2, within(1e-10));
    }

    @Test
    void padsLieOnTheLedgeOfBondSidesOnly() {
        List<Body> bodies = Layouts.bodies(oneDie(
                Sides.all(0.5),
                new Sides(0, 2.5, 0, 0),
                Optional.empty(),
                Sides.all(1),
                Optional.of(new Bonds(EnumSet.of(Side.PLUS_X), 0.3, 0.4, 0.35, 0.8))));
        bodies.forEach(MeshLaws::hold);
        Map<String, Double> area = areas(bodies);
        double side = 37.864;
        assertThat(area.get("part/die/pads/+x")).isCloseTo(0.4 * side, within(1e-10));
        assertThat(area.get("part/die/ledge/+x")).isCloseTo(2.1 * side, within(1e-10));
        assertThat(area.keySet()).noneMatch(name -> name.contains("/pads/-") || name.contains("/pads/+y"));
    }

    @Test
    void bondsAreABlockFromTheMiddleOfThePadsToTheReach() {
        List<Body> bodies = Layouts.bodies(oneDie(
                Sides.all(0.5),
                Sides.all(2.5),
                Optional.empty(),
                Sides.all(1),
                Optional.of(new Bonds(EnumSet.of(Side.MINUS_X, Side.PLUS_Y), 0.3, 0.4, 0.35, 0.8))));
        bodies.forEach(MeshLaws::hold);
        assertThat(bodies).extracting(Body::name).containsExactly("part/die", "part/die/bonds/-x", "part/die/bonds/+y");
        Body block = bodies.get(1);
        // From 0.3 + 0.4 / 2 inside the readout to 0.8 beyond it; as long as the die.
        assertThat(block.volume()).isCloseTo(1.3 * 0.35 * 37.864, within(1e-10));
        double readoutEdge = -(36.864 / 2 + 0.5 + 2.5);
        assertThat(faceX(block, "outer")).isCloseTo(readoutEdge - 0.8, within(1e-12));
        assertThat(faceX(block, "inner")).isCloseTo(readoutEdge + 0.5, within(1e-12));
        assertThat(block.triangles().mapToDouble(t -> t.a().getZ()).max().orElseThrow())
                .isCloseTo(0.15, within(1e-12));
        Face first = face(bodies.get(2), "end-1");
        assertThat(first.triangles().get(0).doubledNormal().normalize().getX()).isEqualTo(-1);
    }

    private static Face face(Body body, String last) {
        return body.faces().stream()
                .filter(face -> face.name().endsWith("/" + last))
                .findFirst()
                .orElseThrow();
    }

    private static double faceX(Body body, String last) {
        return face(body, last).triangles().get(0).a().getX();
    }

    /** 300 dies with sides drawn from few values, zero among them, so that every mixture of steps left out occurs. */
    @Test
    void anyMixtureOfMarginsLedgesAndBondsIsWatertightAndHasTheVolumeOfItsLayers() {
        UniformRandomProvider random = RandomSource.XO_SHI_RO_256_PP.create(20260101L);
        for (int round = 0; round < 300; round++) {
            Sides margin = sides(random, 0, 0.3, 0.5);
            Sides ledge = sides(random, 0, 1.1, 2.5);
            Sides carrier = sides(random, 0, 0.9, 1.5);
            Optional<Underfill> underfill =
                    random.nextBoolean() ? Optional.of(new Underfill(0.05, 0.1)) : Optional.empty();
            EnumSet<Side> bondSides = EnumSet.noneOf(Side.class);
            for (Side side : Side.values()) {
                if (ledge.on(side) > 0 && random.nextBoolean()) {
                    bondSides.add(side);
                }
            }
            double padFromEdge = random.nextBoolean() ? 0 : 0.3;
            // With 0.7 the pads begin exactly at the foot of the fillet of the narrow ledge: 1.1 - 0.3 - 0.7 = 0.1.
            double padWidth = random.nextBoolean() ? 0.4 : 0.7;
            Optional<Bonds> bonds = Optional.of(new Bonds(bondSides, padFromEdge, padWidth, 0.35, 0.8));
            DetectorsShape shape = new DetectorsShape(
                    1,
                    1,
                    0,
                    0,
                    64,
                    PITCH,
                    4 * random.nextInt(2),
                    false,
                    margin,
                    0.2,
                    ledge,
                    0.5,
                    underfill,
                    carrier,
                    2,
                    bonds);
            List<Body> bodies = Layouts.bodies(shape);
            bodies.forEach(MeshLaws::hold);
            double array = 64 * PITCH;
            double width = array + margin.minusX() + margin.plusX();
            double depth = array + margin.minusY() + margin.plusY();
            double readoutWidth = width + ledge.minusX() + ledge.plusX();
            double readoutDepth = depth + ledge.minusY() + ledge.plusY();
            double carrierWidth = readoutWidth + carrier.minusX() + carrier.plusX();
            double carrierDepth = readoutDepth + carrier.minusY() + carrier.plusY();
            double expected = width * depth * 0.2 + readoutWidth * readoutDepth * 0.5 + carrierWidth * carrierDepth * 2;
            if (underfill.isPresent()) {
                double growX = 0.1 * ((ledge.minusX() > 0 ? 1 : 0) + (ledge.plusX() > 0 ? 1 : 0));
                double growY = 0.1 * ((ledge.minusY() > 0 ? 1 : 0) + (ledge.plusY() > 0 ? 1 : 0));
                // Integral of (w + s gx)(d + s gy) - w d over s from 0 to 1, times the height.
                expected += 0.05 * (width * growY / 2 + depth * growX / 2 + growX * growY / 3);
            }
            assertThat(bodies.get(0).volume()).as(shape.toString()).isCloseTo(expected, within(1e-10));
            assertThat(bodies).hasSize(1 + bondSides.size());
        }
    }

    private static Sides sides(UniformRandomProvider random, double... values) {
        return new Sides(
                values[random.nextInt(values.length)],
                values[random.nextInt(values.length)],
                values[random.nextInt(values.length)],
                values[random.nextInt(values.length)]);
    }
}
