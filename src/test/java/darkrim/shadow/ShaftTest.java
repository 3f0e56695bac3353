package darkrim.shadow;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import darkrim.geom.Frame;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class ShaftTest {
    private static final double MARGIN = 1e-9;
    private static final Tolerance TOLERANCE = new Tolerance(MARGIN, 4 * MARGIN, 256 * MARGIN);

    private static FlatPiece square(double half, double z, boolean up) {
        Frame frame = Frame.about(Vector3D.of(0, 0, z), up ? Vector3D.Unit.PLUS_Z : Vector3D.Unit.MINUS_Z);
        return FlatPiece.of(frame, new double[] {-half, -half, half, -half, half, half, -half, half});
    }

    /** A square of half side 2 at z = 10 that shines down on one of half side 1 at z = 0. */
    private static Shaft shaft(double radius) {
        return new Shaft(square(2, 10, false), square(1, 0, true), radius, TOLERANCE);
    }

    private static double[] edge(Vector3D a, Vector3D b) {
        return new double[] {77, a.getX(), a.getY(), a.getZ(), b.getX(), b.getY(), b.getZ()};
    }

    private static Vector3D at(double x, double y, double z) {
        return Vector3D.of(x, y, z);
    }

    /** The side of the shaft passes x = 1.5 at z = 5, aslant by 1 in 10. */
    @ParameterizedTest
    @ValueSource(doubles = {-1e-3, -1e-8, 0, 0.5e-9, 0.98e-9, 1.03e-9, 1e-8, 1e-3})
    void anEdgeBesideAnySideIsApartOnceItIsFartherThanTheMargin(double off) {
        double x = 1.5 + off * Math.sqrt(1.01);
        Shaft shaft = shaft(0);
        Vector3D[][] edges = {
            {at(x, -9, 5), at(x, 9, 5)}, {at(-x, -9, 5), at(-x, 9, 5)}, {at(-9, x, 5), at(9, x, 5)},
            {at(9, -x, 5), at(-9, -x, 5)}, {at(x, 0.3, 5), at(x + 3, 0.3, 5)}, {at(x + 3, 0.3, 5), at(x, 0.3, 5)}
        };
        for (Vector3D[] each : edges) {
            assertThat(shaft.apartFromEdge(edge(each[0], each[1]), 1)).isEqualTo(off > MARGIN);
        }
    }

    /** Both its ends lie beyond some side, but not beyond the same one: across the corner at (1.5, 1.5). */
    @ParameterizedTest
    @ValueSource(doubles = {-1e-3, -1e-8, 0, 0.5e-9, 2e-9, 1e-8, 1e-3})
    void anEdgeAcrossACornerIsApart(double off) {
        for (double su = -1; su <= 1; su += 2) {
            for (double sv = -1; sv <= 1; sv += 2) {
                double near = 1.5 + off;
                Vector3D a = at(su * (near + 3), sv * (near - 3), 5);
                Vector3D b = at(su * (near - 3), sv * (near + 3), 5);
                assertThat(shaft(0).apartFromEdge(edge(a, b), 1)).isEqualTo(off > MARGIN);
                assertThat(shaft(0).apartFromEdge(edge(b, a), 1)).isEqualTo(off > MARGIN);
                // A triangle with that side is apart if its third corner lies beyond it, or not.
                Vector3D far = at(su * 5, sv * 5, 5.5);
                assertThat(shaft(0).apartFromTriangle(triangle(a, b, far))).isEqualTo(off > MARGIN);
                assertThat(shaft(0).apartFromTriangle(triangle(b, far, a))).isEqualTo(off > MARGIN);
                assertThat(shaft(0).apartFromTriangle(triangle(far, a, b))).isEqualTo(off > MARGIN);
                assertThat(shaft(0).apartFromTriangle(triangle(a, b, at(0, 0, 5))))
                        .isFalse();
            }
        }
    }

    private static double[] triangle(Vector3D a, Vector3D b, Vector3D c) {
        return new double[] {a.getX(), a.getY(), a.getZ(), b.getX(), b.getY(), b.getZ(), c.getX(), c.getY(), c.getZ()};
    }

    @ParameterizedTest
    @ValueSource(doubles = {-1e-3, 0, 0.9e-9, 1.1e-9, 1e-3})
    void aWideTriangleAboveThePupilOrBelowTheFaceIsApart(double off) {
        for (double z : new double[] {10 + off, -off}) {
            double[] wide = triangle(at(-50, -50, z), at(50, -50, z), at(0, 80, z));
            assertThat(shaft(0).apartFromTriangle(wide)).isEqualTo(off > MARGIN);
        }
    }

    /** Its plane alone tells it apart: tilted over the pupil's edge or under the face's, with corners on all sides. */
    @Test
    void aTiltedTriangleOverAnEdgeOfThePupilIsApartByItsOwnPlane() {
        for (int turn = 0; turn < 12; turn++) {
            double angle = turn * Math.PI / 6 + 0.1;
            Vector3D down = at(Math.cos(angle), Math.sin(angle), 0);
            Vector3D across = at(-Math.sin(angle), Math.cos(angle), 0);
            // How far the square of half side 2 reaches that way; the plane falls by 0.3 a millimetre.
            for (boolean above : new boolean[] {true, false}) {
                double half = above ? 2 : 1;
                double reach = half * (Math.abs(down.getX()) + Math.abs(down.getY()));
                for (double off : new double[] {-1e-4, 1e-4}) {
                    double sign = above ? 1 : -1;
                    double top = (above ? 10 : 0) + sign * (0.3 * reach + off);
                    Vector3D a = down.multiply(9).add(across.multiply(-20)).add(at(0, 0, top - sign * 0.3 * 9));
                    Vector3D b = down.multiply(9).add(across.multiply(20)).add(at(0, 0, top - sign * 0.3 * 9));
                    Vector3D c = down.multiply(-20).add(at(0, 0, top + sign * 0.3 * 20));
                    assertThat(shaft(0).apartFromTriangle(triangle(a, b, c))).isEqualTo(off > 0);
                    assertThat(shaft(0).apartFromTriangle(triangle(a, c, b))).isEqualTo(off > 0);
                    assertThat(shaft(0).apartFromTriangle(triangle(c, a, b))).isEqualTo(off > 0);
                }
            }
        }
    }

    @Test
    void aPlaneIsApartFromTheShaftOnlyBeyondIt() {
        Shaft shaft = shaft(0);
        double[] point = {3, 0, 10};
        // Along x the hull reaches to 2.
        assertThat(shaft.support(1, 0, 0, 1)).isEqualTo(2);
        assertThat(shaft.support(-1, 0, 0, 1)).isEqualTo(2);
        assertThat(shaft.support(0, 0, -1, 1)).isZero();
        assertThat(shaft.separates(1, 0, 0, point, 1)).isTrue();
        assertThat(shaft.separates(-1, 0, 0, point, 1)).isFalse();
        assertThat(shaft.separates(0, 0, 0, point, 1)).isFalse();
        double[] two = {3, 0, 10, 1.9, 0, 10};
        assertThat(shaft.separates(1, 0, 0, two, 1)).isTrue();
        assertThat(shaft.separates(1, 0, 0, two, 2)).isFalse();
        // The margin grows with the length of the direction.
        double[] near = {2 + 1.5e-9, 0, 10};
        assertThat(shaft.separates(1, 0, 0, near, 1)).isTrue();
        assertThat(shaft.separates(8, 0, 0, near, 1)).isTrue();
        double[] nearer = {2 + 0.5e-9, 0, 10};
        assertThat(shaft.separates(8, 0, 0, nearer, 1)).isFalse();
        assertThat(shaft.separates(0.125, 0, 0, nearer, 1)).isFalse();
        // A grown face: 1 + 3 along x, and twice that for a direction twice as long.
        assertThat(shaft(3).support(1, 0, 0, 1)).isEqualTo(4);
        assertThat(shaft(3).support(2, 0, 0, 2)).isEqualTo(8);
        assertThat(shaft(3).radius()).isEqualTo(3);
    }

    @Test
    void theSideNearestToAnEdgeIsTheOneItSinksIntoLeast() {
        double[][] outward = {{1, 0}, {-1, 0}, {0, 1}, {0, -1}};
        for (double[] way : outward) {
            Vector3D inner = at(1.45 * way[0], 1.45 * way[1], 5);
            Shaft shaft = shaft(0);
            Vector3D side =
                    shaft.side(shaft.nearestSide(edge(inner, inner.add(at(0.02 * way[1], 0.02 * way[0], 0))), 1));
            Vector3D expected = at(10 * way[0], 10 * way[1], -1).normalize();
            assertThat(side.distance(expected)).isLessThan(1e-12);
        }
    }

    /**
     * Two bodies are apart if and only if they are along the normal of a face of one of them or the cross product of two of their edges
     * (separating axis theorem): here all planes through three corners and all pairs of corners.
     */
    @Test
    void whatIsApartIsFoundToBeSoAndNothingElse() {
        SplittableRandom random = new SplittableRandom(3);
        int[] apart = new int[4];
        for (int i = 0; i < 400; i++) {
            FlatPiece pupil = piece(random, 10);
            FlatPiece face = piece(random, 0);
            Shaft shaft = new Shaft(pupil, face, 0, TOLERANCE);
            List<Vector3D> hull = points(pupil.space());
            hull.addAll(points(face.space()));
            Vector3D a = at(random.nextDouble(-6, 6), random.nextDouble(-6, 6), random.nextDouble(-2, 12));
            Vector3D b = at(random.nextDouble(-6, 6), random.nextDouble(-6, 6), random.nextDouble(-2, 12));
            Vector3D c = at(random.nextDouble(-6, 6), random.nextDouble(-6, 6), random.nextDouble(-2, 12));
            double ofEdge = separation(hull, List.of(a, b));
            double ofTriangle = separation(hull, List.of(a, b, c));
            if (Math.abs(ofEdge) > 1e-6) {
                apart[ofEdge > 0 ? 0 : 1]++;
                assertThat(shaft.apartFromEdge(edge(a, b), 1)).isEqualTo(ofEdge > 0);
            }
            if (Math.abs(ofTriangle) > 1e-6) {
                apart[ofTriangle > 0 ? 2 : 3]++;
                assertThat(shaft.apartFromTriangle(triangle(a, b, c))).isEqualTo(ofTriangle > 0);
            }
        }
        assertThat(Arrays.stream(apart).min().orElseThrow()).isGreaterThan(60);
    }

    /** A square or a triangle about the axis, tilted by up to 0.3. */
    private static FlatPiece piece(SplittableRandom random, double z) {
        Vector3D normal = at(random.nextDouble(-0.3, 0.3), random.nextDouble(-0.3, 0.3), z > 0 ? -1 : 1);
        Frame frame = Frame.about(at(random.nextDouble(-3, 3), random.nextDouble(-3, 3), z), normal.normalize());
        double size = random.nextDouble(0.5, 3);
        return FlatPiece.of(
                frame,
                random.nextBoolean()
                        ? new double[] {-size, -size, size, -size, size, size, -size, size}
                        : new double[] {-size, -size, size, -size, 0.2, size});
    }

    private static List<Vector3D> points(double[] space) {
        List<Vector3D> points = new ArrayList<>();
        for (int i = 0; i < space.length; i += 3) {
            points.add(at(space[i], space[i + 1], space[i + 2]));
        }
        return points;
    }

    /** The most by which some direction tells the two apart, mm; negative where none does. */
    private static double separation(List<Vector3D> hull, List<Vector3D> flat) {
        List<Vector3D> directions = new ArrayList<>();
        for (int i = 0; i < hull.size(); i++) {
            for (int k = 0; k < i; k++) {
                Vector3D side = hull.get(i).subtract(hull.get(k));
                for (int m = 0; m < k; m++) {
                    directions.add(side.cross(hull.get(m).subtract(hull.get(k))));
                }
                for (int m = 0; m < flat.size(); m++) {
                    directions.add(side.cross(flat.get((m + 1) % flat.size()).subtract(flat.get(m))));
                }
            }
        }
        if (flat.size() == 3) {
            directions.add(flat.get(1).subtract(flat.get(0)).cross(flat.get(2).subtract(flat.get(0))));
        }
        double most = Double.NEGATIVE_INFINITY;
        for (Vector3D direction : directions) {
            if (direction.norm() > 1e-9) {
                most = Math.max(most, gap(hull, flat, direction.normalize()));
                most = Math.max(most, gap(hull, flat, direction.normalize().negate()));
            }
        }
        return most;
    }

    private static double gap(List<Vector3D> hull, List<Vector3D> flat, Vector3D n) {
        return flat.stream().mapToDouble(n::dot).min().orElseThrow()
                - hull.stream().mapToDouble(n::dot).max().orElseThrow();
    }

    /** Across y both are the same: a disc of the radius about (1, 0) and the point (2, 10), and the tangent to both on the outside. */
    @ParameterizedTest
    @ValueSource(doubles = {0.05, 0.5, 2})
    void aFaceThatIsGrownWidensTheShaftByTheTangentOfItsBall(double radius) {
        double away = Math.sqrt(101);
        double sine = radius / away;
        double cosine = Math.sqrt(1 - sine * sine);
        // n0 = (10, -1) / |.| is square to the side; turned toward (1, 10) / |.| by the angle of the tangent.
        double nx = (10 * cosine + sine) / away;
        double nz = (-cosine + 10 * sine) / away;
        double offset = 2 * nx + 10 * nz;
        for (double z : new double[] {2, 5, 8}) {
            double x = (offset - nz * z) / nx;
            for (double off : new double[] {-1e-6, 1e-6}) {
                for (double side = -1; side <= 1; side += 2) {
                    Vector3D a = at(side * (x + off), -0.1, z);
                    Vector3D b = at(side * (x + off), 0.1, z);
                    assertThat(shaft(radius).apartFromEdge(edge(a, b), 1)).isEqualTo(off > 0);
                    Vector3D c = at(0.1, side * (x + off), z);
                    Vector3D d = at(-0.1, side * (x + off), z);
                    assertThat(shaft(radius).apartFromEdge(edge(c, d), 1)).isEqualTo(off > 0);
                }
            }
        }
    }

    /** Below the face the ball reaches down to its radius, and beside it as far as the distance from the corner. */
    @Test
    void theBallAboutACornerOfAGrownFaceIsPartOfTheShaft() {
        double radius = 0.5;
        Vector3D corner = at(1, 1, 0);
        for (Vector3D way : List.of(at(1, 1, -1), at(2, 1, -2), at(0, 0, -1), at(1, 3, -2))) {
            Vector3D out = way.normalize();
            Vector3D across = out.cross(at(1, -2, 0.3)).normalize();
            for (double off : new double[] {-1e-3, 1e-3}) {
                Vector3D touching = corner.add(out.multiply(radius + off));
                double[] ends = edge(touching.add(across), touching.subtract(across));
                assertThat(shaft(radius).apartFromEdge(ends, 1)).isEqualTo(off > 0);
            }
        }
    }

    @Test
    void anEdgeWithoutLengthIsJudgedByTheSidesAlone() {
        Vector3D out = at(1.6, 0, 5);
        Vector3D in = at(1.4, 0, 5);
        assertThat(shaft(0).apartFromEdge(edge(out, out), 1)).isTrue();
        assertThat(shaft(0).apartFromEdge(edge(in, in), 1)).isFalse();
        assertThat(shaft(0).pupil()).hasSize(12);
        assertThat(shaft(0).face()[2]).isCloseTo(0, within(0.0));
    }
}
