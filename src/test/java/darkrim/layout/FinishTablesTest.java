package darkrim.layout;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import darkrim.diagnostic.Finding;
import darkrim.reflection.Reflection;
import darkrim.reflection.RollOff;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Finishes from the keys of a layout and from files beside it. */
class FinishTablesTest {
    private static final String BRDF = "theta_i_deg,theta_s_deg,phi_s_deg,brdf_per_sr\n";

    private static LayoutReading read(String head, String finish, Map<String, String> files) {
        String text = """
                title: one plate
                %s
                finishes: {wall: %s}
                beam: {pupil: {shape: disc, diameter: 10, distance: 100}}
                parts:
                  floor: {kind: rectangle, width: 10, depth: 10, finish: wall}
                requirements:
                  dark: {surfaces: "floor/front", direct: none}
                """.formatted(head, finish);
        Map<String, byte[]> bytes = new java.util.HashMap<>();
        files.forEach((name, content) -> bytes.put(name, content.getBytes(StandardCharsets.UTF_8)));
        return LayoutReader.read(
                "one.yaml", text.getBytes(StandardCharsets.UTF_8), Map.of(), SideFiles.known("one.yaml", bytes));
    }

    private static Reflection reflection(String head, String finish, Map<String, String> files) {
        LayoutReading reading = read(head, finish, files);
        assertThat(reading.findings()).noneMatch(found -> found.severity() == Finding.Severity.ERROR);
        return reading.layout().orElseThrow().finishes().get("wall").reflection();
    }

    private static List<String> messages(String finish, String file) {
        return read("", finish, Map.of("m.csv", file)).findings().stream()
                .map(Finding::toString)
                .toList();
    }

    private static double cosine(double angle) {
        return StrictMath.cos(Math.toRadians(angle));
    }

    @Test
    void valuesAreAveragedOverTheBand() {
        // Straight from 0.2 at 1 um to 0.4 at 2 um: 0.3 over all of it, 0.35 from 1.5 to 2.
        String line = "{diffuse: {over_wavelength: [[1, 0.2], [2, 0.4]]}}";
        assertThat(reflection("band: [1, 2]", line, Map.of()).lambertian()).isCloseTo(0.3, within(1e-12));
        assertThat(reflection("band: [1.5, 2]", line, Map.of()).lambertian()).isCloseTo(0.35, within(1e-12));
        // A quarter of the band at 0.1, the rest at 0.5.
        String bands = "{diffuse: {per_band: [[0.5, 1, 0.1], [1, 9, 0.5]]}}";
        assertThat(reflection("band: [0.75, 1.75]", bands, Map.of()).lambertian())
                .isCloseTo(0.4, within(1e-12));
    }

    @Test
    void everyLawIsRead() {
        Reflection coat = reflection("", "{coat: {n: 1.5, over: 0.03}}", Map.of());
        assertThat(coat).isEqualTo(Reflection.coat(1.5, 0.03));
        // Smooth coat n = 1.5: 4 % straight on and 39 % at 80 deg (Fresnel), the base beneath adds little.
        assertThat(coat.mirror(1)).isCloseTo(0.04, within(1e-12));
        assertThat(coat.mirror(cosine(80))).isCloseTo(0.39, within(0.005));
        Reflection lobes = reflection(
                "", "{roll_off: [{a: 0.01, b: 1e-3, g: 2}, {a: 0.02, b: 0.3, g: 1.5}], diffuse: 0.1}", Map.of());
        assertThat(lobes.lobes()).containsExactly(new RollOff(0.01, 1e-3, 2), new RollOff(0.02, 0.3, 1.5));
        assertThat(lobes.lambertian()).isEqualTo(0.1);
        Reflection metal = reflection("", "{fresnel: {n: 1.2, k: 7, times: 0.9}}", Map.of());
        // ((n - 1)^2 + k^2) / ((n + 1)^2 + k^2).
        assertThat(metal.mirror(1)).isCloseTo(0.9 * (0.04 + 49) / (4.84 + 49), within(1e-12));
    }

    @Test
    void aTableOfAnglesComesFromAFileOrFromTheLayout() {
        String file = "# measured\nangle_deg,reflectance\n0,0.1\n60, 0.2\n90,1\n";
        Reflection mirror = reflection("", "{reflectance_table: {as: mirror, file: m.csv}}", Map.of("m.csv", file));
        Reflection inline =
                reflection("", "{reflectance_table: {as: mirror, rows: [[0, 0.1], [60, 0.2], [90, 1]]}}", Map.of());
        assertThat(mirror).isEqualTo(inline);
        assertThat(mirror.mirror(cosine(75))).isCloseTo(0.6, within(1e-9));
        Reflection diffuse = reflection("", "{reflectance_table: {as: diffuse, file: m.csv}}", Map.of("m.csv", file));
        assertThat(diffuse.hasMirror()).isFalse();
        assertThat(diffuse.reflectance(cosine(75))).isCloseTo(0.6, within(1e-9));
    }

    @Test
    void aMeasuredBrdfIsReadWithItsSigns() {
        RollOff lobe = new RollOff(0.03, 0.05, 2);
        StringBuilder file = new StringBuilder(BRDF);
        for (double in : new double[] {0, 30, 60, 85}) {
            // The way back with negative polar angles, and more steps about the mirror direction.
            for (double out = -88; out <= 88; out += Math.abs(out - in) < 20 ? 1 : 4) {
                double at = Math.abs(out);
                double sign = out < 0 ? -1 : 1;
                double between = cosine(in) * cosine(at) - sign * sine(in) * sine(at);
                file.append(String.format(
                        Locale.ROOT, "%s,%s,0,%.9g%n", in, out, lobe.value(cosine(in), cosine(at), between)));
            }
        }
        Reflection measured = reflection("", "{brdf_table: m.csv}", Map.of("m.csv", file.toString()));
        for (double angle : new double[] {0, 30, 45, 75}) {
            assertThat(measured.reflectance(cosine(angle)) / lobe.reflectance(cosine(angle)))
                    .as("%s deg", angle)
                    .isBetween(0.97, 1.03);
        }
        assertThat(messages("{brdf_table: m.csv}", file.toString()))
                .containsExactly(
                        "one.yaml:3:31: warning: measured at incidence 0 to 85 deg and scattered up to 88 deg, in"
                                + " the plane of incidence only; beyond, the nearest measured value stands, expected measured values there where such light counts [beyond-measured]");
    }

    @Test
    void whatContradictsItselfIsNamed() {
        // From 20 to 60 deg ten times what goes from 60 to 20 deg.
        String file = BRDF + "20,20,0,0.1\n20,60,0,0.5\n60,20,0,0.05\n60,60,0,0.1\n";
        assertThat(messages("{brdf_table: m.csv}", file)).anyMatch(each -> each.endsWith("[misfit]"));
    }

    @Test
    void everyErrorOfAFileHasItsPlace() {
        String file = BRDF + "0,10,0,0.1\n5,x,0,0.1\n95,0,400,-1\n1,2,3\n";
        assertThat(messages("{brdf_table: m.csv}", file))
                .containsExactly(
                        "m.csv:3:3: 'x' is not a number, expected one for theta_s_deg [table]",
                        "m.csv:4:1: an angle of incidence of 95 deg, expected 0 to 90 [table]",
                        "m.csv:4:6: an azimuth of 400 deg, expected -360 to 360 [table]",
                        "m.csv:4:10: a BRDF of -1 per sr, expected 0 or more and less than 1e9 [table]",
                        "m.csv:5:1: the row has 3 values, expected 4 [table]");
        assertThat(messages("{brdf_table: m.csv}", "a,b\n1,2\n"))
                .containsExactly(
                        "m.csv:1:1: the columns are 'a,b', expected 'theta_i_deg,theta_s_deg,phi_s_deg,brdf_per_sr'"
                                + " [table]");
        assertThat(messages("{brdf_table: m.csv}", BRDF + "0,0,0,0\n"))
                .containsExactly("one.yaml:3:31: every BRDF in the file is 0, expected one above 0 [table]");
        assertThat(messages("{brdf_table: m.csv}", "")).hasSize(1).allMatch(each -> each.startsWith("m.csv:1:1: "));
    }

    @Test
    void filesLieBesideTheLayoutAndAreReadOnce(@TempDir Path folder) throws IOException {
        Path layout = Files.createDirectories(folder.resolve("here")).resolve("one.yaml");
        Files.writeString(folder.resolve("secret.csv"), "angle_deg,reflectance\n0,0.1\n90,1\n");
        Files.writeString(layout.resolveSibling("m.csv"), "angle_deg,reflectance\n0,0.2\n90,1\n");
        Files.createSymbolicLink(layout.resolveSibling("link.csv"), folder.resolve("secret.csv"));
        SideFiles files = SideFiles.beside(layout.toString());
        for (String bad : List.of("../secret.csv", folder.resolve("secret.csv").toString(), "link.csv", ".", "a\0b")) {
            org.assertj.core.api.Assertions.assertThatThrownBy(() -> files.read(bad))
                    .as(bad)
                    .isInstanceOf(SideFiles.Unusable.class);
        }
        assertThat(refused(files, "m.csv")).isFalse();
        Files.delete(layout.resolveSibling("m.csv"));
        assertThat(refused(files, "m.csv")).isFalse();
        assertThat(files.contents()).containsOnlyKeys("m.csv");
    }

    /** So that a result, and a sweep that goes on, is about one state of them. */
    @Test
    void theDigestOfALayoutChangesWithTheFilesThatItNames() {
        String finish = "{reflectance_table: {as: mirror, file: m.csv}}";
        String one = "angle_deg,reflectance\n0,0.1\n90,1\n";
        String two = "angle_deg,reflectance\n0,0.2\n90,1\n";
        String digest = digest(finish, one);
        assertThat(digest).isEqualTo(digest(finish, one)).isNotEqualTo(digest(finish, two));
        assertThat(digest("{mirror: 0.1}", one)).hasSize(64);
    }

    private static String digest(String finish, String file) {
        return read("", finish, Map.of("m.csv", file))
                .layout()
                .orElseThrow()
                .source()
                .sha256();
    }

    private static boolean refused(SideFiles files, String name) {
        try {
            return files.read(name).length == 0;
        } catch (SideFiles.Unusable unusable) {
            return true;
        }
    }

    /** Every entry in every band that it covers, with its source. */
    @Test
    void noEntryOfTheLibraryReflectsMoreThanArrivesOrHasNoSource() {
        int covered = 0;
        for (FinishLibrary.Entry entry : FinishLibrary.entries()) {
            assertThat(entry.source()).as(entry.name()).isNotBlank();
            boolean any = false;
            for (double[] band : new double[][] {{0.4, 0.7}, {1, 2.5}, {1.2, 2.5}, {3, 5}, {8, 12}}) {
                if (entry.in(band[0], band[1]).isPresent()) {
                    any = true;
                    covered++;
                    assertThat(entry.in(band[0], band[1]).get().peak().reflectance())
                            .isLessThanOrEqualTo(1 + 1e-9);
                }
            }
            assertThat(any).as(entry.name()).isTrue();
        }
        assertThat(covered).isGreaterThan(40);
        // Trade figures, computed: 31 % for an index of 3.5, 21 % for 2.7, 30 % for silicon.
        assertThat(normal("bare-mercury-cadmium-telluride", 1, 2.5)).isCloseTo(0.31, within(0.005));
        assertThat(normal("bare-cadmium-telluride", 1, 2.5)).isCloseTo(0.21, within(0.005));
        assertThat(normal("bare-silicon", 3, 5)).isCloseTo(0.30, within(0.005));
    }

    private static double normal(String name, double from, double to) {
        return FinishLibrary.entry(name)
                .orElseThrow()
                .in(from, to)
                .orElseThrow()
                .reflectance(1);
    }

    private static double sine(double angle) {
        return StrictMath.sin(Math.toRadians(angle));
    }
}
