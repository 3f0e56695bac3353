package darkrim.trace;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.Arrays;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/**
 * How far a hit lies from the facet it names, reckoned to 60 digits, against the bound of docs/decisions/0001: 38 unit roundoffs of the
 * bound of the scene along each axis, also for facets that are all but edge-on.
 */
class ExactHitTest {
    private static final MathContext DIGITS = new MathContext(60);
    private static final double ROUNDOFF = 0x1p-53;

    private final Ray ray = new Ray();

    @ParameterizedTest
    @EnumSource
    void aHitLiesInTheBoxOfItsFacetToWithinTheStatedBound(Soup soup) {
        SplittableRandom random = new SplittableRandom(47);
        double[] corners = soup.facets(300, 53);
        FacetTree tree = Soup.tree(corners);
        double worst = 0;
        int met = 0;
        for (int i = 0; i < 20_000; i++) {
            double[] r = Soup.ray(corners, random);
            ray.set(r[0], r[1], r[2], r[3], r[4], r[5], Double.POSITIVE_INFINITY, Ray.NO_PLANE);
            int facet = tree.nearest(ray);
            if (facet >= 0) {
                met++;
                worst = Math.max(worst, outside(Arrays.copyOfRange(corners, 9 * facet, 9 * facet + 9), r));
            }
        }
        System.out.printf(
                "Hits outside the box of their facet, %s: at most %.2f roundoffs of the bound%n", soup, worst);
        assertThat(met).isGreaterThan(1000);
        assertThat(worst).isLessThan(38);
    }

    /** Turned facets, and rays in their planes but for rounding: u, v and w are all but nothing. */
    @Test
    void aHitOnAFacetSeenEdgeOnLiesInItsBoxToWithinTheStatedBound() {
        SplittableRandom random = new SplittableRandom(59);
        double worst = 0;
        int met = 0;
        for (int i = 0; i < 200_000; i++) {
            double[] corners = Soup.STREWN.facet(random);
            double[] a = Arrays.copyOfRange(corners, 0, 3);
            double[] b = Arrays.copyOfRange(corners, 3, 6);
            double[] c = Arrays.copyOfRange(corners, 6, 9);
            double[] first = Turn.between(a, b, 3 * random.nextDouble() - 1);
            double[] second = Turn.between(Turn.between(a, c, random.nextDouble()), b, random.nextDouble());
            double[] from = Turn.between(second, first, 1 + 2 * random.nextDouble());
            if (Math.max(Math.abs(from[0]), Math.max(Math.abs(from[1]), Math.abs(from[2]))) > Soup.BOUND) {
                continue;
            }
            double[] way = Turn.minus(second, from);
            double[] r = {from[0], from[1], from[2], way[0], way[1], way[2]};
            ray.set(r[0], r[1], r[2], r[3], r[4], r[5], Double.POSITIVE_INFINITY, Ray.NO_PLANE);
            if (Soup.tree(corners).nearest(ray) >= 0) {
                met++;
                worst = Math.max(worst, outside(corners, r));
            }
        }
        System.out.printf("Hits outside the box of a facet seen edge-on: at most %.2f roundoffs of the bound%n", worst);
        assertThat(met).isGreaterThan(10_000);
        assertThat(worst).isLessThan(38);
    }

    @Test
    void theWeightsOfAHitPointToThePlaceOfTheHit() {
        SplittableRandom random = new SplittableRandom(61);
        double worst = 0;
        for (int i = 0; i < 20_000; i++) {
            double[] p = Soup.FAR_APART.facet(random);
            double[] from = Soup.spot(random, 200);
            double[] r = Arrays.copyOf(from, 6);
            double s = random.nextDouble();
            for (int k = 0; k < 3; k++) {
                r[3 + k] = s * p[k] + (1 - s) * (0.4 * p[3 + k] + 0.6 * p[6 + k]) - from[k];
            }
            double[] n = Turn.unit(Soup.normal(p));
            if (Math.abs(Turn.dot(n, Turn.unit(new double[] {r[3], r[4], r[5]}))) < 1e-3) {
                continue;
            }
            ray.set(r[0], r[1], r[2], r[3], r[4], r[5], Double.POSITIVE_INFINITY, Ray.NO_PLANE);
            assertThat(Soup.tree(p).nearest(ray)).isZero();
            assertThat(ray.weightA() + ray.weightB() + ray.weightC())
                    .isCloseTo(1, org.assertj.core.api.Assertions.within(1e-15));
            for (int k = 0; k < 3; k++) {
                double byWeights = ray.weightA() * p[k] + ray.weightB() * p[3 + k] + ray.weightC() * p[6 + k];
                worst = Math.max(worst, Math.abs(byWeights - (r[k] + ray.distance() * r[3 + k])));
            }
        }
        // 60 roundoffs of 300 mm, over the least sine of the ray to the facet, 1e-3.
        assertThat(worst).isLessThan(60 * ROUNDOFF * 300 / 1e-3);
    }

    /** How far the hit lies outside the box of the facet, in roundoffs of the bound; exact, since a double is a decimal. */
    private double outside(double[] facet, double[] r) {
        double worst = 0;
        for (int k = 0; k < 3; k++) {
            BigDecimal at = new BigDecimal(r[k])
                    .add(new BigDecimal(ray.distance()).multiply(new BigDecimal(r[3 + k]), DIGITS), DIGITS);
            double low = Math.min(facet[k], Math.min(facet[3 + k], facet[6 + k]));
            double high = Math.max(facet[k], Math.max(facet[3 + k], facet[6 + k]));
            double below = new BigDecimal(low).subtract(at, DIGITS).doubleValue();
            double above = at.subtract(new BigDecimal(high), DIGITS).doubleValue();
            worst = Math.max(worst, Math.max(below, above));
        }
        return worst / (ROUNDOFF * Soup.BOUND);
    }
}
