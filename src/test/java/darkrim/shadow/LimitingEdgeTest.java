package darkrim.shadow;

import static org.assertj.core.api.Assertions.assertThat;

import darkrim.geom.Frame;
import darkrim.geom.Outline;
import darkrim.geom.Polygon;
import darkrim.geom.Ring;
import darkrim.scene.Beam;
import darkrim.scene.FieldLimit;
import darkrim.scene.Finish;
import darkrim.scene.Scene;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.apache.commons.geometry.euclidean.twod.Vector2D;
import org.junit.jupiter.api.Test;

/** The distance of two stretches is held against a search over both: it is a convex function of the places on them. */
class LimitingEdgeTest {
    private static final Vector3D UP = Vector3D.Unit.PLUS_Z;

    private final SplittableRandom random = new SplittableRandom(31);

    private Vector3D point(double low, double high) {
        return Vector3D.of(random.nextDouble(-4, 4), random.nextDouble(-4, 4), random.nextDouble(low, high));
    }

    private static Scene scene(Optional<FieldLimit> limit, Vector3D[] one, Vector3D[] other) {
        TestParts parts = new TestParts();
        parts.builder().sheet("one", Finish.ABSORBER, "one/back", Finish.ABSORBER, TestParts.NOWHERE);
        parts.builder().triangle("one", one[0], one[1], one[2]);
        parts.builder().sheet("other", Finish.ABSORBER, "other/back", Finish.ABSORBER, TestParts.NOWHERE);
        parts.builder().triangle("other", other[0], other[1], other[2]);
        return parts.build(new Beam(TestParts.pupilAt(10, Ring.disc(4)), limit, OptionalDouble.empty()));
    }

    private static String limiting(Scene scene, WitnessRay line) {
        return new LimitingEdge(scene, FacetEdges.of(scene), Tolerance.of(scene.bound(), 1e-6)).of(line, UP);
    }

    @Test
    void theNearerOfTwoTrianglesIsNamed() {
        int[] named = new int[2];
        for (int i = 0; i < 300; i++) {
            WitnessRay line = new WitnessRay(point(10, 10.0001), point(0, 0.0001), "");
            Vector3D[] one = {point(0.5, 9.5), point(0.5, 9.5), point(0.5, 9.5)};
            Vector3D[] other = {point(0.5, 9.5), point(0.5, 9.5), point(0.5, 9.5)};
            double ofOne = distance(line, one);
            double ofOther = distance(line, other);
            if (Math.abs(ofOne - ofOther) > 1e-4) {
                named[ofOne < ofOther ? 0 : 1]++;
                assertThat(limiting(scene(Optional.empty(), one, other), line))
                        .as("%d: %s %s", i, ofOne, ofOther)
                        .isEqualTo(ofOne < ofOther ? "one" : "other");
            }
        }
        assertThat(Math.min(named[0], named[1])).isGreaterThan(100);
    }

    private static double distance(WitnessRay line, Vector3D[] triangle) {
        double least = Double.POSITIVE_INFINITY;
        for (int k = 0; k < 3; k++) {
            Vector3D a = triangle[k];
            Vector3D b = triangle[(k + 1) % 3];
            double low = 0;
            double high = 1;
            for (int i = 0; i < 60; i++) {
                double first = low + (high - low) / 3;
                double second = high - (high - low) / 3;
                if (fromStretch(a.lerp(b, first), line) < fromStretch(a.lerp(b, second), line)) {
                    high = second;
                } else {
                    low = first;
                }
            }
            least = Math.min(least, fromStretch(a.lerp(b, low), line));
        }
        return least;
    }

    private static double fromStretch(Vector3D point, WitnessRay line) {
        Vector3D way = line.to().subtract(line.from());
        double share = point.subtract(line.from()).dot(way) / way.normSq();
        return point.distance(line.from().lerp(line.to(), Math.max(0, Math.min(1, share))));
    }

    /** The line crosses the limit at (1, -0.5); the nearest edge of a part is 2 away. */
    @Test
    void theFieldLimitIsNamedWhereItsRimIsNearerThanAnyEdge() {
        WitnessRay line = new WitnessRay(Vector3D.of(1, -0.5, 10), Vector3D.of(1, -0.5, 0), "");
        Vector3D[] part = {Vector3D.of(3, -0.5, 4), Vector3D.of(6, 0, 4), Vector3D.of(6, -1, 5)};
        Vector3D[] farther = {Vector3D.of(1, 5, 4), Vector3D.of(2, 6, 4), Vector3D.of(0, 6, 5)};
        double out = Math.hypot(1, 0.5);
        assertField(Ring.disc(out + 1.9), line, part, farther, true);
        assertField(Ring.disc(out + 2.1), line, part, farther, false);
        assertField(Ring.disc(out + 90), line, part, farther, false);
        assertField(new Ring(90, out - 0.1), line, part, farther, true);
        assertField(Polygon.rectangle(2 * 2.9, 90), line, part, farther, true);
        assertField(Polygon.rectangle(2 * 3.1, 90), line, part, farther, false);
        assertField(Polygon.rectangle(90, 2 * 2.4), line, part, farther, true);
        assertField(Polygon.rectangle(90, 2 * 2.6), line, part, farther, false);
        // A triangle of which the corner (2.3, 1.2) is nearest: 1.3 and 1.7 away, 2.14 in all.
        Polygon corner = Polygon.of(List.of(Vector2D.of(2.3, 1.2), Vector2D.of(30, 1.3), Vector2D.of(2.4, 30)));
        assertField(corner, line, part, farther, false);
        Polygon nearer = Polygon.of(List.of(Vector2D.of(2.3, 0.9), Vector2D.of(30, 1), Vector2D.of(2.4, 30)));
        assertField(nearer, line, part, farther, true);
    }

    private static void assertField(
            Outline outline, WitnessRay line, Vector3D[] part, Vector3D[] farther, boolean field) {
        FieldLimit limit = new FieldLimit(outline, Frame.about(Vector3D.of(0, 0, 5), UP));
        assertThat(limiting(scene(Optional.of(limit), part, farther), line)).isEqualTo(field ? "field limit" : "one");
        // A line that runs level never crosses it.
        WitnessRay level = new WitnessRay(Vector3D.of(1, -0.5, 4), Vector3D.of(1, 3, 4), "");
        assertThat(limiting(scene(Optional.of(limit), part, farther), level)).isNotEqualTo("field limit");
    }
}
