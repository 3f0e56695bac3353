package darkrim.layout;

import static org.assertj.core.api.Assertions.assertThat;

import darkrim.diagnostic.Finding;
import darkrim.reflection.Reflection;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.function.DoubleUnaryOperator;

/**
 * The page docs/finishes.md and the finishes that are made of its keys: its formulas are worked out here from its words, and total reflectances
 * by the middle rule over the disc of direction cosines, which no law uses.
 */
final class FinishesPage {
    static final double[] ANGLES = {0, 12.5, 30, 45, 60, 75, 85, 89};

    static final String BRDF = "theta_i_deg,theta_s_deg,phi_s_deg,brdf_per_sr\n";

    /** Fails where the page no longer has the words that a test goes by. */
    static void pageSays(String... words) throws IOException {
        String page = Files.readString(Path.of("docs/finishes.md")).replaceAll("\\s+", " ");
        assertThat(page).contains(words);
    }

    static LayoutReading read(String head, String finish, Map<String, String> files) {
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

    static Reflection reflection(String finish) {
        return reflection("", finish, Map.of());
    }

    static Reflection reflection(String head, String finish, Map<String, String> files) {
        LayoutReading reading = read(head, finish, files);
        assertThat(reading.findings()).noneMatch(found -> found.severity() == Finding.Severity.ERROR);
        return reading.layout().orElseThrow().finishes().get("wall").reflection();
    }

    static List<String> messages(String head, String finish) {
        return read(head, finish, Map.of()).findings().stream()
                .map(Finding::toString)
                .toList();
    }

    static double cos(double degrees) {
        return StrictMath.cos(Math.toRadians(degrees));
    }

    static double sin(double degrees) {
        return StrictMath.sin(Math.toRadians(degrees));
    }

    /** BRDF of all that scatters, 1/sr, for light that comes under one angle and leaves under another, turned by an azimuth from the mirror direction. */
    static double brdf(Reflection made, double in, double out, double azimuth) {
        double between = cos(in) * cos(out) - sin(in) * sin(out) * cos(azimuth);
        return made.broad(cos(in), cos(out)) / Math.PI + made.lobe(cos(in), cos(out), between);
    }

    /** Integral of BRDF cos(o) over the hemisphere: rings of the disc of direction cosines about its centre. */
    static double total(Reflection made, double in, int rings, int turns) {
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
    static double mean(DoubleUnaryOperator ofAngle) {
        int steps = 40_000;
        double sum = 0;
        for (int i = 0; i < steps; i++) {
            double cosine = (i + 0.5) / steps;
            sum += 2 * cosine * ofAngle.applyAsDouble(Math.toDegrees(StrictMath.acos(cosine))) / steps;
        }
        return sum;
    }

    /** The page's Fresnel: a - i b is the root of (n - i k)^2 - sin^2, taken here by its angle. */
    static double fresnel(double n, double k, double angle) {
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

    private FinishesPage() {}
}
