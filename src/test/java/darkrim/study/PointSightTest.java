package darkrim.study;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import darkrim.light.Estimate;
import darkrim.light.Obstruction;
import darkrim.reference.ReferenceCase;
import darkrim.reference.ReferenceCases;
import darkrim.verdict.StoppingWatch;
import darkrim.verdict.Watch;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

class PointSightTest {
    private static final Effort FEW = new Effort(2, Optional.empty(), Optional.of(20_000L));
    /** A sampled value is further from the truth than this with a chance of 2e-9. */
    private static final double STANDARD_ERRORS = 6;

    @TempDir
    Path folder;

    static Stream<ReferenceCase> knifeEdges() {
        return ReferenceCases.family("C").stream().filter(each -> each.id().matches("C01[ab][12]"));
    }

    @ParameterizedTest
    @MethodSource("knifeEdges")
    void aPointBehindTheKnifeEdgeSeesWhatTheReferenceCasesSay(ReferenceCase reference) throws Exception {
        double radius = reference.geometry().get("params").get("r").asDouble();
        double height = reference.geometry().get("params").get("H").asDouble();
        double knife = reference.geometry().get("params").get("h").asDouble();
        double edge = reference.geometry().get("params").get("s").asDouble();
        Path file = layout(knife(radius, height, knife, edge));
        for (int i = 0; i < reference.values().size(); i++) {
            double x = reference.receiverPoints().get(i).getX();
            PointSight sight = PointSight.of(file, "screen/front", (x + 20) / 40, 0.5, FEW, Watch.NONE);
            assertThat(sight.at().position().distance(Vector3D.of(x, 0, 0))).isLessThan(1e-8);
            double expected = reference.values().get(i);
            double got = reference.kind().equals("E")
                    ? sight.view().irradiance()
                    : sight.view().areaFraction();
            assertThat(got).as("%s at x = %s", reference.id(), x).isCloseTo(expected, within(1e-9));
        }
    }

    @Test
    void whatThePointDoesNotSeeIsHiddenByTheKnife() throws Exception {
        PointSight sight = PointSight.of(layout(knife(20, 200, 50, 0)), "screen/front", 0.52, 0.5, FEW, Watch.NONE);
        Obstruction found = sight.obstruction();
        assertThat(found.samples()).isEqualTo(20_000);
        assertThat(found.by()).hasSize(1);
        assertThat(sight.scene().surfaces().get(found.by().firstKey().surface()).name())
                .isEqualTo("knife/back");
        assertThat(found.seen() + found.by().get(found.by().firstKey())).isEqualTo(found.samples());
        assertAgree(sight.share(), sight.view().areaFraction());
        assertAgree(sight.irradiance(), sight.exactIrradiance());
    }

    @ParameterizedTest
    @CsvSource({
        "nightglow-a, 'mosaic/die[1,1]/edge/+x', 0.5, 0.5",
        "nightglow-a, 'lid/opening[2,1]/wall/-y', 0.1, 0.9",
        "nightglow-a, lid/top, 0.5, 0.01",
        "nightglow-b, 'mosaic/die[1,1]/rim/+x', 0.5, 0.5",
        "nightglow-b, 'mosaic/die[2,2]/rim/-y', 0.01, 0.3",
        "nightglow-b, 'mosaic/die[2,1]/active', 0, 1",
        "nightglow-b, lid/underside, 0.02, 0.5",
    })
    void exactAndSampledAgree(String layout, String surface, double u, double v) throws Exception {
        PointSight sight = PointSight.of(shipped(layout), surface, u, v, FEW, Watch.NONE);
        assertAgree(sight.share(), sight.view().areaFraction());
        assertAgree(sight.irradiance(), sight.exactIrradiance());
        Obstruction found = sight.obstruction();
        long stopped = found.by().values().stream().mapToLong(Long::longValue).sum();
        assertThat(found.seen() + found.behind() + found.beyondField() + stopped)
                .isEqualTo(found.samples());
        assertAgree(
                found.share(found.behind() + found.beyondField()),
                1 - sight.withoutParts().areaFraction());
    }

    @ParameterizedTest
    @CsvSource({
        "nightglow-b, 'mosaic/die[1,1]/edge/+x'",
        "nightglow-a, 'mosaic/die[1,1]/readout/+x'",
        "part-detectors, 'sensor/die/readout/+x'",
        "part-disc, behind/front",
    })
    void whatIsProvedDarkSeesNoneOfThePupilWhateverRoundingLeaves(String layout, String surface) throws Exception {
        for (double u : new double[] {0.03, 0.31, 0.5, 0.77}) {
            PointSight sight = PointSight.of(shipped(layout), surface, u, 0.4, FEW, Watch.NONE);
            // The strip that rounding leaves is narrower than a picometre and no longer than the pupil is round.
            assertThat(sight.view().areaFraction()).isLessThan(1e-9);
            assertThat(sight.exactShare()).isZero();
            assertThat(sight.exactIrradiance()).isZero();
        }
    }

    /** A gap of a nanometre half way to the pupil is a slit of w = 2 nm in its plane, with a share of 2 r w / (pi r^2): no rounding. */
    @Test
    void aSlitOfANanometreIsNoRounding() throws Exception {
        Path file = layout("""
                title: Slit
                beam: {pupil: {shape: disc, diameter: 40, distance: 200}}
                parts:
                  screen: {kind: rectangle, width: 40, depth: 40}
                  right: {kind: rectangle, width: 100, depth: 100, at: [50.0000005, 0, 100]}
                  left: {kind: rectangle, width: 100, depth: 100, at: [-50.0000005, 0, 100]}
                requirements: {dark: {surfaces: screen, direct: none}}
                """);
        PointSight sight = PointSight.of(file, "screen/front", 0.5, 0.5, FEW, Watch.NONE);
        double slit = 2e-6 * 40 / (Math.PI * 20 * 20);
        assertThat(sight.exactShare()).isCloseTo(slit, within(1e-4 * slit));
        assertThat(sight.view().roundingFraction()).isLessThan(1e-3 * slit);
    }

    @Test
    void theFieldLimitIsCountedApartFromParts() throws Exception {
        // The lines from x = 12 to a pupil of radius 20 cross z = 0 at x = 12, outside a field of half width 10.
        Path file =
                layout(knife(20, 200, 50, -100).replace("distance: 200}", "distance: 200}\n  field: {half_width: 10}"));
        PointSight beyond = PointSight.of(file, "screen/front", 0.8, 0.5, FEW, Watch.NONE);
        assertThat(beyond.obstruction().beyondField()).isEqualTo(20_000);
        assertThat(beyond.withoutParts().areaFraction()).isZero();
        PointSight within = PointSight.of(file, "screen/front", 0.6, 0.5, FEW, Watch.NONE);
        assertThat(within.obstruction().beyondField()).isZero();
        assertThat(within.withoutParts().areaFraction()).isCloseTo(1, within(1e-12));
    }

    @Test
    void theSameBitsComeFromAnyNumberOfThreads() throws Exception {
        Path file = shipped("nightglow-b");
        PointSight[] sights = new PointSight[2];
        for (int i = 0; i < 2; i++) {
            Effort effort = new Effort(1 + 2 * i, Optional.of(7L), Optional.of(100_000L));
            sights[i] = PointSight.of(file, "mosaic/die[1,1]/rim/+x", 0.5, 0.5, effort, Watch.NONE);
        }
        assertThat(sights[0].irradiance()).isEqualTo(sights[1].irradiance());
        assertThat(sights[0].obstruction()).isEqualTo(sights[1].obstruction());
        assertThat(sights[0].seed()).isEqualTo(7);
    }

    @Test
    void workThatIsStoppedKeepsWhatItHas() throws Exception {
        Watch stopAtOnce = StoppingWatch.after(0);
        PointSight sight = PointSight.of(shipped("nightglow-b"), "lid/top", 0.01, 0.5, FEW, stopAtOnce);
        assertThat(sight.stopped()).isTrue();
        assertThat(sight.obstruction().samples()).isZero();
        assertThat(sight.share().samples()).isZero();
    }

    @ParameterizedTest
    @CsvSource({
        // A rectangle of 30 x 10 turned by 30 deg about z: u along its length, v across.
        "screen/front, 1, 0.5, 12.990381056766580, 7.5, 0, 0, 0, 1",
        "screen/front, 0.5, 1, -2.5, 4.330127018922193, 0, 0, 0, 1",
        "screen/back, 1, 0.5, 12.990381056766580, 7.5, 0, 0, 0, -1",
        // A disc: along the layout's axes.
        "flag/front, 0.75, 0.5, 3.5, 1, 60, 0, 0, 1",
        // A block of 4 x 6 x 8 about x = 40, standing on z = 0: u and v run along +x, +y, +z, whichever way a face
        // looks.
        "bar/-x, 0.25, 1, 38, -1.5, 8, -1, 0, 0",
        "bar/+x, 0.25, 1, 42, -1.5, 8, 1, 0, 0",
        "bar/-y, 0.25, 1, 39, -3, 8, 0, -1, 0",
        "bar/+z, 0, 0.5, 38, 0, 8, 0, 0, 1",
        "bar/-z, 0, 0.5, 38, 0, 0, 0, 0, -1",
    })
    void sharesRunAcrossTheRectangleAroundASurface(
            String surface, double u, double v, double x, double y, double z, double nx, double ny, double nz)
            throws Exception {
        PointSight sight = PointSight.of(layout(turned()), surface, u, v, FEW, Watch.NONE);
        assertThat(sight.at().position().distance(Vector3D.of(x, y, z))).isLessThan(1e-8);
        assertThat(sight.at().normal().distance(Vector3D.of(nx, ny, nz))).isLessThan(1e-12);
    }

    @Test
    void aNameThatDoesNotExistIsAnsweredWithTheNearest() throws Exception {
        Path file = shipped("nightglow-b");
        assertThatThrownBy(() -> PointSight.of(file, "mosaic/die[1,1]/edges/+x", 0.5, 0.5, FEW, Watch.NONE))
                .isInstanceOf(NoSuchPoint.class)
                .hasMessageStartingWith("there is no surface 'mosaic/die[1,1]/edges/+x'; the nearest names are "
                        + "'mosaic/die[1,1]/edge/+x', ");
        assertThatThrownBy(() -> PointSight.of(file, "lid", 0.5, 0.5, FEW, Watch.NONE))
                .isInstanceOf(NoSuchPoint.class)
                .hasMessageContaining("'lid/top'");
    }

    @Test
    void aPointBesideTheOutlineIsRefused() throws Exception {
        Path file = layout(turned());
        assertThatThrownBy(() -> PointSight.of(file, "flag/front", 0.01, 0.01, FEW, Watch.NONE))
                .isInstanceOf(NoSuchPoint.class)
                .hasMessage(
                        "the point 0.01,0.01 of the rectangle around 'flag/front' lies outside the surface's outline");
        assertThatThrownBy(() -> PointSight.of(file, "flag/front", 1.5, 0.5, FEW, Watch.NONE))
                .isInstanceOf(NoSuchPoint.class)
                .hasMessageContaining("shares from 0 to 1, got 1.5,0.5");
    }

    @Test
    void aCurvedSurfaceIsRefused() throws Exception {
        assertThatThrownBy(() ->
                        PointSight.of(Path.of("geometries/part-tube.yaml"), tubeInside(), 0.5, 0.5, FEW, Watch.NONE))
                .isInstanceOf(NoSuchPoint.class)
                .hasMessageContaining("is not flat");
    }

    private static String tubeInside() throws Exception {
        // The part's name is read from the file, so that the test does not depend on it.
        return Files.readAllLines(Path.of("geometries/part-tube.yaml")).stream()
                        .filter(line -> line.contains("kind: tube"))
                        .map(line -> line.strip().split(":", 2)[0])
                        .findFirst()
                        .orElseThrow()
                + "/inside";
    }

    private static void assertAgree(Estimate sampled, double exact) {
        assertThat(sampled.samples()).isGreaterThanOrEqualTo(20_000);
        assertThat(sampled.mean()).isCloseTo(exact, within(STANDARD_ERRORS * sampled.standardError() + 1e-9));
    }

    private static Path shipped(String name) {
        return Path.of("geometries", name + ".yaml");
    }

    private Path layout(String text) throws IOException {
        return Files.writeString(folder.resolve("layout.yaml"), text);
    }

    /** A half plane, in effect, on the side of smaller x above a screen of 40 x 40. */
    private static String knife(double radius, double height, double z, double edge) {
        return String.format(Locale.ROOT, """
                title: Knife edge
                beam:
                  pupil: {shape: disc, diameter: %s, distance: %.0f}
                parts:
                  screen: {kind: rectangle, width: 40, depth: 40}
                  knife: {kind: rectangle, width: 2000, depth: 4000, at: [%s, 0, %s]}
                requirements:
                  dim: {surfaces: "screen/front", direct: {at_most: 1, per: surface}}
                """, 2 * radius, height, edge - 1000, z);
    }

    private static String turned() {
        return """
                title: Turned
                beam:
                  pupil: {shape: disc, diameter: 20, distance: 200}
                parts:
                  screen: {kind: rectangle, width: 30, depth: 10, turn: {about: z, by: 30}}
                  flag: {kind: disc, diameter: 6, at: [2, 1, 60]}
                  bar: {kind: block, width: 4, depth: 6, height: 8, at: [40, 0, 0]}
                requirements:
                  dim: {surfaces: "screen/front", direct: {at_most: 1, per: surface}}
                """;
    }
}
