package darkrim.shadow;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

class PlanarPolygonsTest {
    /** From 5 to 9 and from 7 to 10. */
    private static final double[] RECTANGLE = {5, 7, 9, 7, 9, 10, 5, 10};

    @Test
    void theAreaIsThatOfTheFormulaAndItsSignThatOfTheSense() {
        assertThat(PlanarPolygons.area(RECTANGLE)).isEqualTo(12);
        assertThat(PlanarPolygons.area(new double[] {5, 10, 9, 10, 9, 7, 5, 7})).isEqualTo(-12);
        assertThat(PlanarPolygons.area(new double[] {1, 1, 4, 2, 2, 5})).isEqualTo(5.5);
        assertThat(PlanarPolygons.area(regular(6, 2))).isCloseTo(6 * Math.sqrt(3), within(1e-12));
    }

    @Test
    void aClipKeepsTheSideBelowTheLine() {
        assertThat(PlanarPolygons.clip(RECTANGLE, 1, 0, 6)).containsExactly(5, 7, 6, 7, 6, 10, 5, 10);
        assertThat(PlanarPolygons.clip(RECTANGLE, -1, 0, -6)).containsExactly(6, 7, 9, 7, 9, 10, 6, 10);
        // u + v <= 13 cuts the corners at (9, 7), (9, 10) and (5, 10) off; left is a triangle with legs of 1.
        double[] corner = PlanarPolygons.clip(RECTANGLE, 1, 1, 13);
        assertThat(PlanarPolygons.area(corner)).isEqualTo(0.5);
        assertThat(corner).hasSize(6);
        // u + v <= 18 takes the triangle with legs of 1 off: five corners.
        double[] five = PlanarPolygons.clip(RECTANGLE, 1, 1, 18);
        assertThat(PlanarPolygons.area(five)).isEqualTo(11.5);
        assertThat(five).hasSize(10);
    }

    @Test
    void aLineAlongASideCutsNothingOffAndOneBeyondTheOtherSideLeavesNothing() {
        assertThat(PlanarPolygons.clip(RECTANGLE, 1, 0, 9)).isSameAs(RECTANGLE);
        assertThat(PlanarPolygons.clip(RECTANGLE, 1, 0, 9.5)).isSameAs(RECTANGLE);
        assertThat(PlanarPolygons.clip(RECTANGLE, 1, 0, 5)).isEmpty();
        assertThat(PlanarPolygons.clip(RECTANGLE, 1, 0, 4)).isEmpty();
    }

    @Test
    void bothHalvesOfACutShareTheirCornersAndLoseNoArea() {
        double[] seven = regular(7, 3);
        for (double c = -2.9; c < 2.9; c += 0.3) {
            double[] one = PlanarPolygons.clip(seven, 0.6, 0.8, c);
            double[] other = PlanarPolygons.clip(seven, -0.6, -0.8, -c);
            double sum = (one.length == 0 ? 0 : PlanarPolygons.area(one))
                    + (other.length == 0 ? 0 : PlanarPolygons.area(other));
            assertThat(sum).isCloseTo(PlanarPolygons.area(seven), within(1e-12));
            if (one.length > 0 && other.length > 0) {
                assertThat(shared(one, other)).isEqualTo(2);
            }
        }
    }

    private static int shared(double[] one, double[] other) {
        int count = 0;
        for (int i = 0; i < one.length; i += 2) {
            for (int k = 0; k < other.length; k += 2) {
                count += one[i] == other[k] && one[i + 1] == other[k + 1] ? 1 : 0;
            }
        }
        return count;
    }

    @Test
    void theHullOfAGridIsItsFourCorners() {
        // A few points, and so many that inner ones are left out first.
        for (int n : new int[] {3, 12}) {
            double[] points = new double[2 * n * n];
            for (int i = 0; i < n * n; i++) {
                points[2 * i] = 3 + i % n;
                points[2 * i + 1] = -2 + Math.floorDiv(i, n);
            }
            double[] hull = PlanarPolygons.hull(points);
            assertThat(hull).containsExactly(3, -2, n + 2, -2, n + 2, n - 3, 3, n - 3);
        }
    }

    @Test
    void noPointOfACircleIsLeftOutOfAHullAndPointsWithinAre() {
        for (int n : new int[] {9, 100}) {
            double[] circle = regular(n, 5);
            double[] points = new double[4 * n];
            for (int i = 0; i < n; i++) {
                points[4 * i] = circle[2 * i] + 20;
                points[4 * i + 1] = circle[2 * i + 1] - 7;
                // Nearer to the centre than any side: these lie within.
                points[4 * i + 2] = 20 + 0.9 * circle[2 * i];
                points[4 * i + 3] = -7 + 0.9 * circle[2 * i + 1];
            }
            double[] hull = PlanarPolygons.hull(points);
            assertThat(hull).hasSize(2 * n);
            assertThat(PlanarPolygons.area(hull)).isCloseTo(n * 12.5 * Math.sin(2 * Math.PI / n), within(1e-9));
        }
    }

    @Test
    void theHullOfALineIsItsEndsAndOfAPointThePoint() {
        assertThat(PlanarPolygons.hull(new double[] {1, 1, 3, 3, 2, 2, 0, 0})).containsExactly(0, 0, 3, 3);
        assertThat(PlanarPolygons.hull(new double[] {4, 5})).containsExactly(4, 5);
    }

    /** Corners on a circle, turned so that no side lies along an axis. */
    private static double[] regular(int n, double radius) {
        double[] corners = new double[2 * n];
        for (int i = 0; i < n; i++) {
            corners[2 * i] = radius * Math.cos(0.1 + 2 * Math.PI * i / n);
            corners[2 * i + 1] = radius * Math.sin(0.1 + 2 * Math.PI * i / n);
        }
        return corners;
    }
}
