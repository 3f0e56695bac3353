package darkrim.present;

import static org.assertj.core.api.Assertions.assertThat;

import darkrim.diagnostic.Findings;
import darkrim.layout.LayoutReader;
import darkrim.study.Effort;
import darkrim.study.PlacedScene;
import darkrim.study.star.StarCell;
import darkrim.study.star.StarRegion;
import darkrim.study.star.StarScan;
import darkrim.study.star.StarScanResult;
import darkrim.study.star.StarScanSettings;
import darkrim.verdict.StoppingWatch;
import darkrim.verdict.Watch;
import java.nio.charset.StandardCharsets;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

/** What the report of a star scan says of itself. */
class StarScanReportTest {
    private static final String EVERY_PIECE = "Every piece of every surface";

    private static final String RIDGE = """
            title: Ridge
            finishes:
              white: {diffuse: 0.5, source: "invented"}
            beam:
              pupil: {shape: disc, diameter: 45, distance: 320}
            parts:
              pixels: {kind: rectangle, width: 6, depth: 6}
              ridge: {kind: block, width: 0.1, depth: 5, height: 0.15, at: [3.3, 0, 0], finish: white}
            requirements:
              dark: {surfaces: "pixels/front", direct: none}
            """;

    private static StarScanResult scan(Optional<StarRegion> within, double level, int across, int most, Watch watch)
            throws Exception {
        var reading = LayoutReader.read("ridge.yaml", RIDGE.getBytes(StandardCharsets.UTF_8));
        PlacedScene placed = PlacedScene.of(reading.layout().orElseThrow(), new Findings(), Watch.NONE);
        return StarScan.of(
                placed,
                new StarScanSettings("pixels/front", 0, within, 0.4, level, across, most),
                new Effort(1, Optional.empty(), Optional.empty()),
                new Findings(),
                watch);
    }

    private static String report(StarScanResult result) {
        return new StarScanReport("1").of(result).replaceAll("\\s+", " ");
    }

    @Test
    void aimsAreSaidOfAScanThatHadThemAllOnly() throws Exception {
        assertThat(report(scan(Optional.empty(), 1e-3, 8, 4_000, Watch.NONE))).contains(EVERY_PIECE);
        assertThat(report(scan(Optional.empty(), 1e-3, 8, 4_000, StoppingWatch.after(0))))
                .doesNotContain(EVERY_PIECE)
                .contains("proved");
        assertThat(report(scan(Optional.empty(), 1e-3, 8, 10, Watch.NONE)))
                .doesNotContain(EVERY_PIECE)
                .contains("CAUTION: the map was not made as fine");
    }

    /** Where all is proved no samples are wanting, however low the level. */
    @Test
    void samplesAreAskedForWhereTheyAreWantingOnly() throws Exception {
        StarScanResult proved = scan(Optional.of(new StarRegion(-2, -2, 2, 2)), 1e-6, 8, 4_000, Watch.NONE);
        assertThat(proved.cells()).allMatch(StarCell::proved);
        assertThat(report(proved)).contains("No star in the region").doesNotContain("CAUTION");
        Optional<StarRegion> over = Optional.of(new StarRegion(3, -1, 4, 1));
        String text = report(scan(over, 5e-4, 8, 4_000, Watch.NONE));
        Matcher advice = Pattern.compile("--samples ([0-9]+) would do").matcher(text);
        assertThat(advice.find()).as(text).isTrue();
        // A command takes the square root to the nearest whole number.
        int across = (int) Math.round(Math.sqrt(Integer.parseInt(advice.group(1))));
        assertThat(report(scan(over, 5e-4, across, 4_000, Watch.NONE))).doesNotContain("--samples");
        assertThat(report(scan(over, 5e-4, across - 1, 4_000, Watch.NONE))).contains("--samples");
    }
}
