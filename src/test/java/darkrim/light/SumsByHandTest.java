package darkrim.light;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import darkrim.layout.Requirement.LightClass;
import darkrim.light.Obstruction.Blocker;
import darkrim.light.Reflector.Part;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Test;

/** Means, errors and books of few samples, by hand. */
class SumsByHandTest {
    private static final double TINY = 1e-14;
    private static final Reflector WALL = new Reflector(2, Part.DIFFUSE);
    private static final Reflector MIRROR = new Reflector(2, Part.MIRROR);
    private static final Reflector LOBE = new Reflector(0, Part.LOBE);

    private static Estimate of(double... values) {
        Accumulator sum = new Accumulator();
        for (double value : values) {
            sum.add(value);
        }
        return sum.estimate(9);
    }

    private static void same(Estimate found, Estimate expected) {
        assertThat(found.samples()).isEqualTo(expected.samples());
        assertThat(found.mean()).isCloseTo(expected.mean(), within(TINY));
        assertThat(found.variance()).isCloseTo(expected.variance(), within(TINY));
        assertThat(found.largest()).isEqualTo(expected.largest());
        assertThat(found.together()).isEqualTo(expected.together());
    }

    @Test
    void theMeanAndVarianceOfFewSamplesAreThoseOfTheFormula() {
        // 1, 2, 4, 5: mean 3, squares 4 + 1 + 1 + 4 = 10 over n - 1 = 3.
        same(of(1, 2, 4, 5), new Estimate(4, 3, 10 / 3.0, 9));
        assertThat(of(1, 2, 4, 5).standardError()).isCloseTo(Math.sqrt(10 / 3.0 / 4), within(TINY));
        same(of(7), new Estimate(1, 7, 0, 9));
        assertThat(of(7).standardError()).isInfinite();
        assertThat(of(1, 2).standardError()).isFinite();
        same(of(), Estimate.none(9));
    }

    @Test
    void twoSetsOfSamplesTogetherAreOne() {
        same(of(1, 2, 4).and(of(5, 9, 2, 2)), of(1, 2, 4, 5, 9, 2, 2));
        same(of(1, 2, 4).and(Estimate.none(5)), of(1, 2, 4));
        same(Estimate.none(5).and(of(1, 2, 4)), of(1, 2, 4));
        same(of(1).and(of(3)), of(1, 3));
        assertThat(new Estimate(4, 1, 0, 3).and(new Estimate(4, 1, 0, 5)).largest())
                .isEqualTo(5);
        same(of(1, 2, 4).times(3), new Estimate(3, 7, 21, 27));
        // Groups of two: 1, 3 | 5, 7 | 2, 2 have the means 2, 6, 2; twice the variance of these, 16 / 3.
        Estimate one = new Estimate(4, 4, 2 * 8, 9, 2);
        Estimate other = new Estimate(2, 2, 0, 9, 2);
        same(one.and(other), new Estimate(6, 10 / 3.0, 2 * 16 / 3.0, 9, 2));
        assertThat(one.independent()).isEqualTo(2);
    }

    @Test
    void whatCameByAReflectorIsAMeanOverAllSamplesAndItsAngleIsWeighted() {
        ReflectorSums sums = new ReflectorSums(7);
        sums.add(2, Part.DIFFUSE, 1, 0.5);
        sums.add(2, Part.DIFFUSE, 3, 1);
        sums.add(2, Part.MIRROR, 0, 1);
        for (int surface = 0; surface < 7; surface++) {
            sums.add(surface, Part.LOBE, 2, 0.25);
            sums.add(surface, Part.MIRROR, surface == 2 ? 0 : 1, 0.75);
        }
        Map<Reflector, Estimate> by = sums.estimates(4, 9);
        assertThat(by).hasSize(1 + 7 + 6).doesNotContainKey(MIRROR);
        same(by.get(WALL), of(1, 3, 0, 0));
        same(by.get(LOBE), of(2, 0, 0, 0));
        assertThat(sums.incidences().get(WALL)).isCloseTo((0.5 + 3) / 4, within(TINY));
        assertThat(sums.incidences().get(LOBE)).isCloseTo(0.25, within(TINY));
        assertThat(sums.estimates(1, 9).get(LOBE).variance()).isZero();
        assertThat(sums.estimates(2, 9).get(LOBE).variance()).isCloseTo(2, within(TINY));
    }

    @Test
    void aCellCountsWhatFallsInItAsOftenAsThereAreCells() {
        MapSums map = new MapSums(3);
        map.add(0, 1);
        map.add(2, 2);
        map.add(2, 1);
        map.add(1, 0);
        map.add(-1, 8);
        List<Estimate> cells = map.estimates(4, 9);
        same(cells.get(0), new Estimate(4, 0.75, 9 / 4.0, 27));
        same(cells.get(1), new Estimate(4, 0, 0, 27));
        Estimate two = of(6, 3, 0, 0);
        same(cells.get(2), new Estimate(4, two.mean(), two.variance(), 27));
        assertThat(map.estimates(1, 9).get(0).variance()).isZero();
        assertThat(map.estimates(2, 9).get(0).variance()).isCloseTo(4.5, within(TINY));
    }

    private static Tally tally(Estimate all, Map<Reflector, Estimate> by, Map<Reflector, Double> cosines) {
        return new Tally(
                LightClass.ONCE_REFLECTED,
                all,
                of(1, 0),
                List.of(all, of(2)),
                new TreeMap<>(by),
                new TreeMap<>(cosines),
                Optional.empty());
    }

    @Test
    void talliesAddUpWithZerosForWhatOneOfThemNeverMet() {
        Tally one = tally(of(1, 2, 0), Map.of(WALL, of(1, 2, 0)), Map.of(WALL, 0.5));
        Tally two = tally(of(4, 6), Map.of(WALL, of(3, 6), LOBE, of(1, 0)), Map.of(WALL, 1.0, LOBE, 0.25));
        for (Tally both : List.of(one.and(two), two.and(one))) {
            same(both.irradiance(), of(1, 2, 0, 4, 6));
            same(both.pupilSeen(), of(1, 0, 1, 0));
            same(both.cells().get(0), of(1, 2, 0, 4, 6));
            same(both.cells().get(1), of(2, 2));
            assertThat(both.by()).hasSize(2);
            same(both.by().get(WALL), of(1, 2, 0, 3, 6));
            same(both.by().get(LOBE), of(0, 0, 0, 1, 0));
            // Weighted by what came: 3 at 0.5 and 9 at 1.
            assertThat(both.incidences().get(WALL)).isCloseTo((3 * 0.5 + 9) / 12, within(TINY));
            assertThat(both.incidences().get(LOBE)).isEqualTo(0.25);
        }
        Tally.ExampleRay ray = new Tally.ExampleRay(Vector3D.ZERO, Vector3D.Unit.PLUS_X);
        Tally shown = new Tally(
                LightClass.DIRECT, of(1), of(1), List.of(), new TreeMap<>(), new TreeMap<>(), Optional.of(ray));
        Tally none = Tally.none(LightClass.DIRECT, 9, 0, 9);
        assertThat(shown.and(none).example()).contains(ray);
        assertThat(none.and(shown).example()).contains(ray);
        assertThat(Tally.none(LightClass.DIRECT, 4, 2, 5).cells()).containsExactly(Estimate.none(5), Estimate.none(5));
        assertThat(Tally.none(LightClass.DIRECT, 4, 2, 5).irradiance()).isEqualTo(Estimate.none(4));
    }

    @Test
    void starsAddUpWithZerosForWhatOneOfThemNeverMet() {
        StarTally one =
                new StarTally(List.of(of(1, 0)), List.of(of(0, 2)), of(0, 2), new TreeMap<>(Map.of(WALL, of(0, 2))));
        StarTally two = new StarTally(List.of(of(1)), List.of(of(3)), of(3), new TreeMap<>(Map.of(MIRROR, of(3))));
        for (StarTally both : List.of(one.and(two), two.and(one))) {
            assertThat(both.samples()).isEqualTo(3);
            same(both.direct().get(0), of(1, 0, 1));
            same(both.once().get(0), of(0, 2, 3));
            same(both.total(), of(0, 2, 3));
            same(both.by().get(WALL), of(0, 2, 0));
            same(both.by().get(MIRROR), of(0, 0, 3));
        }
        assertThat(StarTally.none(2).direct()).hasSize(2);
        assertThat(StarTally.none(2).once()).hasSize(2);
        assertThat(StarTally.none(2).samples()).isZero();
    }

    @Test
    void aPathThatOneSampleFindsTwiceCountsAsTheSum() {
        PathSums sums = new PathSums();
        sums.next();
        int wall = sums.child(sums.root(), 2, Part.DIFFUSE);
        int both = sums.child(wall, 0, Part.LOBE);
        sums.add(both, 1);
        sums.add(both, 2);
        sums.next();
        sums.add(both, 4);
        sums.next();
        sums.add(wall, 6);
        assertThat(sums.child(sums.root(), 2, Part.DIFFUSE)).isEqualTo(wall);
        assertThat(sums.child(sums.root(), 2, Part.MIRROR)).isNotEqualTo(wall);
        Map<ReflectionPath, Estimate> by = sums.estimates();
        assertThat(by.keySet())
                .containsExactly(new ReflectionPath(List.of(WALL)), new ReflectionPath(List.of(LOBE, WALL)));
        Estimate twice = of(3, 4, 0);
        same(
                by.get(new ReflectionPath(List.of(LOBE, WALL))),
                new Estimate(3, twice.mean(), twice.variance(), Double.POSITIVE_INFINITY));
        Estimate once = of(0, 0, 6);
        same(
                by.get(new ReflectionPath(List.of(WALL))),
                new Estimate(3, once.mean(), once.variance(), Double.POSITIVE_INFINITY));
    }

    @Test
    void eachOfManyPathsKeepsItsOwnSum() {
        PathSums sums = new PathSums();
        sums.next();
        Part[] parts = Part.values();
        for (int round = 0; round < 2; round++) {
            for (int i = 0; i < 300; i++) {
                int first = sums.child(sums.root(), i, parts[i % 3]);
                sums.add(sums.child(first, 300 - i, parts[(i + 1) % 3]), i + 1);
            }
        }
        Map<ReflectionPath, Estimate> by = sums.estimates();
        assertThat(by).hasSize(300);
        for (int i = 0; i < 300; i++) {
            Reflector last = new Reflector(i, parts[i % 3]);
            Reflector first = new Reflector(300 - i, parts[(i + 1) % 3]);
            Estimate one = by.get(new ReflectionPath(List.of(first, last)));
            assertThat(one.mean()).isEqualTo(2.0 * (i + 1));
            assertThat(one.variance()).isZero();
        }
    }

    @Test
    void pathsAreInOrderOfLengthThenOfWhatLightMeets() {
        ReflectionPath wall = new ReflectionPath(List.of(WALL));
        ReflectionPath lobe = new ReflectionPath(List.of(LOBE));
        ReflectionPath glint = new ReflectionPath(List.of(LOBE, MIRROR));
        ReflectionPath mixed = new ReflectionPath(List.of(LOBE, WALL));
        assertThat(List.of(glint, wall, mixed, lobe).stream().sorted()).containsExactly(lobe, wall, mixed, glint);
        assertThat(glint.isGlint()).isTrue();
        assertThat(mixed.isGlint()).isFalse();
        assertThat(mixed.last()).isEqualTo(WALL);
        assertThat(mixed.order()).isEqualTo(2);
        assertThat(wall.compareTo(new ReflectionPath(List.of(WALL)))).isZero();
        assertThatThrownBy(() -> new ReflectionPath(List.of())).isInstanceOf(IllegalArgumentException.class);
    }

    @Test
    void pathTalliesAddUpWithZerosForWhatOneOfThemNeverMet() {
        ReflectionPath wall = new ReflectionPath(List.of(WALL));
        ReflectionPath lobe = new ReflectionPath(List.of(LOBE));
        PathTally one = new PathTally(
                List.of(of(1, 2), of(3, 4)), List.of(of(0, 0), of(3, 4)), new TreeMap<>(Map.of(wall, of(3, 4))));
        PathTally two = new PathTally(List.of(of(5), of(6)), List.of(of(0), of(6)), new TreeMap<>(Map.of(lobe, of(6))));
        for (PathTally both : List.of(one.and(two), two.and(one))) {
            assertThat(both.samples()).isEqualTo(3);
            same(both.orders().get(1), of(3, 4, 6));
            same(both.reflected(), of(3, 4, 6));
            same(withoutLargest(both.of(wall)), of(3, 4, 0));
            same(withoutLargest(both.of(lobe)), of(0, 0, 6));
        }
        PathTally none = PathTally.none(1);
        assertThat(none.and(one)).isSameAs(one);
        assertThat(one.and(none)).isSameAs(one);
        assertThat(none.orders()).hasSize(2);
        assertThat(one.of(lobe)).isEqualTo(new Estimate(2, 0, 0, Double.POSITIVE_INFINITY));
    }

    private static Estimate withoutLargest(Estimate estimate) {
        return new Estimate(estimate.samples(), estimate.mean(), estimate.variance(), 9);
    }

    @Test
    void aTracedPathIsReadFromThePupilToTheReceiver() {
        TracedPath path = new TracedPath(3);
        path.place(0, 7, -1, 0, 1, 2);
        path.place(1, 8, 2, 3, 4, 5);
        path.part(1, Part.MIRROR);
        path.place(2, 9, 0, 6, 7, 8);
        path.part(2, Part.LOBE);
        path.end(2, 9, 10, 11);
        assertThat(path.order()).isEqualTo(2);
        for (int point = 0; point <= 3; point++) {
            for (int k = 0; k < 3; k++) {
                assertThat(path.at(point, k)).isEqualTo(3 * (3 - point) + k);
            }
        }
        assertThat(path.facet(0)).isEqualTo(-1);
        assertThat(path.facet(1)).isEqualTo(9);
        assertThat(path.facet(3)).isEqualTo(7);
        assertThat(path.surface(1)).isEqualTo(0);
        assertThat(path.surface(2)).isEqualTo(2);
        assertThat(path.path()).isEqualTo(new ReflectionPath(List.of(LOBE, MIRROR)));
    }

    @Test
    void linesThatAreStoppedAddUpAsShares() {
        Blocker near = new Blocker(1, false);
        Blocker inside = new Blocker(1, true);
        Obstruction one = new Obstruction(6, 1, 2, 1, new TreeMap<>(Map.of(near, 2L)));
        Obstruction two = new Obstruction(4, 3, 0, 0, new TreeMap<>(Map.of(inside, 1L)));
        Obstruction both = Obstruction.none().and(one).and(two);
        assertThat(both).isEqualTo(new Obstruction(10, 4, 2, 1, new TreeMap<>(Map.of(near, 2L, inside, 1L))));
        assertThat(one.and(one).by()).containsEntry(near, 4L);
        // Four ones and six zeros: the variance is 0.4 * 6 / 9.
        assertThat(both.share(4)).isEqualTo(new Estimate(10, 0.4, 0.4 * 6 / 9, 1));
        assertThat(new Obstruction(1, 1, 0, 0, new TreeMap<>()).share(1)).isEqualTo(new Estimate(1, 1, 0, 1));
        assertThat(new Obstruction(2, 1, 0, 0, new TreeMap<>()).share(1).variance())
                .isEqualTo(0.5);
        assertThat(Obstruction.none().share(0)).isEqualTo(Estimate.none(1));
        assertThat(List.of(inside, near, new Blocker(0, true)).stream().sorted())
                .containsExactly(new Blocker(0, true), near, inside);
    }
}
