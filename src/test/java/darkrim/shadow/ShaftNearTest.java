package darkrim.shadow;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import darkrim.geom.Frame;
import java.util.ArrayList;
import java.util.List;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.apache.commons.geometry.euclidean.threed.rotation.QuaternionRotation;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What only just passes a shaft, turned in space so that no component of a normal is 0: there a wrong sign of one shows. */
class ShaftNearTest {
    private static final double MARGIN = 1e-9;
    private static final Tolerance TOLERANCE = new Tolerance(MARGIN, 4 * MARGIN, 256 * MARGIN);

    private static final double FAR = 50;

    /** A turn and a shift of everything. */
    private record Placed(QuaternionRotation turn) {
        static Placed by(double degrees) {
            return new Placed(QuaternionRotation.fromAxisAngle(Vector3D.of(1, -2, 0.7), Math.toRadians(degrees)));
        }

        Vector3D at(double x, double y, double z) {
            return turn.apply(Vector3D.of(x, y, z)).add(Vector3D.of(3, -5, -20));
        }

        FlatPiece square(double half, double x, double z, boolean up) {
            Frame frame =
                    Frame.of(at(x, 0, z), turn.apply(Vector3D.Unit.PLUS_X), turn.apply(Vector3D.of(0, up ? 1 : -1, 0)));
            return FlatPiece.of(frame, new double[] {-half, -half, half, -half, half, half, -half, half});
        }

        Shaft shaft(double radius, Tolerance tolerance) {
            return new Shaft(square(2, 0, 10, false), square(1, 0.5, 0, true), radius, tolerance);
        }
    }

    /** Each plane of the hull through a side of one piece touches the other piece too; the ends are those of the pieces. */
    @ParameterizedTest
    @ValueSource(doubles = {0, 0.3})
    void thePlanesOfTheHullTouchBothPieces(double radius) {
        for (double degrees = 7; degrees < 360; degrees += 40) {
            Placed placed = Placed.by(degrees);
            Shaft shaft = placed.shaft(radius, TOLERANCE);
            Vector3D up = placed.turn.apply(Vector3D.Unit.PLUS_Z);
            assertThat(shaft.side(0).distance(up)).isLessThan(1e-12);
            assertThat(shaft.side(1).distance(up.negate())).isLessThan(1e-12);
            for (int i = 2; i < 10; i++) {
                Vector3D normal = shaft.side(i);
                assertThat(normal.norm()).isCloseTo(1, within(1e-12));
                assertThat(most(shaft.pupil(), normal)).isCloseTo(most(shaft.face(), normal) + radius, within(1e-9));
            }
        }
    }

    private static double most(double[] points, Vector3D normal) {
        double most = Double.NEGATIVE_INFINITY;
        for (int i = 0; i < points.length; i += 3) {
            most = Math.max(most, normal.dot(Vector3D.of(points[i], points[i + 1], points[i + 2])));
        }
        return most;
    }

    /** An edge of the hull and a direction in which no point of the hull lies farther out than that edge. */
    private record Ridge(Vector3D from, Vector3D to, Vector3D outward) {}

    private static List<Ridge> ridges(Placed placed) {
        double[][] corners = {{-1, -1}, {1, -1}, {1, 1}, {-1, 1}};
        List<Ridge> ridges = new ArrayList<>();
        Vector3D middle = placed.at(0.3, 0, 5);
        for (int i = 0; i < 4; i++) {
            double[] a = corners[i];
            double[] b = corners[(i + 1) % 4];
            Vector3D[] top = {placed.at(2 * a[0], 2 * a[1], 10), placed.at(2 * b[0], 2 * b[1], 10)};
            Vector3D[] low = {placed.at(0.5 + a[0], a[1], 0), placed.at(0.5 + b[0], b[1], 0)};
            double[] c = corners[(i + 3) % 4];
            Vector3D before = placed.at(0.5 + c[0], c[1], 0);
            Vector3D side = outward(top[0], top[1], low[0], middle);
            Vector3D next = outward(top[0], low[0], before, middle);
            Vector3D up = placed.turn.apply(Vector3D.Unit.PLUS_Z);
            ridges.add(new Ridge(top[0], top[1], side.add(up).normalize()));
            ridges.add(new Ridge(low[0], low[1], side.subtract(up).normalize()));
            ridges.add(new Ridge(top[0], low[0], side.add(next).normalize()));
        }
        return ridges;
    }

    private static Vector3D outward(Vector3D a, Vector3D b, Vector3D c, Vector3D middle) {
        Vector3D normal = b.subtract(a).cross(c.subtract(a)).normalize();
        return normal.dot(middle.subtract(a)) > 0 ? normal.negate() : normal;
    }

    /** A long stretch across an edge of the hull, off by less than the hull is long by far: only a plane along both tells them apart. */
    @ParameterizedTest
    @ValueSource(doubles = {-1e-6, 1e-6})
    void aStretchAcrossAnEdgeOfTheHullIsApartIfItLiesBeyondIt(double off) {
        for (double degrees = 7; degrees < 360; degrees += 40) {
            Placed placed = Placed.by(degrees);
            Shaft shaft = placed.shaft(0, TOLERANCE);
            for (Ridge ridge : ridges(placed)) {
                Vector3D across = ridge.to
                        .subtract(ridge.from)
                        .normalize()
                        .cross(ridge.outward)
                        .multiply(FAR);
                Vector3D at = ridge.from.lerp(ridge.to, 0.4).add(ridge.outward.multiply(off));
                double[] ends = coordinates(at.add(across), at.subtract(across));
                assertThat(shaft.apartFromEdge(ends, 0)).as("%s", ridge).isEqualTo(off > 0);
                // And with a corner that stands up from it, whichever comes first.
                Vector3D third = at.add(ridge.outward).add(ridge.to.subtract(ridge.from));
                Vector3D[] corners = {at.add(across), at.subtract(across), third};
                for (int k = 0; k < 3; k++) {
                    double[] triangle = coordinates(corners[k], corners[(k + 1) % 3], corners[(k + 2) % 3]);
                    assertThat(shaft.apartFromTriangle(triangle))
                            .as("%s", ridge)
                            .isEqualTo(off > 0);
                }
            }
        }
    }

    /** The same about a face that is grown, for the edges below and a direction that leads down from the pupil. */
    @ParameterizedTest
    @ValueSource(doubles = {-1e-6, 1e-6})
    void aStretchAcrossAnEdgeOfAGrownFaceIsApartIfItLiesBeyondTheBall(double off) {
        double radius = 0.25;
        for (double degrees = 7; degrees < 360; degrees += 40) {
            Placed placed = Placed.by(degrees);
            Shaft shaft = placed.shaft(radius, TOLERANCE);
            List<Ridge> ridges = ridges(placed);
            for (int i = 1; i < ridges.size(); i += 3) {
                Ridge ridge = ridges.get(i);
                Vector3D across = ridge.to
                        .subtract(ridge.from)
                        .normalize()
                        .cross(ridge.outward)
                        .multiply(FAR);
                Vector3D at = ridge.from.lerp(ridge.to, 0.4).add(ridge.outward.multiply(radius + off));
                double[] ends = coordinates(at.add(across), at.subtract(across));
                assertThat(shaft.apartFromEdge(ends, 0)).as("%s", ridge).isEqualTo(off > 0);
            }
        }
    }

    /** Off by more than the margin and less than twice as much: planes along its sides halve that, its own plane does not. */
    @ParameterizedTest
    @ValueSource(doubles = {0.9, 1.2})
    void aWideTriangleIsApartByItsOwnPlaneAlone(double margins) {
        double margin = 1e-3;
        Tolerance wide = new Tolerance(margin, 4 * margin, 256 * margin);
        for (double degrees = 7; degrees < 360; degrees += 40) {
            Placed placed = Placed.by(degrees);
            Shaft shaft = placed.shaft(0, wide);
            for (Ridge ridge : ridges(placed)) {
                Vector3D along = ridge.to.subtract(ridge.from).normalize();
                Vector3D across = along.cross(ridge.outward);
                Vector3D at = ridge.from.lerp(ridge.to, 0.4).add(ridge.outward.multiply(margins * margin));
                Vector3D a = at.add(along.multiply(-FAR)).add(across.multiply(-FAR));
                Vector3D b = at.add(along.multiply(FAR)).add(across.multiply(-FAR));
                Vector3D c = at.add(across.multiply(FAR));
                assertThat(shaft.apartFromTriangle(coordinates(a, b, c))).isEqualTo(margins > 1);
                assertThat(shaft.apartFromTriangle(coordinates(a, c, b))).isEqualTo(margins > 1);
            }
        }
    }

    private static double[] coordinates(Vector3D... points) {
        double[] all = new double[3 * points.length];
        for (int i = 0; i < points.length; i++) {
            System.arraycopy(points[i].toArray(), 0, all, 3 * i, 3);
        }
        return all;
    }
}
