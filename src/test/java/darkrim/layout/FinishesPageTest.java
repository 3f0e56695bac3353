package darkrim.layout;

import static darkrim.layout.FinishesPage.ANGLES;
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
import org.junit.jupiter.api.Test;

/** Every formula of docs/finishes.md, worked out here from the words of the page, against the law that the program makes of the keys. */
class FinishesPageTest {
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
