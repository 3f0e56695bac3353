package darkrim.trace;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

/** Starts of rays keep to their side of the facet and clear of its edges. */
class StartPointsTest {
    private final double[] start = new double[3];

    @Test
    void aStartKeepsItsClearanceFromEveryEdgeAndItsLiftFromTheFacet() {
        SplittableRandom random = new SplittableRandom(103);
        for (int i = 0; i < 20_000; i++) {
            double[] p = Soup.STREWN.facet(random);
            FacetTree tree = Soup.tree(p);
            StartPoints starts = new StartPoints(p, tree);
            double a = i % 3 == 0 ? 1 : random.nextDouble();
            double b = i % 3 == 1 ? 0 : (1 - a) * random.nextDouble();
            boolean front = random.nextBoolean();
            starts.place(0, a, b, front, start);
            double[] n = Turn.unit(Soup.normal(p));
            double height = Turn.dot(n, Turn.minus(start, Arrays.copyOf(p, 3)));
            // 9 roundings of the bound by the start, and as many by this reckoning of its height.
            double roundings = 18 * 0x1p-53 * Soup.BOUND;
            assertThat(height).isCloseTo(front ? starts.lift() : -starts.lift(), within(roundings));
            for (int k = 0; k < 3; k++) {
                assertThat(fromSide(p, n, k)).isGreaterThan(starts.clearance() - roundings);
            }
        }
    }

    @Test
    void awayFromTheEdgesAStartIsWhereItsWeightsSay() {
        double[] p = {0, 0, 5, 30, 0, 5, 0, 40, 5};
        StartPoints starts = new StartPoints(p, Soup.tree(p));
        starts.place(0, 0.2, 0.3, true, start);
        assertThat(start).containsExactly(new double[] {9, 20, 5}, within(2 * starts.clearance()));
        assertThat(start[2]).isGreaterThan(5);
        starts.place(0, 0.2, 0.3, false, start);
        assertThat(start[2]).isLessThan(5);
    }

    @Test
    void aFacetSmallerThanTheClearanceIsLeftFromItsCentre() {
        double[] p = {0, 0, 0, 3e-10, 0, 0, 0, 4e-10, 0};
        StartPoints starts = new StartPoints(p, Soup.tree(p));
        starts.place(0, 1, 0, true, start);
        // The inscribed circle of a 3-4-5 triangle has radius 1 and its centre at (1, 1).
        assertThat(start[0]).isCloseTo(1e-10, within(1e-24));
        assertThat(start[1]).isCloseTo(1e-10, within(1e-24));
    }

    private double fromSide(double[] p, double[] n, int k) {
        double[] a = Arrays.copyOfRange(p, 3 * k, 3 * k + 3);
        int next = 3 * ((k + 1) % 3);
        double[] b = Arrays.copyOfRange(p, next, next + 3);
        double[] side = Turn.minus(b, a);
        return Turn.dot(n, Turn.cross(side, Turn.minus(start, a))) / Turn.length(side);
    }
}
