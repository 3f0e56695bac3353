package darkrim.study.contact;

import static org.assertj.core.api.Assertions.assertThat;

import darkrim.assembly.Assembly;
import darkrim.assembly.ShippedLayouts;
import darkrim.diagnostic.Finding;
import darkrim.diagnostic.Findings;
import darkrim.layout.Layout;
import darkrim.layout.LayoutReader;
import darkrim.layout.LayoutReading;
import darkrim.scene.Scene;
import darkrim.scene.SceneFactory;
import darkrim.trace.FacetTree;
import darkrim.verdict.StoppingWatch;
import darkrim.verdict.Watch;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Parts that run into one another are named, sheets on a face are refused, and parts that only touch are neither. */
class PartContactsTest {
    private static final String HEAD =
            "title: t\nbeam: {pupil: {shape: disc, diameter: 45, distance: %s}}\nrequirements: {dark: {surfaces: \"**\", direct: none}}\nparts:\n";

    private static Layout layout(String distance, String... parts) {
        StringBuilder text = new StringBuilder(HEAD.formatted(distance));
        for (String part : parts) {
            text.append("  ").append(part).append('\n');
        }
        LayoutReading reading = LayoutReader.read("f", text.toString().getBytes(StandardCharsets.UTF_8));
        assertThat(reading.findings()).isEmpty();
        return reading.layout().orElseThrow();
    }

    private static List<Finding> found(Layout layout) {
        Findings findings = new Findings();
        Assembly assembly = Assembly.of(layout, findings);
        Scene scene = SceneFactory.of(layout, assembly);
        FacetTree tree = FacetTree.build(scene.copyCorners(), scene.copyPlanes(), scene.bound());
        PartContacts.check(assembly, scene, tree, findings, Watch.NONE);
        return findings.sorted();
    }

    private static List<Finding> found(String... parts) {
        return found(layout("320", parts));
    }

    /** A block of some width, depth and height, its base centred on a place. */
    private static String block(String name, String size, String at) {
        String[] sizes = size.split(", ", 3);
        return name + ": {kind: block, width: " + sizes[0] + ", depth: " + sizes[1] + ", height: " + sizes[2]
                + ", at: [" + at + "]}";
    }

    private static void assertOverlap(String size, String... parts) {
        List<Finding> found = found(parts);
        assertThat(found).hasSize(1);
        assertThat(found.get(0).code()).isEqualTo("parts-overlap");
        assertThat(found.get(0).message())
                .contains("a and b run into one another")
                .contains(size);
    }

    @Test
    void aBarThroughAnotherIsNamedWithTheSizeOfWhatTheyShare() {
        assertOverlap(
                "at least 2.00 x 2.00 x 1.00 mm", block("a", "20, 2, 3", "0, 0, 0"), block("b", "2, 20, 1", "0, 0, 1"));
    }

    @Test
    void barsThatCrossFlushOnTopAndBelowAreNamed() {
        assertOverlap(
                "at least 2.00 x 2.00 x 1.00 mm", block("a", "20, 2, 1", "0, 0, 0"), block("b", "2, 20, 1", "0, 0, 0"));
    }

    @Test
    void barsThatMakeACornerAreNamed() {
        assertOverlap(
                "at least 2.00 x 2.00 x 1.00 mm",
                block("a", "11, 2, 1", "4.5, 0, 0"),
                block("b", "2, 11, 1", "0, 4.5, 0"));
    }

    @Test
    void aBlockInsideAnotherIsNamed() {
        assertOverlap("2.00 x 2.00 x 2.00 mm", block("a", "20, 20, 20", "0, 0, 0"), block("b", "2, 2, 2", "1, 3, 5"));
    }

    @Test
    void theSameBlockTwiceIsNamed() {
        assertOverlap("along x, y and z", block("a", "20, 20, 20", "0, 0, 0"), block("b", "20, 20, 20", "0, 0, 0"));
    }

    @Test
    void aBlockFlushInTheCornerOfAnotherIsNamed() {
        assertOverlap("along x, y and z", block("a", "20, 20, 20", "0, 0, 0"), block("b", "4, 4, 4", "8, 8, 0"));
    }

    /** Blocks of the same section run together along x by a length. */
    @ParameterizedTest
    @CsvSource({"5, true", "0.01, true", "1e-5, true", "5e-7, false", "0, false", "-0.001, false"})
    void anEndThatRunsIntoAnotherCountsFromTwiceTheGapOn(double depth, boolean overlaps) {
        List<Finding> found = found(
                block("a", "10, 3, 3", "-5, 0, 0"),
                block("b", "10, 3, 3", new java.math.BigDecimal(5 - depth).toPlainString() + ", 0, 0"));
        assertThat(!found.isEmpty()).isEqualTo(overlaps);
    }

    @Test
    void aTurnedBlockThatPiercesAFaceWithOneCornerIsNamed() {
        assertOverlap(
                "a and b",
                block("a", "20, 20, 2", "0, 0, 0"),
                "b: {kind: block, width: 2, depth: 2, height: 2, at: [3, 4, 2.8], turn: [{about: [1, 0, 0], by: 45}, {about: [0, 1, 0], by: 35.26}]}");
    }

    @Test
    void aSheetThatRunsIntoASolidIsNamedAndSoAreTwoSheetsThatPierceEachOther() {
        assertOverlap(
                "a and b",
                block("a", "10, 10, 10", "0, 0, 0"),
                "b: {kind: rectangle, width: 40, depth: 4, at: [0, 0, 5]}");
        assertOverlap("a and b", block("a", "10, 10, 10", "0, 0, 0"), "b: {kind: disc, diameter: 4, at: [0, 0, 5]}");
        assertOverlap(
                "a and b",
                "a: {kind: rectangle, width: 40, depth: 4, at: [0, 0, 5]}",
                "b: {kind: rectangle, width: 10, depth: 30, at: [1.3, 0.4, 5], turn: [{about: [0, 1, 0], by: 70}]}");
    }

    @Test
    void copiesOfOnePartThatRunIntoOneAnotherAreNamed() {
        List<Finding> found =
                found("bar: {kind: block, width: 4, depth: 4, height: 4, repeat: {count: [3, 1], step: [3, 9]}}");
        assertThat(found).hasSize(1);
        assertThat(found.get(0).message())
                .startsWith("copies of part bar run into one another: bar[1,1] and bar[2,1] at ")
                .contains("(and one more such pair)");
    }

    @Test
    void partsThatOnlyTouchAreNotNamed() {
        assertThat(
                        found(
                                block("floor", "60, 60, 2", "0, 0, -2"),
                                block("on-it", "4, 4, 4", "0, 0, 0"),
                                block("beside", "4, 4, 4", "4, 0, 0"),
                                block("at-its-edge", "4, 4, 4", "8, 4, 0"),
                                block("at-its-corner", "4, 4, 4", "12, 8, 4"),
                                "ring: {kind: tube, inner_diameter: 20, outer_diameter: 24, height: 5, at: [-18, -18, 0]}",
                                "plug: {kind: block, width: 5, depth: 5, height: 5, at: [-18, -18, 0]}",
                                "lid: {kind: plate, size: [30, 30], height: 5, thickness: 1, at: [-15, -15, 0]}",
                                "vane: {kind: rectangle, width: 5, depth: 3, at: [0, 20, 1.5], turn: [{about: [1, 0, 0], by: 90}]}"))
                .isEmpty();
    }

    /** Turned by one angle, parts touch up to rounding only. */
    @ParameterizedTest
    @ValueSource(doubles = {0, 1, 17.3, 45, 89.9})
    void partsThatTouchAfterATurnAreNotNamed(double angle) {
        String turn = ", turn: [{about: [0.3, 0.5, 1], by: " + angle + "}]}";
        assertThat(found(
                        "a: {kind: block, width: 10, depth: 10, height: 10, at: [0, 0, 0]" + turn,
                        "b: {kind: tube, inner_diameter: 20, outer_diameter: 24, height: 10" + turn,
                        "c: {kind: tube, inner_diameter: 24.0, outer_diameter: 30, height: 10" + turn))
                .isEmpty();
    }

    @Test
    void noShippedLayoutHasAnOverlapOrASheetInContact() throws Exception {
        List<Path> all = ShippedLayouts.files();
        assertThat(all).hasSizeGreaterThan(8);
        for (Path file : all) {
            assertThat(found(LayoutReader.read(file).layout().orElseThrow()))
                    .as(file.toString())
                    .isEmpty();
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"0", "5e-7", "-5e-7"})
    void aDiscOnABlockIsRefusedWithTheHeightToLiftItTo(String height) {
        List<Finding> found = found(
                block("base", "10, 10, 2", "0, 0, -2"),
                "mask: {kind: disc, diameter: 4, at: [1, 0.3, " + new java.math.BigDecimal(height).toPlainString()
                        + "]}");
        assertThat(found).hasSize(1);
        assertThat(found.get(0).severity()).isEqualTo(Finding.Severity.ERROR);
        assertThat(found.get(0).toString())
                .contains("the sheet mask lies on base/+z at ")
                .contains("expected it at least 0.000002 mm away, or a thin block in its place [sheet-in-contact]");
    }

    @ParameterizedTest
    @ValueSource(strings = {"320", "1000 m", "150 m"})
    void aDiscLiftedByTheHeightThatTheMessageNamesIsAccepted(String distance) {
        String base = block("base", "10, 10, 2", "0, 0, -2");
        String message = found(layout(distance, base, "mask: {kind: disc, diameter: 4}"))
                .get(0)
                .message();
        String lift = message.replaceFirst(".*at least (\\S+) mm away.*", "$1");
        assertThat(found(layout(distance, base, "mask: {kind: disc, diameter: 4, at: [0, 0, " + lift + "]}")))
                .isEmpty();
        assertThat(found(layout(distance, base, "mask: {kind: disc, diameter: 4, at: [0, 0, -" + lift + "]}")))
                .noneMatch(finding -> finding.code().equals("sheet-in-contact"));
    }

    @Test
    void twoSheetsThatOverlapInOnePlaneAreRefusedAndSideBySideTheyAreNot() {
        String first = "one: {kind: rectangle, width: 10, depth: 10}";
        assertThat(found(first, "two: {kind: rectangle, width: 10, depth: 10, at: [9.9, 9.9, 0]}"))
                .extracting(Finding::code)
                .containsExactly("sheet-in-contact");
        assertThat(found(first, "two: {kind: rectangle, width: 10, depth: 10, at: [10, 3, 0]}"))
                .isEmpty();
        assertThat(found(first, "two: {kind: rectangle, width: 10, depth: 10, at: [10, 10, 0]}"))
                .isEmpty();
    }

    @Test
    void aSheetBesideAFaceInItsPlaneOrStandingOnItIsAccepted() {
        assertThat(
                        found(
                                block("base", "10, 10, 2", "0, 0, -2"),
                                "beside: {kind: rectangle, width: 4, depth: 10, at: [7, 0, 0]}",
                                "standing: {kind: rectangle, width: 4, depth: 4, at: [0, 0, 2], turn: [{about: [1, 0, 0], by: 90}]}",
                                "leaning: {kind: rectangle, width: 4, depth: 4, at: [0, 3, 0.1], turn: [{about: [1, 0, 0], by: 1}]}"))
                .isEmpty();
    }

    @Test
    void aSearchThatIsStoppedEndsWithoutFindings() {
        Layout layout = layout("320", block("a", "20, 2, 3", "0, 0, 0"), block("b", "2, 20, 1", "0, 0, 1"));
        Findings findings = new Findings();
        Assembly assembly = Assembly.of(layout, findings);
        Scene scene = SceneFactory.of(layout, assembly);
        FacetTree tree = FacetTree.build(scene.copyCorners(), scene.copyPlanes(), scene.bound());
        PartContacts.check(assembly, scene, tree, findings, StoppingWatch.after(0));
        assertThat(findings.sorted()).isEmpty();
    }
}
