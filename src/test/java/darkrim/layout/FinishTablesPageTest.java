package darkrim.layout;

import static darkrim.layout.FinishesPage.ANGLES;
import static darkrim.layout.FinishesPage.BRDF;
import static darkrim.layout.FinishesPage.brdf;
import static darkrim.layout.FinishesPage.cos;
import static darkrim.layout.FinishesPage.fresnel;
import static darkrim.layout.FinishesPage.mean;
import static darkrim.layout.FinishesPage.messages;
import static darkrim.layout.FinishesPage.pageSays;
import static darkrim.layout.FinishesPage.reflection;
import static darkrim.layout.FinishesPage.sin;
import static darkrim.layout.FinishesPage.total;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import darkrim.reflection.Reflection;
import java.io.IOException;
import java.util.Locale;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** Every table of docs/finishes.md, over angle, over two directions or over wavelength, against the law that the program makes of it. */
class FinishTablesPageTest {
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
}
