package darkrim.assembly;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import darkrim.diagnostic.Finding;
import darkrim.diagnostic.Findings;
import darkrim.diagnostic.Place;
import darkrim.geom.Placement;
import darkrim.geom.Polygon;
import darkrim.layout.BeamSpec;
import darkrim.layout.BeamSpec.PupilSpec;
import darkrim.layout.FinishRule;
import darkrim.layout.Layout;
import darkrim.layout.MapSpec;
import darkrim.layout.Part;
import darkrim.layout.Requirement;
import darkrim.layout.Requirement.AtMost;
import darkrim.layout.Requirement.LightClass;
import darkrim.layout.Requirement.NoDirect;
import darkrim.layout.Requirement.Per;
import darkrim.layout.Requirement.PupilSeen;
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

    private static Requirement requirement(int line, String surfaces, Requirement.Condition condition) {
        return new Requirement("wish-" + line, surfaces, condition, line(line));
    }

    private static List<Finding> findings(Layout layout) {
        Findings findings = new Findings();
        Assembly.of(layout, findings);
        return findings.sorted();
    }

    private static List<Finding> findings(Requirement... requirements) {
        return findings(Layouts.layout(List.of(MOSAIC, BAR, STOP), List.of(), List.of(requirements), MapSpec.DEFAULT));
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
    void aPatternThatSelectsNothingIsNamedWithItsPlaceAndTheNearestPath() {
        List<Finding> found = findings(Layouts.layout(
                List.of(MOSAIC),
                List.of(new FinishRule("mosaic/**/egde/*", "black", line(4))),
                List.of(
                        requirement(7, "mosaik", new NoDirect()),
                        requirement(8, "mosaic/**/activ", new PupilSeen(0.9)),
                        requirement(9, "mosaic/{die", new NoDirect())),
                new MapSpec("mosaic/*/actve", 4, 4, line(3))));
        assertThat(found)
                .extracting(Finding::toString)
                .containsExactly(
                        "case.yaml:3:3: maps: \"mosaic/*/actve\" selects no surface; the nearest is \"mosaic/die[1,1]/active\""
                                + " [matches-nothing]",
                        "case.yaml:4:3: finish rule: \"mosaic/**/egde/*\" selects no surface; the nearest is"
                                + " \"mosaic/die[1,1]/edge/-y\" [matches-nothing]",
                        "case.yaml:7:3: requirement wish-7: \"mosaik\" selects no surface; the nearest is \"mosaic\""
                                + " [matches-nothing]",
                        "case.yaml:8:3: requirement wish-8: \"mosaic/**/activ\" selects no surface; the nearest is"
                                + " \"mosaic/die[1,1]/active\" [matches-nothing]",
                        "case.yaml:9:3: requirement wish-9: pattern \"mosaic/{die\": the { at character 8 has no } after it"
                                + " [bad-pattern]");
    }

    @Test
    void aPatternForOnePartThatHasBecomeSeveralIsMendedByAStar() {
        assertThat(findings(requirement(7, "mosaic/die/edge/*", new NoDirect())))
                .extracting(Finding::toString)
                .containsExactly(
                        "case.yaml:7:3: requirement wish-7: \"mosaic/die/edge/*\" selects no surface; the nearest is"
                                + " \"mosaic/die*/edge/*\" [matches-nothing]");
        // The star alone does not mend this one.
        assertThat(findings(requirement(7, "mosaic/die/egde/-y", new NoDirect())))
                .singleElement()
                .asString()
                .contains("the nearest is \"mosaic/die[1,1]/edge/-y\"");
    }

    @Test
    void aLayoutWithoutDetectorsNeedsNoMap() {
        assertThat(findings(Layouts.layout(BAR))).isEmpty();
    }

    @Test
    void aRequirementPerCellNeedsAMap() {
        AtMost perCell = new AtMost(LightClass.DIRECT, 1e-3, Per.CELL);
        assertThat(findings(requirement(3, "**/active", perCell))).isEmpty();
        List<Finding> found = findings(requirement(5, "mosaic/**/edge/+x", perCell));
        assertThat(found).hasSize(1);
        assertThat(found.get(0).code()).isEqualTo("no-map");
        assertThat(found.get(0).toString())
                .startsWith(
                        "case.yaml:5:3: requirement wish-5 asks per cell, but mosaic/die[1,1]/edge/+x and 3 more have no map");
    }

    @Test
    void aStatedMapOnASurfaceThatIsNoRectangleIsAWarning() {
        List<Finding> found = findings(Layouts.layout(
                List.of(MOSAIC, STOP), List.of(), List.of(), new MapSpec("{mosaic/**/active,stop}", 8, 4, line(6))));
        assertThat(found).hasSize(1);
        assertThat(found.get(0).code()).isEqualTo("map-not-rectangular");
        assertThat(found.get(0).place()).isEqualTo(line(6));
        assertThat(found.get(0).severity()).isEqualTo(Finding.Severity.WARNING);
        assertThat(found.get(0).message()).contains("stop/front");
    }

    @Test
    void aDarkLedgeUnderBondsThatNeedNotBeDarkIsAWarning() {
        List<Finding> found = findings(requirement(3, "mosaic/**/{pads,ledge}", new NoDirect()));
        assertThat(found).hasSize(1);
        assertThat(found.get(0).code()).isEqualTo("bonds-shade-ledge");
        assertThat(found.get(0).severity()).isEqualTo(Finding.Severity.WARNING);
        assertThat(found.get(0).place()).isEqualTo(line(3));
        // Four dies with pads and a ledge each on their bond side.
        assertThat(found.get(0).message()).contains("and 7 more").contains("opaque");
    }

    @Test
    void aDarkLedgeIsNoWarningWhereTheBondsMustBeDarkTooOrThereAreNone() {
        assertThat(findings(
                        requirement(3, "mosaic/**/{pads,ledge}", new NoDirect()),
                        requirement(4, "mosaic/**/bonds", new NoDirect())))
                .isEmpty();
        assertThat(findings(requirement(3, "mosaic/**/ledge/{+,-}y", new NoDirect())))
                .isEmpty();
        assertThat(findings(
                        requirement(3, "mosaic/**/pads", new NoDirect()),
                        requirement(4, "mosaic/**/bonds/*/top", new NoDirect())))
                .hasSize(1);
        assertThat(findings(requirement(3, "mosaic/**/pads", new AtMost(LightClass.DIRECT, 1e-3, Per.SURFACE))))
                .isEmpty();
    }

    @Test
    void aPartThatCannotBeBuiltIsNamedAndTheOthersAreBuilt() {
        Findings findings = new Findings();
        Part flat =
                new Part("flat", new Shape.Block(0, 1, 1), Placement.NONE, Optional.empty(), Optional.empty(), line(6));
        Assembly assembly = Assembly.of(Layouts.layout(flat, BAR), findings);
        assertThat(findings.hasErrors()).isTrue();
        assertThat(findings.sorted().get(0).toString()).startsWith("case.yaml:6:3: part flat: ");
        assertThat(assembly.bodies()).extracting(Body::name).containsExactly("bar");
        for (Shape hopeless : List.of(
                new Shape.Tube(Double.NaN, 3, 0, 1),
                new Shape.Disc(Double.POSITIVE_INFINITY, 0),
                new Shape.SphereCap(0, 10),
                new Shape.Rectangle(-1, 0),
                new Shape.Block(1e200, 1e200, 1e200),
                new Shape.Box(10, 10, 0, 1, 90, 1))) {
            List<Finding> found = findings(Layouts.layout(Layouts.part("x", hopeless)));
            assertThat(found).as(hopeless.toString()).isNotEmpty();
        }
    }

    @Test
    void aPatternThatMayMeanAMissingPartIsNoFinding() {
        Part flat = Layouts.part("flat", new Shape.Block(0, 1, 1));
        List<Requirement> wishes = List.of(requirement(2, "flat/+x", new NoDirect()));
        assertThat(findings(Layouts.layout(List.of(flat, BAR), List.of(), wishes, MapSpec.DEFAULT)))
                .extracting(Finding::code)
                .containsExactly("part-not-buildable");
        Layout withoutFlat = Layouts.layout(List.of(BAR), List.of(), wishes, MapSpec.DEFAULT);
        assertThat(findings(withoutFlat)).extracting(Finding::code).containsExactly("matches-nothing");
        Findings partial = new Findings();
        Assembly.of(withoutFlat, false, partial);
        assertThat(partial.sorted()).isEmpty();
    }

    @Test
    void tooManyCopiesAreRefusedBeforeTheyFillTheMemory() {
        Part many = new Part(
                "many",
                new Shape.SphereCap(50, 180),
                Placement.NONE,
                Optional.of(new Part.Repeat(200, 200, 1, 1)),
                Optional.empty(),
                line(2));
        assertThat(findings(Layouts.layout(many)).get(0).message()).contains("facets");
        Part more = new Part(
                "more",
                BAR.shape(),
                Placement.NONE,
                Optional.of(new Part.Repeat(100_000, 100_000, 1, 1)),
                Optional.empty(),
                line(2));
        assertThat(findings(Layouts.layout(more)).get(0).message()).contains("places");
    }

    @Test
    void aPupilThatReachesBelowTheFocalPlaneOrFacesAwayIsAnError() {
        assertThat(pupilFinding(10, 80)).isEqualTo("pupil-below-focal-plane");
        assertThat(pupilFinding(400, 120)).isEqualTo("pupil-faces-away");
        assertThat(pupilFinding(400, 10)).isEmpty();
    }

    private static String pupilFinding(double distance, double tilt) {
        BeamSpec beam = new BeamSpec(
                new PupilSpec(Polygon.rectangle(45, 45), Vector3D.of(0, 0, distance), tilt, 0),
                Optional.empty(),
                Optional.empty(),
                line(1));
        Findings findings = new Findings();
        PupilPlane.check(beam, findings);
        return findings.sorted().stream().map(Finding::code).findFirst().orElse("");
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
