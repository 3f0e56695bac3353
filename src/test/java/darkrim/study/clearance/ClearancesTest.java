package darkrim.study.clearance;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import darkrim.diagnostic.Findings;
import darkrim.diagnostic.UnusableInput;
import darkrim.layout.Layout;
import darkrim.layout.LayoutReader;
import darkrim.layout.LayoutReading;
import darkrim.layout.ThermalShape;
import darkrim.material.MaterialLibrary;
import darkrim.study.LayoutFamily;
import darkrim.study.PlacedScene;
import darkrim.study.PointCheck;
import darkrim.study.RequirementMargin;
import darkrim.verdict.Evidence;
import darkrim.verdict.Outcome;
import darkrim.verdict.RequirementResult;
import darkrim.verdict.Verdict;
import darkrim.verdict.Watch;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Test;

class ClearancesTest {
    private static final double ALUMINIUM =
            MaterialLibrary.of("aluminium-6061").orElseThrow().contraction().between(293, 80);

    private static String text(String head, String parts, String requirement) {
        return "title: t\n" + head + "beam: {pupil: {shape: disc, diameter: 10, distance: 200}}\nparts:\n" + parts
                + "requirements:\n  gap: {" + requirement + "}\n";
    }

    private static RequirementResult result(String head, String parts, String requirement) {
        return result(layout(text(head, parts, requirement)));
    }

    private static Layout layout(String text) {
        LayoutReading reading = LayoutReader.read("t", text.getBytes(StandardCharsets.UTF_8));
        assertThat(reading.findings()).isEmpty();
        return reading.layout().orElseThrow();
    }

    private static RequirementResult result(Layout layout) {
        try {
            return PlacedScene.of(layout, new Findings(), Watch.NONE)
                    .demands()
                    .get(0)
                    .decided()
                    .orElseThrow();
        } catch (UnusableInput unusable) {
            throw new AssertionError(unusable.getMessage(), unusable);
        }
    }

    private static Evidence.Distance only(RequirementResult result) {
        assertThat(result.outcomes()).hasSize(1);
        return (Evidence.Distance) result.outcomes().get(0).evidence();
    }

    private static final String PLATE_OVER_POST = """
              lid:  {kind: plate, size: [40, 40], height: 5, thickness: 1}
              post: {kind: block, width: 2, depth: 2, height: 3, at: [6, 0, 0]}
            """;

    @Test
    void aLidIsAsFarFromAPostAsTheirHeightsDiffer() {
        Evidence.Distance found = only(result("", PLATE_OVER_POST, "between: [lid, post], clearance: {at_least: 1.5}"));
        assertThat(found.millimetres()).isEqualTo(2);
        assertThat(found.first()).isEqualTo("lid/underside");
        assertThat(found.onFirst().getZ()).isEqualTo(5);
        assertThat(found.onSecond().getZ()).isEqualTo(3);
        assertThat(found.onFirst().getX()).isBetween(5.0, 7.0);
    }

    @Test
    void whatIsAskedToTheLastDigitHoldsAndMoreDoesNot() {
        assertThat(result("", PLATE_OVER_POST, "between: [lid, post], clearance: {at_least: 2}")
                        .verdict())
                .isEqualTo(Verdict.PASS);
        assertThat(result("", PLATE_OVER_POST, "between: [lid, post], clearance: {at_least: 2.000001}")
                        .verdict())
                .isEqualTo(Verdict.FAIL);
    }

    @Test
    void theOrderOfTheSidesOnlyExchangesThePoints() {
        Evidence.Distance one = only(result("", PLATE_OVER_POST, "between: [lid, post/+z], clearance: {at_least: 1}"));
        Evidence.Distance two = only(result("", PLATE_OVER_POST, "between: [post/+z, lid], clearance: {at_least: 1}"));
        assertThat(two.millimetres()).isEqualTo(one.millimetres());
        assertThat(two.first()).isEqualTo(one.second());
    }

    @Test
    void partsThatTouchFailAnyClearance() {
        RequirementResult result = result("", """
                  foot: {kind: block, width: 9, depth: 9, height: 3}
                  post: {kind: block, width: 2, depth: 2, height: 3, at: [0, 0, 3]}
                """, "between: [foot, post], clearance: {at_least: 0.001}");
        assertThat(result.verdict()).isEqualTo(Verdict.FAIL);
        assertThat(only(result).millimetres()).isZero();
        assertThat(only(result).onFirst().getZ()).isEqualTo(3);
    }

    @Test
    void partsThatRunIntoOneAnotherAreZeroApartWithAPlaceInBoth() {
        Evidence.Distance found = only(result("", """
                  shelf: {kind: plate, size: [20, 20], height: 1, thickness: 1}
                  post:  {kind: block, width: 2, depth: 2, height: 5}
                """, "between: [shelf, post], clearance: {at_least: 0.5}"));
        assertThat(found.millimetres()).isZero();
        assertThat(Math.abs(found.onFirst().getX())).isLessThanOrEqualTo(1);
        assertThat(found.onFirst().getZ()).isBetween(1.0, 2.0);
    }

    @Test
    void aPartInsideAnotherIsZeroApartThoughNoFacetsMeet() {
        for (String sides : List.of("[case, core]", "[core, case]")) {
            RequirementResult result = result("", """
                      case: {kind: block, width: 10, depth: 10, height: 10}
                      core: {kind: block, width: 2, depth: 2, height: 2, at: [1, 1, 4]}
                    """, "between: " + sides + ", clearance: {at_least: 0.5}");
            assertThat(result.verdict()).isEqualTo(Verdict.FAIL);
            assertThat(only(result).overlap()).isTrue();
            assertThat(only(result).millimetres()).isZero();
        }
    }

    @Test
    void whatStandsInAHoleIsNotInsideThePart() {
        Evidence.Distance found = only(result("", """
                  frame: {kind: box, width: 10, depth: 10, height: 6, thickness: 1}
                  core:  {kind: block, width: 2, depth: 2, height: 2, at: [1, 0, 2]}
                """, "between: [frame, core], clearance: {at_least: 0.5}"));
        assertThat(found.overlap()).isFalse();
        assertThat(found.millimetres()).isCloseTo(3, within(1e-14));
    }

    @Test
    void aCoatingOnEitherSideTakesItsThicknessOff() {
        String parts = PLATE_OVER_POST
                .replace("thickness: 1}", "thickness: 1, coating_thickness: 30 um}")
                .replace("height: 3,", "height: 3, coating_thickness: 0.05,");
        Evidence.Distance found = only(result("", parts, "between: [lid, post], clearance: {at_least: 1.5}"));
        assertThat(found.millimetres()).isCloseTo(2 - 0.03 - 0.05, within(1e-15));
        assertThat(found.takenOff()).isCloseTo(0.08, within(1e-17));
    }

    @Test
    void ofARoundPartTheDistanceIsNoLargerThanThatOfTheTrueOne() {
        // A pipe of outer radius 5 beside a block whose face is at x = 8.
        Evidence.Distance found = only(result("", """
                  pipe: {kind: tube, inner_diameter: 8, outer_diameter: 10, height: 4}
                  wall: {kind: block, width: 2, depth: 30, height: 4, at: [9, 0.37, 0]}
                """, "between: [pipe, wall], clearance: {at_least: 1}"));
        assertThat(found.millimetres()).isLessThanOrEqualTo(3).isGreaterThan(2.99);
        assertThat(found.takenOff()).isPositive();
    }

    @Test
    void aLayoutThatIsCooledIsLookedAtWarmAndCold() {
        // The lid is held at its top, 6 mm up; the post at its foot: 5 -> 6 - 1 (1 - c), 3 -> 3 (1 - c).
        String parts = PLATE_OVER_POST.replace("thickness: 1}", "thickness: 1, held_at: [0, 0, 6]}");
        String head = "cooldown: {works_at: 80, material: aluminium-6061}\n";
        RequirementResult both = result(head, parts, "between: [lid, post], clearance: {at_least: 1.5}");
        assertThat(both.outcomes()).hasSize(2);
        double cold = 2 + 4 * ALUMINIUM;
        assertThat(both.outcomes().get(0).value()).isEqualTo(2);
        assertThat(both.outcomes().get(1).value()).isCloseTo(cold, within(1e-14));
        RequirementResult only = result(head, parts, "between: [lid, post], clearance: {at_least: 2.001}, shape: cold");
        assertThat(only.verdict()).isEqualTo(Verdict.PASS);
        assertThat(only(only).shape()).isEqualTo(ThermalShape.COLD);
        Layout warm = layout(text(head, parts, "between: [lid, post], clearance: {at_least: 2.001}"))
                .warm();
        assertThat(result(warm).verdict()).isEqualTo(Verdict.FAIL);
        assertThat(only(result(warm)).shape()).isEqualTo(ThermalShape.WARM);
    }

    /** A frame whose hole is wider than the head of a post below it by a quarter of a millimetre each side; in place it hangs below the head. */
    private static final String HEAD = """
              frame: {kind: box, width: 10.5, depth: 10.5, height: 1, thickness: 2, at: [0, 0, 2]}
              neck:  {kind: block, width: 2, depth: 2, height: 8}
              head:  {kind: block, width: 10, depth: 10, height: 1, at: [0, 0, 8]}
            """;

    @Test
    void onTheWayInAFramePassesAHeadThatInPlaceIsFarAway() {
        RequirementResult result = result(
                "",
                HEAD,
                "between: [frame, \"{neck,head}\"], clearance: {at_least: 0.3}, while_lowered: {part: frame, from: 50}");
        assertThat(result.verdict()).isEqualTo(Verdict.FAIL);
        Outcome inPlace = result.outcomes().get(0);
        assertThat(inPlace.verdict()).isEqualTo(Verdict.PASS);
        assertThat(inPlace.value()).isCloseTo(4.25, within(1e-14));
        Evidence.Distance passing = (Evidence.Distance) result.outcomes().get(1).evidence();
        assertThat(passing.millimetres()).isCloseTo(0.25, within(1e-14));
        // The frame, from 2 to 3 mm up in its place, is beside the head, from 8 to 9, while it is 5 to 7 mm above its
        // place.
        assertThat(passing.raised().orElseThrow()).isBetween(5 - 1e-12, 7 + 1e-12);
        assertThat(passing.first()).startsWith("frame");
        assertThat(result.worst()).isEqualTo(result.outcomes().get(1));
    }

    @Test
    void theDistanceOnAWayIsTheLeastOfLayoutsDrawnAtEveryStop() {
        String parts = """
              frame: {kind: tube, inner_diameter: 11, outer_diameter: 14, height: 2, at: [0.2, -0.1, UP], turn: {about: [1, 2, 0], by: 9}}
              head:  {kind: block, width: 7, depth: 6, height: 1, at: [0, 0, 8], turn: {about: z, by: 20}}
            """;
        double least = Double.POSITIVE_INFINITY;
        for (int stop = 0; stop <= 40; stop++) {
            String at = String.valueOf(1 + stop * 0.5);
            RequirementResult there =
                    result("", parts.replace("UP", at), "between: [frame, head], clearance: {at_least: 0.01}");
            least = Math.min(least, there.outcomes().get(0).value());
        }
        RequirementResult way = result(
                "",
                parts.replace("UP", "1"),
                "between: [head, frame], clearance: {at_least: 0.01}, while_lowered: {part: frame, from: 20}");
        Evidence.Distance found = (Evidence.Distance) way.outcomes().get(1).evidence();
        assertThat(found.millimetres()).isLessThanOrEqualTo(least + 1e-12).isGreaterThan(least - 0.05);
        // Drawn where it is said to come nearest, it is as near.
        String there = String.valueOf(1 + found.raised().orElseThrow());
        RequirementResult drawn =
                result("", parts.replace("UP", there), "between: [head, frame], clearance: {at_least: 0.01}");
        assertThat(drawn.outcomes().get(0).value()).isCloseTo(found.millimetres(), within(1e-9));
        assertThat(found.second()).startsWith("frame");
    }

    @Test
    void itMakesNoDifferenceWhichOfTheTwoIsBroughtIn() {
        String frame = "between: [frame, head], clearance: {at_least: 0.1}, while_lowered: {part: frame, from: 30}";
        String head = "between: [frame, head], clearance: {at_least: 0.1},"
                + " while_lowered: {part: head, from: 30, direction: [0, 0, 2]}";
        double one = result("", HEAD, frame).outcomes().get(1).value();
        double two = result("", HEAD, head).outcomes().get(1).value();
        assertThat(two).isCloseTo(one, within(1e-14));
    }

    @Test
    void aMarginIsTheDistanceLessWhatIsAskedAndFollowsADimensionByItsSlope() throws UnusableInput {
        String parts = """
              lid:  {kind: plate, size: [40, 40], height: up, thickness: 1}
              post: {kind: block, width: 2, depth: 2, height: 3, at: [side, 0, 0]}
              rail: {kind: block, width: 2, depth: 30, height: 3, at: [0, 0, 0]}
            """;
        String head = "dimensions: {up: {value: 5 mm, tolerance: 0.1}, side: {value: 6 mm, tolerance: 0.1}}\n";
        for (String side : List.of("lid", "rail")) {
            byte[] content = text(head, parts, "between: [post, " + side + "], clearance: {at_least: 1.5}")
                    .getBytes(StandardCharsets.UTF_8);
            PointCheck check = new PointCheck(LayoutFamily.of("t", content), Optional.empty(), 1);
            RequirementMargin drawn = check.margin(Map.of(), Map.of(), "gap");
            RequirementMargin higher = check.margin(Map.of("up", 5.1), Map.of(), "gap");
            RequirementMargin farther = check.margin(Map.of("side", 6.1), Map.of(), "gap");
            // Post and lid: up - 3. Post and rail: side - 2.
            boolean lid = side.equals("lid");
            assertThat(drawn.margin()).isCloseTo(lid ? 0.5 : 2.5, within(1e-14));
            assertThat((higher.margin() - drawn.margin()) / 0.1).isCloseTo(lid ? 1 : 0, within(1e-12));
            assertThat((farther.margin() - drawn.margin()) / 0.1).isCloseTo(lid ? 0 : 1, within(1e-12));
            assertThat(drawn.unit().words()).isEqualTo("mm");
            assertThat(drawn.holds()).isTrue();
        }
    }

    @Test
    void thePointsLieWhereTheEvidenceSays() {
        Evidence.Distance found = only(result("", """
                  a: {kind: block, width: 2, depth: 2, height: 2}
                  b: {kind: block, width: 2, depth: 2, height: 2, at: [5, 4, 3]}
                """, "between: [a, b], clearance: {at_least: 1}"));
        assertThat(found.onFirst()).isEqualTo(Vector3D.of(1, 1, 2));
        assertThat(found.onSecond()).isEqualTo(Vector3D.of(4, 3, 3));
        assertThat(found.millimetres()).isCloseTo(Math.sqrt(14), within(1e-15));
    }

    /** A sheet of which only the back is asked about: on its way from above it meets the bar that in its place is above it. */
    @Test
    void aSheetIsBroughtInThoughOnlyItsBackIsAskedAbout() {
        String parts = """
              cover: {kind: rectangle, width: 10, depth: 10, at: [0, 0, 5]}
              bar:   {kind: block, width: 2, depth: 2, height: 1, at: [0, 0, 10]}
            """;
        for (String side : List.of("cover/front", "cover/back", "cover")) {
            for (String sides : List.of(side + ", bar", "bar, " + side)) {
                RequirementResult result = result(
                        "",
                        parts,
                        "between: [" + sides + "], clearance: {at_least: 0.5}, while_lowered: {part: cover, from: 20}");
                assertThat(result.outcomes().get(0).value()).as(sides).isEqualTo(5);
                assertThat(result.outcomes().get(1).value()).as(sides).isZero();
                assertThat(result.verdict()).as(sides).isEqualTo(Verdict.FAIL);
            }
        }
    }
}
