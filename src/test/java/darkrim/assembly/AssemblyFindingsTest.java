package darkrim.assembly;

import static org.assertj.core.api.Assertions.assertThat;

import darkrim.diagnostic.Finding;
import darkrim.diagnostic.Findings;
import darkrim.diagnostic.Place;
import darkrim.geom.Placement;
import darkrim.geom.Polygon;
import darkrim.layout.BeamSpec;
import darkrim.layout.BeamSpec.PupilSpec;
import darkrim.layout.FinishRule;
import darkrim.layout.Layout;
import darkrim.layout.LayoutReader;
import darkrim.layout.MapSpec;
import darkrim.layout.Part;
import darkrim.layout.Requirement;
import darkrim.layout.Requirement.AtMost;
import darkrim.layout.Requirement.LightClass;
import darkrim.layout.Requirement.NoDirect;
import darkrim.layout.Requirement.Per;
import darkrim.layout.Requirement.PupilSeen;
import darkrim.layout.Shape;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Test;

/** What assembling finds wrong, or worth a warning, and where. */
class AssemblyFindingsTest {
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
        assertThat(findings(Layouts.layout(many, BAR)))
                .as("what does not fit takes no room from the parts after it")
                .hasSize(1);
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
    void ofMapsThatCouldNotBeReadNoSurfaceLacksOne() {
        String text = """
                title: Floor
                beam: {pupil: {shape: disc, diameter: 10, distance: 100}}
                parts:
                  floor: {kind: rectangle, width: 20, depth: 20, finish: absorber}
                requirements:
                  even: {surfaces: floor/front, direct: {at_most: 2, per: cell}}
                maps: %s
                """;
        assertThat(codes(text.formatted("[floor/front]"))).containsExactly("wrong-type");
        assertThat(codes(text.formatted("{surfaces: [floor/front]}"))).containsExactly("wrong-type");
        assertThat(codes(text.formatted("{surfaces: floor/back}"))).isEmpty();
        assertThat(codes(text.formatted("{cells: 4}"))).containsExactly("matches-nothing", "no-map");
    }

    private static List<String> codes(String text) {
        var reading = LayoutReader.read("case.yaml", text.getBytes(StandardCharsets.UTF_8));
        Findings findings = new Findings();
        findings.addAll(reading.findings());
        Assembly.of(reading.layout().orElseThrow(), findings);
        return findings.sorted().stream().map(Finding::code).sorted().toList();
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
}
