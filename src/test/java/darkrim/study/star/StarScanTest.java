package darkrim.study.star;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import darkrim.diagnostic.Finding;
import darkrim.diagnostic.Findings;
import darkrim.layout.LayoutReader;
import darkrim.light.Estimate;
import darkrim.light.StarLight;
import darkrim.study.CoarseHood;
import darkrim.study.Effort;
import darkrim.study.PlacedScene;
import darkrim.study.UnusableStudy;
import darkrim.verdict.StoppingWatch;
import darkrim.verdict.Watch;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class StarScanTest {
    private static final double LEVEL = 1e-3;

    /**
     * A ridge of 0.1 mm width and 0.15 mm height stands on a floor beside pixels. The cone of an f/7 beam is 0.021 mm wide at its top: a star is thrown
     * onto the pixels from a band of about that width at one of its sides only.
     */
    private static final String RIDGE = """
            title: Ridge
            finishes:
              white: {diffuse: 0.5, source: "invented"}
            beam:
              pupil: {shape: disc, diameter: 45, distance: 320}
            parts:
              pixels: {kind: rectangle, width: 6, depth: 6}
              ridge: {kind: block, width: 0.1, depth: 5, height: 0.15, at: [3.3, 0, 0], finish: white}
            sources:
              guide: {kind: star, at: [3.256, 0.2], flux: 1e-9}
            requirements:
              dark: {surfaces: "pixels/front", direct: none}
            """;

    private static PlacedScene placed(String text) throws Exception {
        var reading = LayoutReader.read("ridge.yaml", text.getBytes(StandardCharsets.UTF_8));
        assertThat(reading.hasErrors()).isFalse();
        return PlacedScene.of(reading.layout().orElseThrow(), new Findings(), Watch.NONE);
    }

    private static StarScanSettings settings(Optional<StarRegion> within, double finest) {
        return new StarScanSettings("pixels/front", 0, within, finest, LEVEL, 32, 40_000);
    }

    private static StarScanResult scan(PlacedScene placed, StarScanSettings settings, int threads, Watch watch)
            throws Exception {
        return StarScan.of(
                placed, settings, new Effort(threads, Optional.empty(), Optional.empty()), new Findings(), watch);
    }

    /** What is proved of facets is not proved of the curved surfaces for which they stand. */
    @Test
    void behindFacetsThatStandForCurvedSurfacesNothingIsProved() throws Exception {
        StarRegion far = new StarRegion(60, -2, 64, 2);
        for (String mesh : new String[] {"crease: 20", "chord: 0.01"}) {
            var reading = LayoutReader.read(
                    CoarseHood.NAME,
                    CoarseHood.text(mesh, "shelf/outside", "none").getBytes(StandardCharsets.UTF_8));
            PlacedScene placed = PlacedScene.of(reading.layout().orElseThrow(), new Findings(), Watch.NONE);
            StarScanResult result = scan(
                    placed,
                    new StarScanSettings("shelf/base", 0, Optional.of(far), 2, LEVEL, 32, 4_000),
                    2,
                    Watch.NONE);
            boolean doubted = mesh.startsWith("chord");
            assertThat(result.cells()).isNotEmpty().allMatch(cell -> cell.proved() != doubted);
            // No sample meets any light, and that alone says little: of 8 x 1,024 all miss ln(4 / 0.01) / 8,192 =
            // 7.3e-4 of the pupil, of which black paint sends on 4 %.
            assertThat(result.brightest().map(StarPosition::share).orElse(0.0)).isZero();
            assertThat(result.zone().areas()).isEmpty();
            StarScanSettings lower = new StarScanSettings("shelf/base", 0, Optional.of(far), 2, 2.9e-5, 32, 4_000);
            assertThat(scan(placed, lower, 2, Watch.NONE).zone().area()).isEqualTo(doubted ? 16 : 0);
            StarScanResult wide = scan(
                    placed,
                    new StarScanSettings("shelf/base", 0, Optional.empty(), 20, LEVEL, 32, 4_000),
                    2,
                    StoppingWatch.after(1));
            assertThat(wide.beyond()).isEqualTo(doubted);
            assertThat(result.warnings())
                    .extracting(Finding::code)
                    .containsExactlyElementsOf(doubted ? List.of("mesh-tolerance") : List.of());
        }
    }

    /** 26 mm of region in cells of 0.8 mm at first: 20 of 1000 columns of positions would show the band. */
    @Test
    void aBandOfFiftyMicrometresIsFoundAndLiesInTheZone() throws Exception {
        PlacedScene placed = placed(RIDGE);
        StarScanResult result = scan(placed, settings(Optional.empty(), 0.05), 2, Watch.NONE);
        assertThat(result.refined()).isTrue();
        StarPosition brightest = result.brightest().orElseThrow();
        assertThat(brightest.share()).isGreaterThan(5 * LEVEL);
        assertThat(brightest.x()).isBetween(3.2, 3.3);

        // A dense line across the ridge, looked at on its own.
        StarLight light = new StarLight(placed.scene(), placed.tree(), result.receivers(), 99);
        int bright = 0;
        for (double y : new double[] {-1.3, 0.1, 2.2}) {
            for (double x = 3.1; x < 3.5; x += 0.004) {
                Estimate share = light.batch(Vector3D.of(x, y, 0), 0, 30).total();
                if (share.mean() - 4 * share.standardError() > LEVEL) {
                    bright++;
                    assertThat(result.zone().contains(x, y))
                            .as("x %s, y %s: %s", x, y, share)
                            .isTrue();
                }
            }
        }
        // 50 um at the very most, and there is a band at all.
        assertThat(bright).isBetween(6, 3 * 13);
        assertThat(result.zone().contains(2, 0)).isFalse();
        assertThat(result.zone().area()).isBetween(0.02 * 5, 0.4 * 6);
    }

    @Test
    void whereNoStarReachesWhatCouldThrowLightItIsProvedSo() throws Exception {
        PlacedScene placed = placed(RIDGE);
        StarScanResult result = scan(placed, settings(Optional.empty(), 0.4), 1, Watch.NONE);
        assertThat(result.cells())
                .filteredOn(StarCell::proved)
                .hasSizeGreaterThan(result.cells().size() / 2);
        StarLight light = new StarLight(placed.scene(), placed.tree(), result.receivers(), 5);
        for (StarCell cell : result.cells()) {
            if (cell.proved()) {
                for (double side : new double[] {-0.499, 0.499}) {
                    Vector3D at = Vector3D.of(cell.x() + side * cell.width(), cell.y() - side * cell.width(), 0);
                    assertThat(light.batch(at, 0, 8).total().mean()).isZero();
                }
            }
        }
        StarScanResult black =
                scan(placed(RIDGE.replace("diffuse: 0.5", "diffuse: 0")), settings(Optional.empty(), 1), 1, Watch.NONE);
        assertThat(black.cells()).isNotEmpty().allMatch(StarCell::proved);
        assertThat(black.zone().areas()).isEmpty();
    }

    /** A ridge 26.5 mm from the middle of the pixels is struck by stars over it only; of itself a scan ends 13 mm from the middle. */
    @Test
    void starsBeyondTheRegionThatMightSendLightAreSaid() throws Exception {
        String far = RIDGE.replace("at: [3.3, 0, 0]", "at: [26.5, 0, 0]");
        StarScanResult unlimited = scan(placed(far), settings(Optional.empty(), 1), 1, Watch.NONE);
        assertThat(unlimited.region()).isEqualTo(new StarRegion(-13, -13, 13, 13));
        assertThat(unlimited.beyond()).isTrue();
        assertThat(scan(placed(RIDGE), settings(Optional.empty(), 1), 1, Watch.NONE)
                        .beyond())
                .isFalse();
        String field = "distance: 320}\n  field: {shape: rectangle, width: 40, height: 40}";
        String limited = far.replace("distance: 320}", field);
        assertThat(scan(placed(limited), settings(Optional.empty(), 1), 1, Watch.NONE)
                        .beyond())
                .isFalse();
    }

    @Test
    void aFieldFarFromTheReceiversIsRefused() throws Exception {
        String aside = RIDGE.replace(
                "distance: 320}", "distance: 320}\n  field: {shape: rectangle, width: 4, height: 4, shift: [40, 0]}");
        assertThatThrownBy(() -> scan(placed(aside), settings(Optional.empty(), 1), 1, Watch.NONE))
                .isInstanceOf(UnusableStudy.class)
                .hasMessageContaining("the field ends");
    }

    @Test
    void theNumberOfThreadsChangesNothing() throws Exception {
        PlacedScene placed = placed(RIDGE);
        StarScanSettings small = settings(Optional.of(new StarRegion(2.5, -2.6, 4, 0)), 0.05);
        StarScanResult one = scan(placed, small, 1, Watch.NONE);
        StarScanResult four = scan(placed, small, 4, Watch.NONE);
        assertThat(four.cells()).isEqualTo(one.cells());
        assertThat(four.zone()).isEqualTo(one.zone());
        assertThat(four.named()).isEqualTo(one.named());
        assertThat(one.named()).hasSize(1);
        assertThat(one.named().get(0).tally().total().mean()).isGreaterThan(LEVEL);
    }

    @Test
    void whatWasNotLookedAtWhenStoppedCountsAsTooMuch() throws Exception {
        StarScanResult atOnce = scan(placed(RIDGE), settings(Optional.empty(), 0.05), 1, StoppingWatch.after(0));
        assertThat(atOnce.stopped()).isTrue();
        assertThat(atOnce.positions()).isZero();
        assertThat(atOnce.cells())
                .filteredOn(cell -> !cell.proved())
                .isNotEmpty()
                .allMatch(cell -> atOnce.zone().contains(cell.x(), cell.y()));
        assertThat(atOnce.zone().contains(0, 0)).isFalse();
        StarScanResult soon = scan(placed(RIDGE), settings(Optional.empty(), 0.05), 1, StoppingWatch.after(1));
        assertThat(soon.stopped()).isTrue();
        assertThat(soon.positions()).isPositive();
    }

    @Test
    void aBoundOnPositionsIsKeptAndSaid() throws Exception {
        StarScanSettings few = new StarScanSettings("pixels/front", 0, Optional.empty(), 0.01, LEVEL, 20, 200);
        StarScanResult result = scan(placed(RIDGE), few, 1, Watch.NONE);
        assertThat(result.refined()).isFalse();
        assertThat(result.positions()).isLessThanOrEqualTo(200);
        StarScanSettings many = new StarScanSettings("pixels/front", 0, Optional.empty(), 0.01, LEVEL, 20, 1_000);
        assertThat(2 * result.positions())
                .isLessThan(scan(placed(RIDGE), many, 1, Watch.NONE).positions());
    }

    @Test
    void whatMakesNoSenseIsRefused() throws Exception {
        PlacedScene placed = placed(RIDGE);
        assertThatThrownBy(() -> scan(
                        placed,
                        new StarScanSettings("nothing/**", 0, Optional.empty(), 1, LEVEL, 4, 10),
                        1,
                        Watch.NONE))
                .isInstanceOf(UnusableStudy.class)
                .hasMessageContaining("selects no surface");
        assertThatThrownBy(() -> scan(
                        placed,
                        new StarScanSettings("pixels/front", 330, Optional.empty(), 1, LEVEL, 4, 10),
                        1,
                        Watch.NONE))
                .isInstanceOf(UnusableStudy.class)
                .hasMessageContaining("below the pupil");
        // A pupil tilted by 30 degrees reaches down to 308.75 mm, and its plane to the foci 554 mm beside it.
        PlacedScene tilted = placed(RIDGE.replace("distance: 320", "distance: 320, tilt: [0, 30]"));
        assertThatThrownBy(() -> scan(
                        tilted,
                        new StarScanSettings("pixels/front", 316, Optional.empty(), 1, LEVEL, 4, 10),
                        1,
                        Watch.NONE))
                .isInstanceOf(UnusableStudy.class)
                .hasMessageContaining("reaches down to 308.75 mm");
        for (double side : new double[] {-1, 1}) {
            StarRegion far = new StarRegion(Math.min(560 * side, 570 * side), -1, Math.max(560 * side, 570 * side), 1);
            StarScanSettings beside = new StarScanSettings("pixels/front", 0, Optional.of(far), 5, LEVEL, 4, 10);
            if (side > 0) {
                assertThatThrownBy(() -> scan(tilted, beside, 1, Watch.NONE))
                        .isInstanceOf(UnusableStudy.class)
                        .hasMessageContaining("behind the plane of the tilted pupil");
            } else {
                assertThat(scan(tilted, beside, 1, Watch.NONE).stopped()).isFalse();
            }
        }
    }

    /** How many of many stars along a line in y that are surely above the level there are, and how many lie outside the zone. */
    private static int[] along(
            PlacedScene placed, StarScanResult result, double x, double from, double to, double step, int across) {
        StarLight light = new StarLight(placed.scene(), placed.tree(), result.receivers(), 99);
        int above = 0;
        int outside = 0;
        for (double y = from; y < to; y += step) {
            Estimate share = light.batch(Vector3D.of(x, y, 0), 0, across).total();
            if (share.mean() - 4 * share.standardError() > result.settings().level()) {
                above++;
                outside += result.zone().contains(x, y) ? 0 : 1;
            }
        }
        return new int[] {above, outside};
    }

    /** 370 stars along a band of 10 to 35 um, however the finest cells lie. */
    @ParameterizedTest
    @CsvSource({"0.15, 0.2", "0.5, 0.2"})
    void aNarrowBandLiesInTheZoneAllAlong(String height, double finest) throws Exception {
        PlacedScene placed = placed(RIDGE.replace("height: 0.15", "height: " + height));
        StarScanResult result = scan(placed, settings(Optional.empty(), finest), 2, Watch.NONE);
        assertThat(result.refined()).isTrue();
        int[] found = along(placed, result, 3.254, -2.4, 2.4, 0.013, 20);
        assertThat(found[0]).isGreaterThan(300);
        assertThat(found[1]).isZero();
    }

    /** A ridge of black paint 0.04 mm before the white one: what it throws says nothing of the other, in whatever order they stand in the layout. */
    @ParameterizedTest
    @ValueSource(booleans = {true, false})
    void aBlackRidgeTakesNoStarFromAWhiteOne(boolean blackFirst) throws Exception {
        String white = RIDGE.lines()
                .filter(line -> line.contains("ridge:"))
                .findFirst()
                .orElseThrow();
        String black = white.replace("ridge:", "black:")
                .replace("width: 0.1", "width: 0.02")
                .replace("at: [3.3,", "at: [3.2,")
                .replace("finish: white", "finish: paint");
        String both = blackFirst ? black + "\n" + white : white + "\n" + black;
        PlacedScene placed = placed(RIDGE.replace(white, both)
                .replace("finishes:", "finishes:\n  paint: {diffuse: 0.001, source: \"invented\"}")
                .replace(
                        "  ridge: {kind: block, width: 0.1, depth: 5, height: 0.15",
                        "  ridge: {kind: block, width: 0.1, depth: 5, height: 0.3"));
        StarScanResult result = scan(placed, settings(Optional.empty(), 0.2), 2, Watch.NONE);
        int[] found = along(placed, result, 3.256, -2.4, 2.4, 0.013, 24);
        assertThat(found[0]).isGreaterThan(300);
        assertThat(found[1]).isZero();
    }

    /** A slat hides all of the pupil but a strip of 15 % from the face of a post: a band of 40 mm all the same. */
    @Test
    void aBandOfAPostThatSeesAStripOfThePupilIsFound() throws Exception {
        PlacedScene placed = placed(RIDGE.replace("diffuse: 0.5", "diffuse: 0.97")
                .replace(
                        "ridge: {kind: block, width: 0.1, depth: 5, height: 0.15, at: [3.3, 0, 0], finish: white}",
                        "post: {kind: block, width: 2, depth: 40, height: 10, at: [5.5, 0, 10], finish: white}\n"
                                + "  slat: {kind: block, width: 22, depth: 120, height: 1, at: [-8, 0, 100], finish: none}")
                .replace("finishes:", "finishes:\n  none: {diffuse: 0, source: \"invented\"}"));
        // With so few samples the zone takes in all that white paint might throw, found or not: look at what was found.
        StarScanSettings coarse = new StarScanSettings("pixels/front", 0, Optional.empty(), 0.8, LEVEL, 16, 40_000);
        StarPosition brightest = scan(placed, coarse, 2, Watch.NONE).brightest().orElseThrow();
        assertThat(brightest.share() - 3 * brightest.error()).isGreaterThan(3e-4);
        assertThat(brightest.x()).isBetween(4.5, 5.0);
    }

    @Test
    void whatIsProvedHasNoPositions() throws Exception {
        StarScanResult result = scan(placed(RIDGE), settings(Optional.empty(), 0.05), 2, Watch.NONE);
        assertThat(result.cells())
                .filteredOn(StarCell::proved)
                .isNotEmpty()
                .allMatch(cell -> cell.positions().isEmpty());
    }

    /** The bound of a star where light was found nowhere near does not hang on what was found elsewhere. */
    @Test
    void whatNoSampleMetIsBoundedByWhatTheSurfacesThereReflect() throws Exception {
        String guides = RIDGE.replace(
                "sources:",
                "sources:\n  apart: {kind: star, at: [-11, 4]}\n  deep: {kind: star, at: [3.254, 0], defocus: -0.1}");
        StarScanResult result = scan(placed(guides), settings(Optional.empty(), 1), 1, Watch.NONE);
        assertThat(result.named()).extracting(each -> each.star().name()).containsExactly("apart", "deep", "guide");
        assertThat(result.named()).extracting(NamedStar::reflected).containsExactly(0.0, 0.5, 0.5);
        assertThat(result.cells())
                .flatExtracting(StarCell::positions)
                .isNotEmpty()
                .allMatch(each -> each.reflected() == 0.5 || each.share() == 0);
    }

    /** The walls of the first drawing of the shipped camera throw about 0.6 % of a star just outside an opening onto its pixels. */
    @Test
    void theBandOutsideTheOpeningsOfTheShippedCameraIsFound() throws Exception {
        Path file = Path.of("geometries/nightglow-a.yaml");
        var layout = LayoutReader.read(file.toString(), Files.readAllBytes(file))
                .layout()
                .orElseThrow();
        PlacedScene placed = PlacedScene.of(layout, new Findings(), Watch.NONE);
        StarRegion outside = new StarRegion(37, 15, 42, 17);
        StarScanResult result = scan(
                placed,
                new StarScanSettings("**/active", 0, Optional.of(outside), 0.2, LEVEL, 32, 10_000),
                2,
                Watch.NONE);
        StarPosition brightest = result.brightest().orElseThrow();
        assertThat(brightest.x()).isBetween(39.4, 40.5);
        assertThat(brightest.share()).isBetween(4e-3, 8e-3);
        assertThat(result.zone().contains(40, 16)).isTrue();
        assertThat(result.zone().contains(38, 16)).isFalse();
    }
}
