package darkrim.shadow;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.util.EnumMap;
import java.util.Map;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

class CrossingTest {
    private static final double[] TRIANGLE = {99, 0, 0, 0, 1, 0, 0, 0, 1, 0};

    private static Crossing of(double[] from, double[] to) {
        return Crossing.of(from, to, TRIANGLE, 1);
    }

    private static double[] at(double x, double y, double z) {
        return new double[] {x, y, z};
    }

    @Test
    void aLineThroughTheInsideCrossesWhicheverWayItRuns() {
        assertThat(of(at(0.2, 0.3, 1), at(0.2, 0.3, -2))).isEqualTo(Crossing.YES);
        assertThat(of(at(0.2, 0.3, -1), at(0.2, 0.3, 2))).isEqualTo(Crossing.YES);
        assertThat(of(at(0.2, 0.3, 3), at(0.2, 0.3, 2))).isEqualTo(Crossing.NO);
        assertThat(of(at(0.2, 0.3, -3), at(0.2, 0.3, -2))).isEqualTo(Crossing.NO);
    }

    @Test
    void aLineBesideEachSideMisses() {
        assertThat(of(at(0.5, -0.1, 1), at(0.5, -0.1, -1))).isEqualTo(Crossing.NO);
        assertThat(of(at(-0.1, 0.5, 1), at(-0.1, 0.5, -1))).isEqualTo(Crossing.NO);
        assertThat(of(at(0.6, 0.6, 1), at(0.6, 0.6, -1))).isEqualTo(Crossing.NO);
    }

    @Test
    void aLineThroughASideOrACornerOrInThePlaneIsUnsure() {
        assertThat(of(at(0.5, 0, 1), at(0.5, 0, -1))).isEqualTo(Crossing.UNSURE);
        assertThat(of(at(0, 0.5, 1), at(0, 0.5, -1))).isEqualTo(Crossing.UNSURE);
        assertThat(of(at(0.5, 0.5, 1), at(0.5, 0.5, -1))).isEqualTo(Crossing.UNSURE);
        assertThat(of(at(0, 0, 1), at(0, 0, -1))).isEqualTo(Crossing.UNSURE);
        assertThat(of(at(-1, 0.2, 0), at(2, 0.3, 0))).isEqualTo(Crossing.UNSURE);
        // It ends, or begins, on the triangle.
        assertThat(of(at(0.2, 0.3, 1), at(0.2, 0.3, 0))).isEqualTo(Crossing.UNSURE);
        assertThat(of(at(0.2, 0.3, 0), at(0.2, 0.3, -1))).isEqualTo(Crossing.UNSURE);
    }

    /** The crossing point is chosen by its weights: inside when all are positive. Every triangle lies anyhow in space. */
    @Test
    void aLineThroughAChosenPointOfThePlaneCrossesWhenItsWeightsArePositive() {
        SplittableRandom random = new SplittableRandom(5);
        int inside = 0;
        for (int i = 0; i < 2000; i++) {
            double[] t = new double[9];
            for (int k = 0; k < 9; k++) {
                t[k] = random.nextDouble(-5, 5) + 100;
            }
            double[] w = {random.nextDouble(-0.4, 1), random.nextDouble(-0.4, 1), 0};
            w[2] = 1 - w[0] - w[1];
            double[] way = at(random.nextDouble(-9, 9), random.nextDouble(-9, 9), random.nextDouble(-9, 9));
            if (Math.min(Math.abs(w[0]), Math.min(Math.abs(w[1]), Math.abs(w[2]))) < 1e-3 || flat(t, way)) {
                continue;
            }
            double[] from = new double[3];
            double[] to = new double[3];
            for (int k = 0; k < 3; k++) {
                double point = w[0] * t[k] + w[1] * t[3 + k] + w[2] * t[6 + k];
                from[k] = point + way[k];
                to[k] = point - 0.7 * way[k];
            }
            boolean crosses = w[0] > 0 && w[1] > 0 && w[2] > 0;
            inside += crosses ? 1 : 0;
            assertThat(Crossing.of(from, to, t, 0)).isEqualTo(crosses ? Crossing.YES : Crossing.NO);
            assertThat(Crossing.of(to, from, t, 0)).isEqualTo(crosses ? Crossing.YES : Crossing.NO);
        }
        assertThat(inside).isBetween(200, 1500);
    }

    private static boolean flat(double[] t, double[] way) {
        return Math.abs(volume(t, 0, t, 3, t, 6, at(t[0] + way[0], t[1] + way[1], t[2] + way[2]))
                        .doubleValue())
                < 1;
    }

    /** Corners on a coarse grid, so that lines through sides and corners are frequent, seen from afar, so that rounding matters. */
    @Test
    void anAnswerOtherThanUnsureIsThatOfExactArithmetic() {
        SplittableRandom random = new SplittableRandom(7);
        Map<Crossing, Integer> seen = new EnumMap<>(Crossing.class);
        for (int i = 0; i < 3000; i++) {
            double[] t = new double[9];
            double[] from = new double[3];
            double[] to = new double[3];
            for (int k = 0; k < 9; k++) {
                t[k] = random.nextInt(4) / 3.0;
            }
            for (int k = 0; k < 3; k++) {
                from[k] = random.nextInt(-3, 4) / 3.0;
                to[k] = random.nextInt(-3, 4) / 3.0;
            }
            Crossing found = Crossing.of(from, to, t, 0);
            seen.merge(found, 1, Integer::sum);
            if (found != Crossing.UNSURE) {
                assertThat(found == Crossing.YES).isEqualTo(crosses(from, to, t));
            }
        }
        assertThat(seen)
                .hasSize(3)
                .allSatisfy((found, count) -> assertThat(count).isGreaterThan(20));
    }

    private static boolean crosses(double[] from, double[] to, double[] t) {
        int start = volume(t, 0, t, 3, t, 6, from).signum();
        int end = volume(t, 0, t, 3, t, 6, to).signum();
        int ab = volume(t, 0, t, 3, from, 0, to).signum();
        int bc = volume(t, 3, t, 6, from, 0, to).signum();
        int ca = volume(t, 6, t, 0, from, 0, to).signum();
        return start * end < 0 && ab != 0 && ab == bc && bc == ca;
    }

    /** Six times the volume of a, b, c, d without rounding. */
    private static BigDecimal volume(double[] a, int i, double[] b, int j, double[] c, int k, double[] d) {
        BigDecimal[] u = less(a, i, d);
        BigDecimal[] v = less(b, j, d);
        BigDecimal[] w = less(c, k, d);
        BigDecimal sum = BigDecimal.ZERO;
        for (int m = 0; m < 3; m++) {
            int n = (m + 1) % 3;
            int o = (m + 2) % 3;
            sum = sum.add(u[m].multiply(v[n].multiply(w[o]).subtract(v[o].multiply(w[n]))));
        }
        return sum;
    }

    private static BigDecimal[] less(double[] a, int i, double[] d) {
        BigDecimal[] difference = new BigDecimal[3];
        for (int m = 0; m < 3; m++) {
            difference[m] = new BigDecimal(a[i + m]).subtract(new BigDecimal(d[m]));
        }
        return difference;
    }
}
