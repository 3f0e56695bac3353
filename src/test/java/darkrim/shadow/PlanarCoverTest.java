package darkrim.shadow;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class PlanarCoverTest {
    private static final double GAP = 1e-6;

    private final PlanarCover cover = new PlanarCover(GAP);

    private void loop(int group, double... corners) {
        for (int i = 0; i < corners.length; i += 2) {
            int next = (i + 2) % corners.length;
            cover.add(corners[i], corners[i + 1], corners[next], corners[next + 1], group);
        }
    }

    private void rectangle(int group, double u0, double u1, double v0, double v1) {
        loop(group, u0, v0, u1, v0, u1, v1, u0, v1);
    }

    private static double[] cell(double u0, double u1, double v0, double v1) {
        return new double[] {u0, v0, u1, v0, u1, v1, u0, v1};
    }

    @Test
    void aLoopCoversWhatLiesInIt() {
        assertThat(cover.isEmpty()).isTrue();
        assertThat(cover.covers(cell(0, 1, 0, 1))).isFalse();
        rectangle(0, 0, 4, 0, 3);
        assertThat(cover.isEmpty()).isFalse();
        assertThat(cover.covers(cell(1, 3, 1, 2))).isTrue();
        assertThat(cover.covers(cell(0, 4, 0, 3))).isTrue();
        // To each side of it, far and just.
        for (double out : new double[] {0.5, 1e-5}) {
            assertThat(cover.covers(cell(-out, 3, 1, 2))).isFalse();
            assertThat(cover.covers(cell(1, 4 + out, 1, 2))).isFalse();
            assertThat(cover.covers(cell(1, 3, -out, 2))).isFalse();
            assertThat(cover.covers(cell(1, 3, 1, 3 + out))).isFalse();
        }
        assertThat(cover.covers(cell(5, 6, 1, 2))).isFalse();
        assertThat(cover.covers(cell(1, 2, 4, 5))).isFalse();
    }

    @Test
    void aHoleIsNotCovered() {
        rectangle(0, 0, 9, 0, 9);
        loop(0, 4, 4, 4, 5, 5, 5, 5, 4);
        assertThat(cover.covers(cell(1, 3, 1, 8))).isTrue();
        assertThat(cover.covers(cell(5, 8, 1, 8))).isTrue();
        assertThat(cover.covers(cell(4.2, 4.8, 4.2, 4.8))).isFalse();
        assertThat(cover.covers(cell(1, 8, 1, 8))).isFalse();
        assertThat(cover.covers(cell(4.9, 8, 4.9, 8))).isFalse();
    }

    @Test
    void aSmallRoundHoleOfManyShortSidesIsFound() {
        rectangle(0, 0, 9, 0, 9);
        int n = 40;
        double[] hole = new double[2 * n];
        for (int i = 0; i < n; i++) {
            hole[2 * i] = 4.3 + 1e-3 * Math.cos(-2 * Math.PI * i / n);
            hole[2 * i + 1] = 4.6 + 1e-3 * Math.sin(-2 * Math.PI * i / n);
        }
        loop(0, hole);
        assertThat(cover.covers(cell(1, 8, 1, 8))).isFalse();
        assertThat(cover.covers(cell(1, 4.2, 1, 8))).isTrue();
    }

    @Test
    void twiceAroundCoversAndSoDoesTheOtherSenseButOnceEachWayInOneGroupDoesNot() {
        rectangle(0, 0, 4, 0, 4);
        rectangle(0, 1, 3, 1, 3);
        assertThat(cover.covers(cell(0, 4, 0, 4))).isTrue();
        // A solid turned inside out, by itself.
        loop(1, 5, 0, 5, 4, 9, 4, 9, 0);
        assertThat(cover.covers(cell(5, 9, 0, 4))).isTrue();
        // There and back in one group is nothing; in two groups it is two solids.
        rectangle(2, 10, 14, 0, 4);
        loop(2, 10, 0, 10, 4, 14, 4, 14, 0);
        assertThat(cover.covers(cell(11, 13, 1, 3))).isFalse();
        rectangle(3, 20, 24, 0, 4);
        loop(4, 20, 0, 20, 4, 24, 4, 24, 0);
        assertThat(cover.covers(cell(21, 23, 1, 3))).isTrue();
    }

    @Test
    void severalGroupsCoverTogetherWhatNoneCoversAlone() {
        rectangle(0, 0, 2, 0, 4);
        rectangle(1, 2, 4, 0, 3);
        rectangle(2, 1.5, 5, 3, 4);
        assertThat(cover.covers(cell(0, 4, 0, 4))).isTrue();
        assertThat(cover.covers(cell(0, 5, 0, 4))).isFalse();
    }

    /** Cells narrower than three quarters of the gap need not be covered, as long as all of them together are no wider. */
    @ParameterizedTest
    @CsvSource({"0.7e-6, 0, true", "0.8e-6, 0, false", "0.3e-6, 0.4e-6, true", "0.4e-6, 0.4e-6, false", "1e-3, 0, false"
    })
    void aSlitNarrowerThanTheGapIsPassedOver(double first, double second, boolean covered) {
        rectangle(0, 0, 2, 0, 9);
        rectangle(1, 2 + first, 4, 0, 9);
        rectangle(2, 4 + second, 9, 0, 9);
        assertThat(cover.covers(cell(1, 8, 1, 8))).isEqualTo(covered);
        // What is passed over in one question counts in that one only.
        assertThat(cover.covers(cell(1, 8, 1, 8))).isEqualTo(covered);
    }

    @ParameterizedTest
    @CsvSource({"0.7e-6, true", "0.8e-6, false"})
    void aSlitThatRunsAslantIsAsWideAsItIsSquareToItself(double slit, boolean covered) {
        // Sides along u + v = 8 and u + v = 8 + slit sqrt 2.
        double off = slit * Math.sqrt(2);
        loop(0, -20, -20, 28, -20, -20, 28);
        loop(1, 28 + off, -20, 40, -20, 40, 40, -20, 40, -20, 28 + off);
        assertThat(cover.covers(cell(1, 8, 1, 8))).isEqualTo(covered);
    }

    @Test
    void aTriangleIsAskedAboutAsWell() {
        loop(0, 0, 0, 6, 0, 0, 6);
        assertThat(cover.covers(new double[] {0.5, 0.5, 5, 0.5, 0.5, 5})).isTrue();
        assertThat(cover.covers(new double[] {0.5, 0.5, 5.6, 0.5, 0.5, 5})).isFalse();
        assertThat(cover.covers(cell(0.5, 3.2, 0.5, 3.2))).isFalse();
        assertThat(cover.covers(cell(0.5, 2.9, 0.5, 2.9))).isTrue();
    }
}
