package darkrim.layout;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import darkrim.diagnostic.Finding;
import darkrim.reflection.Reflection;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;

/**
 * Every formula of docs/finishes.md, worked out here from the words of the page, against the law that the program makes of the keys; and total
 * reflectances by the middle rule over the disc of direction cosines, which no law uses.
 */
class FinishesPageTest {
    private static final double[] ANGLES = {0, 12.5, 30, 45, 60, 75, 85, 89};
    private static final String BRDF = "theta_i_deg,theta_s_deg,phi_s_deg,brdf_per_sr\n";

    /** Fails where the page no longer has the words that a test goes by. */
    private static void pageSays(String... words) throws IOException {
        String page = Files.readString(Path.of("docs/finishes.md")).replaceAll("\\s+", " ");
        assertThat(page).contains(words);
    }

    private static LayoutReading read(String head, String finish, Map<String, String> files) {
        String text = """
                title: one plate
                %s
                finishes: {wall: %s}
                beam: {pupil: {shape: disc, diameter: 10, distance: 100}}
                parts: {floor: {kind: rectangle, width: 10, depth: 10, finish: wall}}
                requirements: {dark: {surfaces: floor/front, direct: none}}
                """.formatted(head, finish);
        Map<String, byte[]> bytes = new java.util.HashMap<>();
        files.forEach((name, content) -> bytes.put(name, content.getBytes(StandardCharsets.UTF_8)));
        return LayoutReader.read(
                "one.yaml", text.getBytes(StandardCharsets.UTF_8), Map.of(), SideFiles.known("one.yaml", bytes));
    }

    private static Reflection reflection(String finish) {
        return reflection("", finish, Map.of());
    }

    private static Reflection reflection(String head, String finish, Map<String, String> files) {
        LayoutReading reading = read(head, finish, files);
        assertThat(reading.findings()).noneMatch(found -> found.severity() == Finding.Severity.ERROR);
        return reading.layout().orElseThrow().finishes().get("wall").reflection();
    }

    private static List<String> messages(String head, String finish) {
        return read(head, finish, Map.of()).findings().stream()
                .map(Finding::toString)
                .toList();
    }

    private static double cos(double degrees) {
        return StrictMath.cos(Math.toRadians(degrees));
    }

    private static double sin(double degrees) {
        return StrictMath.sin(Math.toRadians(degrees));
    }

    /** BRDF of all that scatters, 1/sr, for light that comes under one angle and leaves under another, turned by an azimuth from the mirror direction. */
    private static double brdf(Reflection made, double in, double out, double azimuth) {
        double between = cos(in) * cos(out) - sin(in) * sin(out) * cos(azimuth);
        return made.broad(cos(in), cos(out)) / Math.PI + made.lobe(cos(in), cos(out), between);
    }

    /** Integral of BRDF cos(o) over the hemisphere: rings of the disc of direction cosines about its centre. */
    private static double total(Reflection made, double in, int rings, int turns) {
        double sum = 0;
        for (int i = 0; i < rings; i++) {
            double out = Math.toDegrees(StrictMath.asin(Math.sqrt((i + 0.5) / rings)));
            for (int j = 0; j < turns; j++) {
                sum += brdf(made, in, out, 360.0 * (j + 0.5) / turns) * Math.PI / (rings * (double) turns);
            }
        }
        return sum;
    }

    /** Twice the integral of a reflectance times the cosine over the cosine: its mean for light from everywhere. */
    private static double mean(DoubleUnaryOperator ofAngle) {
        int steps = 40_000;
        double sum = 0;
        for (int i = 0; i < steps; i++) {
            double cosine = (i + 0.5) / steps;
            sum += 2 * cosine * ofAngle.applyAsDouble(Math.toDegrees(StrictMath.acos(cosine))) / steps;
        }
        return sum;
    }

    /** The page's Fresnel: a - i b is the root of (n - i k)^2 - sin^2, taken here by its angle. */
    private static double fresnel(double n, double k, double angle) {
        double c = cos(angle);
        double s2 = sin(angle) * sin(angle);
        double real = n * n - k * k - s2;
        double imaginary = -2 * n * k;
        double root = Math.sqrt(Math.hypot(real, imaginary));
        double half = StrictMath.atan2(imaginary, real) / 2;
        double a = root * StrictMath.cos(half);
        double b = -root * StrictMath.sin(half);
        double rs = ((a - c) * (a - c) + b * b) / ((a + c) * (a + c) + b * b);
        double rp = rs * ((a * c - s2) * (a * c - s2) + b * b * c * c) / ((a * c + s2) * (a * c + s2) + b * b * c * c);
        return (rs + rp) / 2;
    }

    @Test
    void diffuse() throws IOException {
        pageSays("**Diffuse**: BRDF = rho / pi.");
        Reflection made = reflection("{diffuse: 0.04}");
        for (double angle : ANGLES) {
            assertThat(brdf(made, angle, 33, 120)).isCloseTo(0.04 / Math.PI, within(1e-15));
            assertThat(total(made, angle, 100, 2)).isCloseTo(0.04, within(1e-12));
            assertThat(made.reflectance(cos(angle))).isCloseTo(0.04, within(1e-15));
        }
    }

    @Test
    void fresnelOfGlassSemiconductorAndMetal() throws IOException {
        pageSays(
                "(n - i k)^2 - sin^2 = (a - i b)^2, Rs = ((a - cos)^2 + b^2) / ((a + cos)^2 + b^2) and Rp = Rs ((a cos - sin^2)^2 + b^2 cos^2)"
                        + " / ((a cos + sin^2)^2 + b^2 cos^2); R = (Rs + Rp) / 2");
        for (double[] nk : new double[][] {{1.5, 0}, {3.42, 0}, {1.2, 7}, {0.2, 3}}) {
            Reflection made = reflection("{fresnel: {n: " + nk[0] + ", k: " + nk[1] + ", times: 0.9}}");
            for (double angle : ANGLES) {
                assertThat(made.mirror(cos(angle)))
                        .as("n %s, k %s at %s deg", nk[0], nk[1], angle)
                        .isCloseTo(0.9 * fresnel(nk[0], nk[1], angle), within(1e-13));
            }
            assertThat(made.scatters()).isFalse();
        }
    }

    @Test
    void coat() throws IOException {
        pageSays(
                "the face reflects F(theta) as a mirror",
                "BRDF = (1 - F(i)) (1 - F(o)) r / (pi n^2 (1 - r F')), F' = 1 - (1 - mean of F) / n^2",
                "a white base (r = 1) gives R = 1 at every angle",
                "a coat of n = 1.5 over 0.03 reflects 5 % straight on, 4 of them as a mirror");
        double n = 1.5;
        double mean = mean(angle -> fresnel(n, 0, angle));
        for (double r : new double[] {0.03, 0.5, 1}) {
            Reflection made = reflection("{coat: {n: 1.5, over: " + r + "}}");
            double within = 1 - (1 - mean) / (n * n);
            for (double in : ANGLES) {
                assertThat(made.mirror(cos(in))).isCloseTo(fresnel(n, 0, in), within(1e-13));
                for (double out : ANGLES) {
                    double expected = (1 - fresnel(n, 0, in))
                            * (1 - fresnel(n, 0, out))
                            * r
                            / (Math.PI * n * n * (1 - r * within));
                    assertThat(brdf(made, in, out, 70)).isCloseTo(expected, within(1e-7 * expected));
                }
                double all = made.mirror(cos(in)) + total(made, in, 20_000, 1);
                assertThat(all).isCloseTo(made.reflectance(cos(in)), within(2e-6));
                assertThat(all).isLessThan(1 + 2e-6).isGreaterThan(r == 1 ? 1 - 2e-6 : 0);
            }
        }
        Reflection lacquer = reflection("{coat: {n: 1.5, over: 0.03}}");
        assertThat(100 * lacquer.reflectance(1)).isCloseTo(5, within(0.5));
        assertThat(100 * lacquer.mirror(1)).isCloseTo(4, within(0.5));
    }

    @Test
    void rollOff() throws IOException {
        pageSays(
                "BRDF = a / (b + |beta - beta0|^g), beta and beta0 the direction cosines of the scattered and the mirror direction along the surface",
                "R is largest straight on: for g = 2, pi a ln(1 + 1/b)",
                "a list of up to four adds up");
        double[][] laws = {{0.004, 0.01, 2}, {0.02, 0.3, 1.5}};
        Reflection made =
                reflection("{diffuse: 0.02, roll_off: [{a: 0.004, b: 0.01, g: 2}, {a: 0.02, b: 0.3, g: 1.5}]}");
        for (double in : ANGLES) {
            for (double out : ANGLES) {
                for (double azimuth : new double[] {0, 20, 90, 180}) {
                    double u = sin(out) * cos(azimuth) - sin(in);
                    double v = sin(out) * sin(azimuth);
                    double expected = 0.02 / Math.PI;
                    for (double[] law : laws) {
                        expected += law[0] / (law[1] + StrictMath.pow(Math.hypot(u, v), law[2]));
                    }
                    assertThat(brdf(made, in, out, azimuth)).isCloseTo(expected, within(1e-9 * expected));
                }
            }
        }
        Reflection one = reflection("{roll_off: {a: 0.004, b: 0.01, g: 2}}");
        double straight = Math.PI * 0.004 * StrictMath.log(1 + 1 / 0.01);
        assertThat(one.reflectance(1)).isCloseTo(straight, within(1e-9 * straight));
        for (double angle : ANGLES) {
            double by = total(one, angle, 1_000, 720);
            assertThat(one.reflectance(cos(angle)))
                    .isCloseTo(by, within(2e-3 * by))
                    .isLessThan(straight * (1 + 1e-9));
        }
    }

    private static double onStraightLines(double[][] rows, double angle) {
        int i = 1;
        while (rows[i][0] < angle) {
            i++;
        }
        double share = (angle - rows[i - 1][0]) / (rows[i][0] - rows[i - 1][0]);
        return (1 - share) * rows[i - 1][1] + share * rows[i][1];
    }

    @Test
    void reflectanceTable() throws IOException {
        pageSays(
                "**Reflectance table**: straight lines in angle. As `mirror`, that share in the mirror direction. As `diffuse`, BRDF = R(i) R(o) / (pi mean of R)",
                "If the angles end before 90 deg, the table rises in a straight line to all that the other parts leave at 90 deg, and a warning says so");
        double[][] rows = {{0, 0.04}, {60, 0.09}, {90, 0.5}};
        String as = "{reflectance_table: {as: %s, rows: [[0, 0.04], [60, 0.09], [90, 0.5]]}}";
        Reflection mirror = reflection(as.formatted("mirror"));
        Reflection diffuse = reflection(as.formatted("diffuse"));
        double mean = mean(angle -> onStraightLines(rows, angle));
        for (double in : ANGLES) {
            double r = onStraightLines(rows, in);
            assertThat(mirror.mirror(cos(in))).isCloseTo(r, within(1e-9));
            assertThat(diffuse.hasMirror()).isFalse();
            assertThat(total(diffuse, in, 40_000, 1)).isCloseTo(r, within(1e-5));
            for (double out : ANGLES) {
                double expected = r * onStraightLines(rows, out) / (Math.PI * mean);
                assertThat(brdf(diffuse, in, out, 10)).isCloseTo(expected, within(1e-8 * expected));
            }
        }
        String ends = "{diffuse: 0.2, reflectance_table: {as: mirror, rows: [[0, 0.04], [60, 0.09]]}}";
        double[][] risen = {{0, 0.04}, {60, 0.09}, {90, 0.8}};
        for (double angle : ANGLES) {
            assertThat(reflection(ends).mirror(cos(angle))).isCloseTo(onStraightLines(risen, angle), within(1e-9));
        }
        assertThat(messages("", ends)).singleElement().asString().contains("warning", "[beyond-measured]");
    }

    /** A lobe with a peak, measured in half planes; the program keeps it on a grid, so it is asked for to a few per cent. */
    @Test
    void brdfTable() throws IOException {
        pageSays(
                "A negative theta_s is the same as phi_s + 180",
                "Rows may stand in any order",
                "Values at phi_s and -phi_s count as their mean",
                "The table is made reciprocal by the mean of both ways");
        StringBuilder signed = new StringBuilder(BRDF);
        StringBuilder turned = new StringBuilder(BRDF);
        StringBuilder backward = new StringBuilder();
        for (double in : new double[] {0, 15, 30, 45, 60, 75}) {
            for (double out = -85; out <= 85; out += 1) {
                double u = sin(out) - sin(in);
                double value = 0.03 / (0.05 + u * u);
                signed.append(String.format(Locale.ROOT, "%s,%s,0,%.17g%n", in, out, value));
                String other =
                        String.format(Locale.ROOT, "%s,%s,%s,%.17g%n", in, Math.abs(out), out < 0 ? 180 : 0, value);
                turned.append(other);
                backward.insert(0, other);
            }
        }
        Reflection made = reflection("", "{brdf_table: m.csv}", Map.of("m.csv", signed.toString()));
        Reflection byAzimuth = reflection("", "{brdf_table: m.csv}", Map.of("m.csv", turned.toString()));
        Reflection fromBehind = reflection("", "{brdf_table: m.csv}", Map.of("m.csv", BRDF + backward));
        for (double in : new double[] {0, 20, 45, 70}) {
            for (double out : new double[] {5, 30, 52, 80}) {
                for (double azimuth : new double[] {0, 180, 60}) {
                    double u = sin(out) * cos(azimuth) - sin(in);
                    double v = sin(out) * sin(azimuth);
                    double expected = 0.03 / (0.05 + u * u + v * v);
                    assertThat(brdf(made, in, out, azimuth) / expected)
                            .as("%s to %s deg, azimuth %s", in, out, azimuth)
                            .isBetween(0.93, 1.07);
                    assertThat(brdf(made, in, out, azimuth))
                            .isEqualTo(brdf(made, out, in, azimuth))
                            .isEqualTo(brdf(byAzimuth, in, out, azimuth))
                            .isEqualTo(brdf(fromBehind, in, out, azimuth));
                }
            }
            double by = total(made, in, 1_000, 360);
            assertThat(made.reflectance(cos(in))).isCloseTo(by, within(3e-3 * by));
        }
    }

    @Test
    void wavelengthsAreAllAlike() throws IOException {
        pageSays(
                "`{over_wavelength: [[1, 0.2], [2, 0.4]]}`, straight lines between, or `{per_band: [[0.4, 0.7, 0.05], [1, 2.5, 0.3]]}`",
                "Values that do not cover all of the band are an error",
                "An index is averaged before Fresnel's formula",
                "brings a warning where the band reaches beyond 0.75 um");
        String line = "{mirror: {over_wavelength: [[1, 0.2], [2, 0.4]]}}";
        assertThat(reflection("band: [1.2, 1.6]", line, Map.of()).mirror(1)).isCloseTo(0.28, within(1e-12));
        String bands = "{diffuse: {per_band: [[0.4, 0.7, 0.05], [1, 2.5, 0.3]]}}";
        assertThat(reflection("band: [1.5, 2]", bands, Map.of()).lambertian()).isCloseTo(0.3, within(1e-12));
        assertThat(messages("band: [0.5, 1.5]", bands)).anyMatch(each -> each.endsWith("[wavelength]"));
        Reflection index =
                reflection("band: [1, 2]", "{fresnel: {n: {over_wavelength: [[1, 3.4], [2, 3.6]]}}}", Map.of());
        assertThat(index.mirror(cos(50))).isCloseTo(fresnel(3.5, 0, 50), within(1e-13));
        assertThat(messages("band: [0.5, 0.7]", "{diffuse: 0.05, dyed: true}")).isEmpty();
        assertThat(messages("band: [0.5, 0.8]", "{diffuse: 0.05, dyed: true}"))
                .anyMatch(each -> each.endsWith("[dyed-black]"));
    }

    @Test
    void whatReflectsOrEmitsMoreThanThereIsIsAnError() throws IOException {
        pageSays(
                "a finish that reflects more than arrives, at any angle of incidence, is an error that names the angle",
                "more than what is not reflected is an error");
        assertThat(messages("", "{diffuse: 0.1, fresnel: {n: 1.5}}"))
                .anyMatch(each -> each.contains("90 deg") && each.endsWith("[reflectance]"));
        assertThat(messages("", "{diffuse: 0.3, emissivity: 0.8}")).anyMatch(each -> each.endsWith("[emissivity]"));
        assertThat(messages("", "{diffuse: 0.3, emissivity: 0.6}")).isEmpty();
    }
}
