package darkrim.assembly;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import darkrim.diagnostic.Place;
import darkrim.geom.Outline;
import darkrim.geom.Placement;
import darkrim.geom.Polygon;
import darkrim.geom.Ring;
import darkrim.layout.BeamSpec;
import darkrim.layout.BeamSpec.PupilSpec;
import darkrim.layout.DetectorsShape;
import darkrim.layout.DetectorsShape.Side;
import darkrim.layout.DetectorsShape.Sides;
import darkrim.layout.Part;
import darkrim.layout.Shape.KnifeEdge;
import darkrim.layout.Shape.Openings;
import darkrim.layout.Shape.Plate;
import darkrim.layout.Shape.Toward;
import java.util.List;
import java.util.Optional;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.apache.commons.geometry.euclidean.twod.Vector2D;
import org.junit.jupiter.api.Test;

class FeasibilityTest {
    /** Active area 36 mm, array the same, die 38 mm: room d = 1 mm. */
    private static final Part DIE = Layouts.part(
            "mosaic",
            new DetectorsShape(
                    1,
                    1,
                    0,
                    0,
                    2000,
                    0.018,
                    0,
                    false,
                    Sides.all(1),
                    0.2,
                    Sides.all(2),
                    0.5,
                    Optional.empty(),
                    Sides.all(1),
                    2,
                    Optional.empty()));

    private static BeamSpec beam(Outline outline, double distance) {
        return new BeamSpec(
                new PupilSpec(outline, Vector3D.of(0, 0, distance), 0, 0),
                Optional.empty(),
                Optional.empty(),
                Place.IN_CODE);
    }

    private static Part lid(Outline opening, double height, KnifeEdge edge) {
        return Layouts.part(
                "lid",
                new Plate(
                        Polygon.rectangle(120, 120),
                        height,
                        0.8,
                        List.of(new Openings(
                                "opening", opening, 1, 1, 0, 0, Vector2D.ZERO, Optional.ofNullable(edge)))));
    }

    private static Feasibility line(BeamSpec beam, double placementError, Part lid) {
        Assembly assembly = Layouts.assemble(Layouts.layout(DIE, lid));
        List<Feasibility> lines = Feasibility.of(assembly, beam, Optional.of(placementError));
        assertThat(lines).hasSize(1);
        return lines.get(0);
    }

    private static SideFeasibility side(Feasibility line, Side side) {
        return line.sides().stream().filter(s -> s.side() == side).findFirst().orElseThrow();
    }

    @Test
    void overspillIsTheLineFromTheFarEdgeOfThePupilPastTheLowerEdgeOfTheLand() {
        Feasibility line = line(beam(Polygon.rectangle(40, 60), 320), 0.1, lid(Polygon.rectangle(37, 37), 3.2, null));
        // Similar triangles by hand: from x = -20 at 320 past x = 18.5 + 0.1 at 3.2.
        double lands = -20 + (18.6 + 20) * 320 / (320 - 3.2);
        SideFeasibility x = side(line, Side.PLUS_X);
        assertThat(x.overspill()).isCloseTo(lands - 18, within(1e-12));
        assertThat(x.edge()).isEqualTo(SideFeasibility.Edge.LAND_NEAR_DETECTOR);
        assertThat(x.edgeHeight()).isCloseTo(3.2, within(1e-12));
        assertThat(x.room()).isCloseTo(1, within(1e-12));
        assertThat(x.fNumber()).isCloseTo(8, within(1e-12));
        assertThat(x.ruleLimit()).isCloseTo(8 * (1 - 0.2), within(1e-12));
        assertThat(x.ruleHolds()).isTrue();
        SideFeasibility y = side(line, Side.MINUS_Y);
        assertThat(y.overspill()).isCloseTo(-30 + (18.6 + 30) * 320 / (320 - 3.2) - 18, within(1e-12));
        assertThat(y.fNumber()).isCloseTo(320 / 60.0, within(1e-12));
        // The higher edge limits what a corner pixel sees of a pupil that reaches beyond it: y from 18 to 30 at height
        // 4.
        double crossing = 18 + (30 - 18) * 4 / 320.0;
        assertThat(line.vignettingMargin().orElseThrow()).isCloseTo(18.5 - crossing - 0.1, within(1e-12));
        assertThat(line.tightest().side()).isIn(Side.MINUS_Y, Side.PLUS_Y);
        assertThat(y.overspill()).isGreaterThan(1);
        assertThat(line.holds()).isFalse();
    }

    @Test
    void aKnifeEdgeTowardThePupilIsTheEdgeThatCounts() {
        KnifeEdge edge = new KnifeEdge(0.05, 30, Toward.PUPIL);
        Feasibility line = line(beam(Ring.disc(22.5), 320), 0, lid(Polygon.rectangle(36.6, 36.6), 3.2, edge));
        SideFeasibility x = side(line, Side.PLUS_X);
        assertThat(x.edge()).isEqualTo(SideFeasibility.Edge.LAND_NEAR_DETECTOR);
        assertThat(x.edgeHeight()).isCloseTo(3.95, within(1e-12));
        assertThat(x.overspill())
                .isCloseTo(-22.5 + (18.3 + 22.5) * 320 / (320 - 3.95) - 18, within(1e-4))
                .isLessThan(1);
        assertThat(line.vignettingMargin().orElseThrow()).isPositive();
        assertThat(line.holds()).isTrue();
        assertThat(line.text())
                .isEqualTo(
                        "lid/opening over mosaic/die: holds as drawn. With 0.000 mm of placement error direct light lands up to 0.810 mm beyond the last active pixel on"
                                + " " + line.tightest().side().label()
                                + ", past the land's edge nearer the detector; the die ends at 1.000 mm. Past this opening alone every active pixel still sees the whole"
                                + " pupil, with 0.244 mm to spare. Rule: h <= N (d - 2t), here h = 3.950 mm and 7.11 (1.000 - 2 x 0.000) ="
                                + " 7.111 mm: some opening can do both.");
    }

    @Test
    void aBevelSteeperThanTheLightLetsTheFarFaceLimitIt() {
        // Bevel of 1 deg, light leans up to atan(40.8 / 320) = 7 deg: the lower face cuts more than the knife edge.
        KnifeEdge edge = new KnifeEdge(0.05, 1, Toward.PUPIL);
        SideFeasibility x = side(
                line(beam(Polygon.rectangle(45, 45), 320), 0, lid(Polygon.rectangle(36.6, 36.6), 3.2, edge)),
                Side.PLUS_X);
        assertThat(x.edge()).isEqualTo(SideFeasibility.Edge.DETECTOR_FACE);
        double at = 18.3 + 0.75 * Math.tan(Math.toRadians(1));
        assertThat(x.overspill()).isCloseTo(-22.5 + (at + 22.5) * 320 / (320 - 3.2) - 18, within(1e-12));
    }

    /** The rule is derived for a telecentric beam: a far pupil of the same f-number, an opening that just shows the whole pupil. */
    @Test
    void forAFarPupilTheRuleAndTheExactConstructionAgree() {
        double t = 0.1;
        double fNumber = 8;
        double distance = 1e7;
        BeamSpec far = beam(Polygon.rectangle(distance / fNumber, distance / fNumber), distance);
        for (double height : List.of(1.0, 6.3, 6.5, 9.0)) {
            // A straight wall as thin as a sheet: h tan a + t beyond the last pixel.
            double opening = 36 + 2 * (height / (2 * fNumber) + t + 1e-6);
            Part sheet = Layouts.part(
                    "lid",
                    new Plate(
                            Polygon.rectangle(120, 120),
                            height,
                            1e-6,
                            List.of(new Openings(
                                    "opening",
                                    Polygon.rectangle(opening, opening),
                                    1,
                                    1,
                                    0,
                                    0,
                                    Vector2D.ZERO,
                                    Optional.empty()))));
            Feasibility line = line(far, t, sheet);
            SideFeasibility x = side(line, Side.PLUS_X);
            assertThat(x.overspill()).isCloseTo(height / fNumber + 2 * t, within(1e-4));
            assertThat(x.ruleLimit()).isCloseTo(fNumber * (1 - 2 * t), within(1e-9));
            assertThat(line.holds())
                    .as("height " + height)
                    .isEqualTo(height <= 6.4)
                    .isEqualTo(x.ruleHolds());
        }
    }

    @Test
    void aTooSmallOpeningIsNamedWithWhatIsMissing() {
        Feasibility line = line(beam(Ring.disc(22.5), 320), 0.1, lid(Polygon.rectangle(36, 36), 3.2, null));
        assertThat(line.vignettingMargin().orElseThrow()).isNegative();
        assertThat(line.text()).contains("does not hold as drawn").contains("a side too small there");
    }

    @Test
    void anOpeningThatIsNotConvexIsNotJudgedForVignetting() {
        List<Vector2D> cross = List.of(
                Vector2D.of(-20, -20),
                Vector2D.of(20, -20),
                Vector2D.of(20, 20),
                Vector2D.of(1, 20),
                Vector2D.of(0, 19),
                Vector2D.of(-1, 20),
                Vector2D.of(-20, 20));
        Feasibility line = line(beam(Ring.disc(22.5), 320), 0.1, lid(Polygon.of(cross), 3.2, null));
        assertThat(line.vignettingMargin()).isEmpty();
        assertThat(line.text()).contains("not convex");
    }

    @Test
    void openingsWithoutADieBelowOrOutOfLevelHaveNoLine() {
        Part tilted = Layouts.part(
                "lid",
                new Plate(
                        Polygon.rectangle(120, 120),
                        3.2,
                        0.8,
                        List.of(new Openings(
                                "opening", Polygon.rectangle(30, 30), 1, 1, 0, 0, Vector2D.ZERO, Optional.empty()))),
                Placement.NONE.thenTurned(Vector3D.Unit.PLUS_X, 5));
        Part aside = Layouts.part(
                "cover",
                new Plate(
                        Polygon.rectangle(120, 120),
                        8,
                        0.8,
                        List.of(new Openings(
                                "hole", Polygon.rectangle(3, 3), 1, 1, 0, 0, Vector2D.of(40, 0), Optional.empty()))));
        Assembly assembly = Layouts.assemble(Layouts.layout(DIE, tilted, aside));
        assertThat(assembly.openings()).hasSize(2);
        assertThat(Feasibility.of(assembly, Layouts.BEAM, Optional.empty())).isEmpty();
    }

    @Test
    void aMosaicHasOneLineForEachOpeningWithTheDieBelowIt() {
        Part lid = Layouts.part(
                "lid",
                new Plate(
                        Polygon.rectangle(120, 120),
                        3.2,
                        0.8,
                        List.of(new Openings(
                                "opening",
                                Polygon.rectangle(37.8, 37.8),
                                2,
                                2,
                                40.2,
                                40.2,
                                Vector2D.ZERO,
                                Optional.empty()))));
        Assembly assembly = Layouts.assemble(Layouts.layout(Layouts.part("mosaic", Layouts.mosaic()), lid));
        List<Feasibility> lines = Feasibility.of(assembly, Layouts.BEAM, Optional.empty());
        assertThat(lines)
                .extracting(line -> line.opening() + " " + line.die())
                .containsExactly(
                        "lid/opening[1,1] mosaic/die[1,1]",
                        "lid/opening[2,1] mosaic/die[2,1]",
                        "lid/opening[1,2] mosaic/die[1,2]",
                        "lid/opening[2,2] mosaic/die[2,2]");
        assertThat(lines.get(0).text()).contains("no placement error is stated, taken as 0");
        // Chief rays lean outward from the middle: the overspill of a corner detector is larger on its outer side.
        assertThat(side(lines.get(3), Side.PLUS_X).overspill())
                .isGreaterThan(side(lines.get(3), Side.MINUS_X).overspill());
    }
}
