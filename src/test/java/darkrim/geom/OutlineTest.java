package darkrim.geom;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import darkrim.ChiSquare;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import java.util.function.ToIntFunction;
import org.apache.commons.geometry.euclidean.twod.Vector2D;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Areas, borders and even samples of rings and polygons. */
class OutlineTest {
    private static final List<Vector2D> ELL = List.of(at(0, 0), at(4, 0), at(4, 1), at(1, 1), at(1, 3), at(0, 3));

    @Test
    void areasAreThoseOfSchoolBooks() {
        assertThat(Ring.disc(2).area()).isCloseTo(4 * Math.PI, within(1e-14));
        assertThat(new Ring(5, 3).area()).isCloseTo(16 * Math.PI, within(1e-13));
        // A hair-thin ring: pi (R - r)(R + r), not the difference of two squares.
        assertThat(new Ring(1, 1 - 0x1p-50).area()).isCloseTo(Math.PI * 0x1p-49, within(1e-29));
        assertThat(Polygon.rectangle(3, 4).area()).isEqualTo(12);
        assertThat(Polygon.of(ELL).area()).isEqualTo(6);
    }

    @Test
    void areaAndSampleDoNotDependOnTheSenseOfTheCorners() {
        List<Vector2D> backward = new ArrayList<>(ELL);
        java.util.Collections.reverse(backward);
        assertThat(Polygon.of(backward).area()).isEqualTo(6);
        assertThat(Polygon.signedArea(backward)).isEqualTo(-6);
        assertThat(Polygon.signedArea(Polygon.of(backward).corners())).isEqualTo(6);
    }

    @Test
    void areaKeepsItsDigitsFarFromTheOrigin() {
        List<Vector2D> far = ELL.stream().map(c -> c.add(at(1e8, -1e8))).toList();
        assertThat(Polygon.of(far).area()).isEqualTo(6);
    }

    @ParameterizedTest
    @CsvSource({
        "0.5, 0.5, true",
        "3.9, 0.9, true",
        "0.5, 2.9, true",
        "2, 2, false",
        "-0.1, 1, false",
        "4.1, 0.5, false",
        "0, 0, true",
        "4, 0.5, true",
        "1, 2, true",
        "1, 1, true",
        "2, 1, true",
        "0, 3, true",
        "0.5, 3.0000001, false"
    })
    void theBorderBelongsToAPolygonAndTheNotchDoesNot(double u, double v, boolean inside) {
        assertThat(Polygon.of(ELL).contains(u, v)).isEqualTo(inside);
    }

    @ParameterizedTest
    @CsvSource({
        "5, 0, true",
        "3, 0, true",
        "0, -3, true",
        "2.999, 0, false",
        "0, 5.001, false",
        "3, 4, true",
        "0, 0, false"
    })
    void bothBordersBelongToARing(double u, double v, boolean inside) {
        assertThat(new Ring(5, 3).contains(u, v)).isEqualTo(inside);
    }

    @Test
    void reachIsTheFarthestPoint() {
        assertThat(new Ring(5, 3).reach()).isEqualTo(5);
        assertThat(Polygon.of(ELL).reach()).isCloseTo(Math.sqrt(17), within(1e-15));
    }

    /** Chi-square at level 1e-4 with a fixed seed: 1 right program in 10,000 seeds would fail. */
    @Test
    void equalAreasOfTheSquareGoToEqualAreasOfARing() {
        // 4 rings of equal area, (3^2 + 4 i)^(1/2), times 8 sectors.
        requireEven(new Ring(5, 3), 32, p -> {
            int ring = (int) Math.min(3, (p[0] * p[0] + p[1] * p[1] - 9) / 4);
            int sector = (int) Math.min(7, (Math.atan2(p[1], p[0]) + Math.PI) / (Math.PI / 4));
            return 8 * ring + sector;
        });
    }

    /** Likewise. */
    @Test
    void equalAreasOfTheSquareGoToEqualAreasOfAPolygon() {
        // The L is 24 squares of side 1/2: 16 in the foot, 8 in the leg above it.
        requireEven(Polygon.of(ELL), 24, p -> {
            int column = (int) Math.min(p[1] < 1 ? 7 : 1, p[0] * 2);
            int row = (int) Math.min(5, p[1] * 2);
            return row < 2 ? 8 * row + column : 16 + 2 * (row - 2) + column;
        });
    }

    /** Not only on average: each quarter of the square, for a single triangle, is sampled into a quarter of the area. */
    @Test
    void theCornersOfTheSquareStayInTheOutline() {
        for (Outline outline : List.of(new Ring(5, 3), Polygon.rectangle(2, 6))) {
            double[] p = new double[2];
            for (double s : new double[] {0, 0.5, 1}) {
                for (double t : new double[] {0, 0.5, 1}) {
                    outline.place(s, t, p);
                    assertThat(Math.hypot(p[0], p[1])).isLessThanOrEqualTo(outline.reach() * (1 + 1e-15));
                    assertThat(outline.contains(p[0] * (1 + 1e-15), p[1] * (1 + 1e-15))
                                    || outline.contains(p[0] * (1 - 1e-15), p[1] * (1 - 1e-15)))
                            .isTrue();
                }
            }
        }
    }

    @ParameterizedTest
    @CsvSource({"0, 0", "-1, 0", "1, 1", "1, 2", "1, -0.1", "NaN, 0", "1, NaN", "Infinity, 0"})
    void aRingThatIsNoneIsRefused(double radius, double hole) {
        assertThatThrownBy(() -> new Ring(radius, hole)).isInstanceOf(IllegalArgumentException.class);
    }

    @Test
    void outlinesThatAreNotSimpleAreRefused() {
        refuse(at(0, 0), at(1, 1), at(1, 0), at(0, 1)); // crosses itself
        refuse(at(0, 0), at(2, 0), at(2, 2), at(1, 0), at(0, 2)); // touches itself
        refuse(at(0, 0), at(1, 0)); // too few
        refuse(at(0, 0), at(1, 0), at(2, 0)); // nothing inside
        refuse(at(0, 0), at(1, 0), at(1, 0), at(0, 1)); // a corner twice
        refuse(at(0, 0), at(1, 0), at(Double.NaN, 1));
        refuse(at(0, 0), at(1, 0), at(0, Double.POSITIVE_INFINITY));
    }

    private static void refuse(Vector2D... corners) {
        assertThatThrownBy(() -> Polygon.of(List.of(corners)))
                .as(List.of(corners).toString())
                .isInstanceOf(IllegalArgumentException.class);
    }

    private static void requireEven(Outline outline, int cells, ToIntFunction<double[]> cellOf) {
        SplittableRandom random = new SplittableRandom(5);
        long[] counts = new long[cells];
        double[] p = new double[2];
        for (int i = 0; i < 200_000; i++) {
            outline.place(random.nextDouble(), random.nextDouble(), p);
            counts[cellOf.applyAsInt(p)]++;
        }
        ChiSquare.requireEven(counts);
    }

    private static Vector2D at(double u, double v) {
        return Vector2D.of(u, v);
    }
}
