package darkrim.study.pixel;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.assertj.core.api.Assertions.within;

import darkrim.diagnostic.Findings;
import darkrim.emission.Planck;
import darkrim.layout.LayoutReader;
import darkrim.layout.LayoutReading;
import darkrim.study.Effort;
import darkrim.study.NoSuchPoint;
import darkrim.study.PointName;
import darkrim.verdict.Watch;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class PixelViewTest {
    private static final Path NIGHTGLOW = Path.of("geometries/nightglow-b.yaml");
    private static final List<PointName> POINT = List.of(new PointName("mosaic/die[1,2]/active", 0.98, 0.5));

    /** One detector of 100 x 100 pixels of 20 um, and what is added. */
    private static String layout(String parts, String warmth) {
        return """
                title: One detector
                finishes:
                  grey: {diffuse: 0.3, mirror: 0.2}
                beam:
                  pupil: {shape: disc, diameter: 10, distance: 200}
                parts:
                  sensor: {kind: detectors, pixels: 100, pixel_pitch: 20 um, die: {margin: 0.1, thickness: 0.2}, readout: {ledge: 0.1, thickness: 0.1}, carrier: {margin: 0.1, thickness: 1}, finish: grey}
                %s
                requirements:
                  clean: {surfaces: "sensor/**/active", once_reflected: {at_most: 1}}
                %s
                """.formatted(parts, warmth);
    }

    private static PixelView look(String yaml, List<PointName> points, int threads, long rays) throws Exception {
        LayoutReading reading = LayoutReader.read("f", yaml.getBytes(StandardCharsets.UTF_8));
        assertThat(reading.findings()).isEmpty();
        Effort effort = new Effort(threads, Optional.of(5L), Optional.of(rays));
        return PixelView.of(reading.layout().orElseThrow(), new Findings(), points, effort, Watch.NONE);
    }

    private static PixelView nightglow(int threads) throws Exception {
        return PixelView.of(NIGHTGLOW, POINT, new Effort(threads, Optional.of(5L), Optional.of(30_000L)), Watch.NONE);
    }

    /** A whole sky at one temperature: pi L A times the quantum efficiency, and pi L A in W, without any scatter. */
    @Test
    void aWholeHemisphereAtOneTemperatureGivesTheClosedForm() throws Exception {
        PixelView view = look(
                layout(
                        "",
                        "warmth: {temperature: 20, band: [0.1, 2.5], quantum_efficiency: 0.7, surroundings: 147,"
                                + " pupil: {temperature: 147, emissivity: 1}}"),
                List.of(PointName.middle("sensor/die/active")),
                1,
                2_000);
        PixelSight sight = view.sights().get(0);
        double area = 20e-6 * 20e-6;
        double photons = 0.7 * Math.PI * area * Planck.photonRadiance(147, 0.1, 2.5);
        assertThat(sight.warm().photons().mean()).isCloseTo(photons, within(1e-12 * photons));
        assertThat(sight.warm().photons().standardError()).isLessThan(1e-12 * photons);
        double watts = Math.PI * area * Planck.radiance(147, 0.1, 2.5);
        assertThat(sight.warm().watts().mean()).isCloseTo(watts, within(1e-12 * watts));
        assertThat(sight.mostPhotons()).isCloseTo(photons, within(1e-12 * photons));
        // 147 K for a pixel of 18 um gives 0.01 photon/s.
        assertThat(photons / 0.7 * (18.0 * 18 / (20 * 20))).isCloseTo(0.01, within(0.001));
    }

    @Test
    void whatAPointSeesAddsUpToPiAndEveryRayIsCountedOnce() throws Exception {
        PixelSight sight = nightglow(2).sights().get(0);
        assertThat(sight.things().stream().mapToLong(SeenThing::rays).sum()).isEqualTo(sight.rays());
        assertThat(sight.things().stream()
                        .mapToDouble(thing -> thing.seen().mean())
                        .sum())
                .isCloseTo(Math.PI, within(1e-12));
        assertThat(sight.things().stream().mapToDouble(SeenThing::photons).sum())
                .isCloseTo(
                        sight.warm().photons().mean(),
                        within(1e-12 * sight.warm().photons().mean()));
        assertThat(sight.warm().photons().mean()).isPositive().isLessThan(sight.mostPhotons());
    }

    /** By the contour integral of the visible pupil; 16 bundles, so 7 standard errors are exceeded in 4e-6 of all seeds. */
    @Test
    void thePupilIsSeenAsTheExactWaySays() throws Exception {
        PixelSight sight = nightglow(2).sights().get(0);
        SeenThing pupil = sight.things().stream()
                .filter(thing -> thing.kind() == SeenThing.Kind.PUPIL)
                .findFirst()
                .orElseThrow();
        assertThat(pupil.seen().mean())
                .isCloseTo(sight.exactPupil(), within(7 * pupil.seen().standardError()));
        assertThat(sight.exactPupil()).isBetween(0.012, 0.016);
    }

    @Test
    void theSameBitsForAnyNumberOfThreads() throws Exception {
        assertThat(nightglow(3).sights()).isEqualTo(nightglow(1).sights());
    }

    /** A warm wall beside the detector: the pixel in the middle of the nearest side sees the largest part of it. */
    @Test
    void theSearchFindsThePixelNearestToAWarmWall() throws Exception {
        PixelView view = look(
                layout(
                        "  wall: {kind: block, width: 1, depth: 3, height: 1, at: [2, 0, 0], temperature: 200}",
                        "warmth: {temperature: 20, band: [1, 5]}"),
                List.of(),
                2,
                2_000);
        assertThat(view.search()).isPresent();
        PixelSight worst = view.sights().get(view.sights().size() - 1);
        assertThat(worst.place().why()).isEqualTo(PixelPlace.Why.WORST);
        assertThat(worst.place().point().u()).isCloseTo(0.995, within(1e-9));
        assertThat(worst.place().point().v()).isCloseTo(0.5, within(0.2));
        assertThat(view.sights()).hasSize(6);
        for (PixelSight sight : view.sights()) {
            assertThat(sight.warm().photons().mean())
                    .isLessThan(worst.warm().photons().mean()
                            + 6 * worst.warm().photons().standardError());
        }
    }

    /** Without temperatures the worst pixel is the one that sees most of what the beam strikes: the one nearest to a lit shelf. */
    @Test
    void withoutTemperaturesTheSearchGoesByWhatTheBeamStrikes() throws Exception {
        PixelView view = look(
                layout(
                        "  wedge: {kind: block, width: 1, depth: 3, height: 1, at: [0, -2, 0], turn: {about: x, by: 20}}",
                        ""),
                List.of(),
                2,
                2_000);
        PixelSight worst = view.sights().get(view.sights().size() - 1);
        assertThat(view.search().orElseThrow().byWarmth()).isFalse();
        assertThat(worst.lit().mean()).isPositive();
        assertThat(worst.place().point().v()).isLessThan(0.2);
        assertThat(worst.warm().photons().mean()).isZero();
    }

    @Test
    void temperaturesComeFromTheLayoutThenThePartThenTheLastRule() throws Exception {
        String warmth = """
                warmth:
                  temperature: 60
                  band: [1, 5]
                  temperature_rules:
                    - {surfaces: "wall/+x", temperature: 80}
                    - {surfaces: "wall/-x", temperature: 90}
                    - {surfaces: "wall/-x", temperature: 95}
                """;
        PixelView view = look(layout("""
                          wall: {kind: block, width: 1, depth: 3, height: 1, at: [2, 0, 0], temperature: 70}
                          other: {kind: block, width: 1, depth: 3, height: 1, at: [-2, 0, 0]}
                        """, warmth), List.of(PointName.middle("sensor/die/active")), 1, 2_000);
        assertThat(kelvin(view, "wall/side/-x", "wall/-x")).isEqualTo(95);
        assertThat(kelvin(view, "other/side/+x", "other/+x")).isEqualTo(60);
    }

    private static double kelvin(PixelView view, String... names) {
        return view.sights().get(0).things().stream()
                .filter(thing -> List.of(names).contains(thing.name()))
                .findFirst()
                .orElseThrow(() -> new AssertionError(view.sights().get(0).things().stream()
                        .map(SeenThing::name)
                        .toList()
                        .toString()))
                .kelvin();
    }

    @Test
    void aLayoutWithoutDetectorsNeedsAPoint() {
        String yaml = layout("", "")
                .replaceAll("(?m)^  sensor:.*$", "  shelf: {kind: rectangle, width: 5, depth: 5, finish: grey}")
                .replace("sensor/**/active", "shelf/**");
        assertThatExceptionOfType(NoSuchPoint.class)
                .isThrownBy(() -> look(yaml, List.of(), 1, 2_000))
                .withMessageContaining("no detectors");
    }

    @Test
    void whereNoPixelPitchIsKnownASquareMillimetreIsTold() throws Exception {
        String shelf = layout(
                "  shelf: {kind: rectangle, width: 5, depth: 5, at: [20, 0, 0], finish: grey}",
                "warmth: {temperature: 60, band: [1, 5], surroundings: 120}");
        PixelSight without = look(shelf, List.of(PointName.middle("shelf/front")), 1, 2_000)
                .sights()
                .get(0);
        PixelSight with = look(
                        shelf.replace("surroundings: 120", "surroundings: 120, pixel_pitch: 0.5"),
                        List.of(PointName.middle("shelf/front")),
                        1,
                        2_000)
                .sights()
                .get(0);
        assertThat(without.hasPixel()).isFalse();
        assertThat(with.hasPixel()).isTrue();
        assertThat(with.warm().photons().mean())
                .isCloseTo(0.25 * without.warm().photons().mean(), within(1e-15));
    }
}
