package darkrim.geom;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.apache.commons.geometry.euclidean.twod.Vector2D;
import org.junit.jupiter.api.Test;

/**
 * Triangles fill the region, use its corners only, and share sides whole: every side lies between two triangles or is a side of the
 * outline, never a part of one.
 */
class TriangulationTest {
    @Test
    void aPlateWithOpeningsIsFilledWithoutSeams() {
        List<List<Vector2D>> holes = new ArrayList<>();
        for (int i = 0; i < 4; i++) {
            for (int j = 0; j < 4; j++) {
                holes.add(i == j ? circle(20 * i, 20 * j, 8, 64) : square(20 * i, 20 * j, 8));
            }
        }
        requireConformal(square(30, 30, 45), holes);
    }

    @Test
    void holesInEitherSenseAreLeftOut() {
        List<Vector2D> hole = new ArrayList<>(square(0, 0, 1));
        java.util.Collections.reverse(hole);
        requireConformal(square(0, 0, 3), List.of(hole));
    }

    @Test
    void cornersInTheMiddleOfASideAreKept() {
        // A neighbour that has a corner there would otherwise meet the side between its ends.
        List<Vector2D> outer = List.of(at(0, 0), at(1, 0), at(2, 0), at(2, 2), at(1, 2), at(0, 2), at(0, 1));
        requireConformal(outer, List.of());
    }

    @Test
    void negativeZeroIsZero() {
        requireConformal(List.of(at(-0.0, 0), at(1, -0.0), at(1, 1), at(0.0, 1)), List.of());
    }

    @Test
    void stars() {
        SplittableRandom random = new SplittableRandom(7);
        for (int i = 0; i < 200; i++) {
            int corners = 3 + random.nextInt(60);
            List<Vector2D> star = IntStream.range(0, corners)
                    .mapToObj(k -> {
                        double angle = 2 * Math.PI * k / corners;
                        double radius = 1 + 20 * random.nextDouble();
                        return at(radius * Math.cos(angle), radius * Math.sin(angle));
                    })
                    .toList();
            requireConformal(star, corners > 8 ? List.of(circle(0, 0, 0.3, 12)) : List.of());
        }
    }

    @Test
    void turnedPlatesWithHairThinLands() {
        SplittableRandom random = new SplittableRandom(11);
        for (int i = 0; i < 100; i++) {
            double turn = Math.PI * random.nextDouble();
            double land = Math.pow(10, -5 * random.nextDouble());
            requireConformal(turned(square(0, 0, 10), turn), List.of(turned(square(0, 0, 10 - land), turn)));
        }
    }

    @Test
    void regionsThatAreNotSimpleAreRefused() {
        List<Vector2D> plate = square(0, 0, 3);
        refuse(plate, List.of(square(3, 0, 1))); // through the border
        refuse(plate, List.of(square(9, 0, 1))); // outside
        refuse(plate, List.of(square(2, 0, 1))); // along the border
        refuse(plate, List.of(List.of(at(3, 0), at(1, 1), at(1, -1)))); // a corner on the border
        refuse(plate, List.of(List.of(at(3, 3), at(1, 2), at(2, 1)))); // a corner on a corner
        refuse(plate, List.of(square(0, 0, 1), square(1, 0, 1))); // holes overlap
        refuse(plate, List.of(square(-1, 0, 1), square(1, 0, 1))); // holes touch
        refuse(plate, List.of(square(0, 0, 2), square(0, 0, 1))); // a hole in a hole
        refuse(List.of(at(0, 0), at(1, 1), at(1, 0), at(0, 1)), List.of());
    }

    private static void refuse(List<Vector2D> outer, List<List<Vector2D>> holes) {
        assertThatThrownBy(() -> Triangulation.of(outer, holes)).isInstanceOf(IllegalArgumentException.class);
    }

    private static void requireConformal(List<Vector2D> outer, List<List<Vector2D>> holes) {
        List<Vector2D> corners = new ArrayList<>(outer);
        Map<List<Integer>, Integer> sides = new HashMap<>();
        addSides(sides, 0, outer, true);
        double area = Polygon.signedArea(outer);
        for (List<Vector2D> hole : holes) {
            double signed = Polygon.signedArea(hole);
            addSides(sides, corners.size(), hole, signed < 0);
            corners.addAll(hole);
            area -= Math.abs(signed);
        }
        double sum = 0;
        Map<List<Integer>, Integer> seen = new HashMap<>();
        for (int[] triangle : Triangulation.of(outer, holes)) {
            double signed = Polygon.signedArea(
                    List.of(corners.get(triangle[0]), corners.get(triangle[1]), corners.get(triangle[2])));
            assertThat(signed).isPositive();
            sum += signed;
            for (int k = 0; k < 3; k++) {
                seen.merge(List.of(triangle[k], triangle[(k + 1) % 3]), 1, Integer::sum);
            }
        }
        assertThat(sum).isCloseTo(area, within(1e-12 * Math.abs(Polygon.signedArea(outer))));
        assertThat(seen.values()).as("each directed side once").allMatch(times -> times == 1);
        Map<List<Integer>, Integer> border = new HashMap<>();
        seen.keySet().stream()
                .filter(side -> !seen.containsKey(List.of(side.get(1), side.get(0))))
                .forEach(side -> border.put(side, 1));
        assertThat(border).isEqualTo(sides);
    }

    private static void addSides(Map<List<Integer>, Integer> sides, int first, List<Vector2D> chain, boolean forward) {
        int n = chain.size();
        for (int i = 0; i < n; i++) {
            int a = first + i;
            int b = first + (i + 1) % n;
            sides.put(forward ? List.of(a, b) : List.of(b, a), 1);
        }
    }

    private static List<Vector2D> turned(List<Vector2D> chain, double angle) {
        return chain.stream()
                .map(c -> at(
                        c.getX() * Math.cos(angle) - c.getY() * Math.sin(angle),
                        c.getX() * Math.sin(angle) + c.getY() * Math.cos(angle)))
                .toList();
    }

    private static List<Vector2D> square(double u, double v, double half) {
        return List.of(at(u - half, v - half), at(u + half, v - half), at(u + half, v + half), at(u - half, v + half));
    }

    private static List<Vector2D> circle(double u, double v, double radius, int corners) {
        return IntStream.range(0, corners)
                .mapToObj(k -> {
                    double angle = 2 * Math.PI * k / corners;
                    return at(u + radius * Math.cos(angle), v + radius * Math.sin(angle));
                })
                .toList();
    }

    private static Vector2D at(double u, double v) {
        return Vector2D.of(u, v);
    }
}
