package darkrim.shadow;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.SplittableRandom;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Test;

class SpaceTriangleTest {
    private static final SpaceTriangle RIGHT = triangle(at(1, 1, 2), at(4, 1, 2), at(1, 5, 2));

    private static Vector3D at(double x, double y, double z) {
        return Vector3D.of(x, y, z);
    }

    private static SpaceTriangle triangle(Vector3D a, Vector3D b, Vector3D c) {
        return new SpaceTriangle(a, b, c, b.subtract(a).cross(c.subtract(a)).normalize());
    }

    @Test
    void aRightTriangleOfSidesThreeFourFive() {
        assertThat(RIGHT.area()).isEqualTo(6);
        assertThat(RIGHT.size()).isEqualTo(5);
        assertThat(triangle(RIGHT.b(), RIGHT.c(), RIGHT.a()).size()).isEqualTo(5);
        assertThat(triangle(RIGHT.c(), RIGHT.a(), RIGHT.b()).size()).isEqualTo(5);
        assertThat(RIGHT.corner(0)).isEqualTo(RIGHT.a());
        assertThat(RIGHT.corner(1)).isEqualTo(RIGHT.b());
        assertThat(RIGHT.corner(2)).isEqualTo(RIGHT.c());
        // In another plane: half the diagonal cross-section of a cube.
        assertThat(triangle(at(1, 0, 0), at(0, 1, 0), at(0, 0, 1)).area()).isCloseTo(Math.sqrt(3) / 2, within(1e-15));
    }

    @Test
    void bothHalvesHaveHalfTheAreaAndTheMiddleOfTheLongestSide() {
        SpaceTriangle[] turned = {
            RIGHT, triangle(RIGHT.b(), RIGHT.c(), RIGHT.a()), triangle(RIGHT.c(), RIGHT.a(), RIGHT.b())
        };
        for (SpaceTriangle each : turned) {
            for (int which = 0; which < 2; which++) {
                SpaceTriangle half = each.half(which);
                assertThat(half.area()).isCloseTo(3, within(1e-12));
                boolean middle = false;
                for (int i = 0; i < 3; i++) {
                    middle |= half.corner(i).distance(at(2.5, 3, 2)) < 1e-12;
                }
                assertThat(middle).isTrue();
                assertThat(half.normal()).isEqualTo(each.normal());
            }
            assertThat(each.half(0)).isNotEqualTo(each.half(1));
        }
    }

    @Test
    void noTwoPointsAreNearerThanTheDistance() {
        SplittableRandom random = new SplittableRandom(9);
        int apart = 0;
        for (int i = 0; i < 200; i++) {
            SpaceTriangle one = any(random, 0);
            SpaceTriangle other = any(random, random.nextDouble(0, 12));
            double bound = one.distance(other);
            assertThat(bound).isCloseTo(other.distance(one), within(1e-12));
            Vector3D point = inside(other, random);
            double ofPoint = one.distanceFrom(point);
            apart += bound > 0 ? 1 : 0;
            for (int k = 0; k < 20; k++) {
                Vector3D here = inside(one, random);
                assertThat(here.distance(inside(other, random))).isGreaterThanOrEqualTo(bound);
                assertThat(here.distance(point)).isGreaterThanOrEqualTo(ofPoint);
            }
        }
        assertThat(apart).isGreaterThan(100);
    }

    private static SpaceTriangle any(SplittableRandom random, double away) {
        Vector3D centre = at(random.nextDouble(-1, 1), random.nextDouble(-1, 1), random.nextDouble(-1, 1))
                .normalize()
                .multiply(away);
        return triangle(near(centre, random), near(centre, random), near(centre, random));
    }

    private static Vector3D near(Vector3D centre, SplittableRandom random) {
        return centre.add(at(random.nextDouble(-2, 2), random.nextDouble(-2, 2), random.nextDouble(-2, 2)));
    }

    private static Vector3D inside(SpaceTriangle t, SplittableRandom random) {
        double root = Math.sqrt(random.nextDouble());
        double s = random.nextDouble();
        return t.a().multiply(1 - root).add(t.b().multiply(root * (1 - s))).add(t.c().multiply(root * s));
    }

    @Test
    void theDistanceOfBoxesIsExactAlongEachAxisAndThatOfBallsAcross() {
        for (Vector3D way :
                new Vector3D[] {at(9, 0, 0), at(-9, 0, 0), at(0, 9, 0), at(0, -9, 0), at(0, 0, 9), at(0, 0, -9)}) {
            SpaceTriangle moved =
                    triangle(RIGHT.a().add(way), RIGHT.b().add(way), RIGHT.c().add(way));
            double expected = 9 - (way.getX() != 0 ? 3 : way.getY() != 0 ? 4 : 0);
            assertThat(RIGHT.distance(moved)).isCloseTo(expected, within(1e-9));
        }
        Vector3D diagonal = at(13, 14, 0);
        SpaceTriangle moved = triangle(
                RIGHT.a().add(diagonal), RIGHT.b().add(diagonal), RIGHT.c().add(diagonal));
        // The boxes are apart by 10 along x and y.
        assertThat(RIGHT.distance(moved)).isCloseTo(Math.sqrt(200), within(1e-9));
        assertThat(RIGHT.distance(RIGHT)).isZero();
        // The ball about the middle of a and b, (2.5, 1), through c: radius sqrt(2.25 + 16).
        assertThat(RIGHT.distanceFrom(at(2.5, 1, 12))).isCloseTo(10 - Math.sqrt(18.25), within(1e-9));
        assertThat(RIGHT.distanceFrom(at(2.5, 1, 3))).isZero();
    }

    /** Above a plane that lies anyhow: the height is the distance of the farthest corner from it. */
    @Test
    void theGreatestHeightIsSquareToThePlane() {
        SplittableRandom random = new SplittableRandom(31);
        for (int i = 0; i < 50; i++) {
            SpaceTriangle base = any(random, 0);
            double[] heights = {random.nextDouble(1, 3), random.nextDouble(1, 3), random.nextDouble(4, 9)};
            Vector3D[] corners = new Vector3D[3];
            for (int k = 0; k < 3; k++) {
                corners[(k + i) % 3] = inside(base, random).add(base.normal().multiply(heights[k]));
            }
            SpaceTriangle above = new SpaceTriangle(corners[0], corners[1], corners[2], base.normal());
            assertThat(base.greatestHeightOf(above)).isCloseTo(heights[2], within(1e-9));
        }
    }

    @Test
    void theGreatestHeightIsThatOfTheHighestCorner() {
        SpaceTriangle other = triangle(at(0, 0, 1), at(9, 9, 7), at(3, -4, -5));
        assertThat(RIGHT.greatestHeightOf(other)).isCloseTo(5, within(1e-12));
        assertThat(RIGHT.greatestHeightOf(triangle(at(0, 0, 7), at(9, 9, 1), at(3, -4, -5))))
                .isCloseTo(5, within(1e-12));
        assertThat(RIGHT.greatestHeightOf(triangle(at(0, 0, 1), at(9, 9, -3), at(3, -4, 7))))
                .isCloseTo(5, within(1e-12));
        assertThat(RIGHT.greatestHeightOf(RIGHT)).isZero();
        SpaceTriangle below = triangle(at(0, 0, 1), at(9, 9, 1), at(3, -4, 0));
        assertThat(RIGHT.greatestHeightOf(below)).isZero();
        // A hair above counts once it is more than rounding.
        assertThat(RIGHT.greatestHeightOf(triangle(at(0, 0, 2 + 1e-9), at(9, 9, 1), at(3, -4, 0))))
                .isCloseTo(1e-9, within(1e-14));
        // A triangle that is not quite flat against its normal: any of its corners may be the lowest.
        SpaceTriangle tilted = new SpaceTriangle(at(0, 0, 3), at(1, 0, 1), at(0, 1, 2), Vector3D.Unit.PLUS_Z);
        assertThat(tilted.greatestHeightOf(triangle(at(0, 0, 7), at(9, 9, 1), at(3, -4, -5))))
                .isCloseTo(6, within(1e-12));
    }
}
