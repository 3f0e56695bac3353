package darkrim.shadow;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import darkrim.geom.Frame;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Test;

class CrossingHullTest {
    /** A square of half side 2 at z = 10, one of half side 1 at z = 0. */
    private static final double[] PUPIL = square(0, 0, 2, 10);

    private static final double[] FACE = square(0, 0, 1, 0);

    private static double[] square(double x, double y, double half, double z) {
        return new double[] {x - half, y - half, z, x + half, y - half, z, x + half, y + half, z, x - half, y + half, z
        };
    }

    private static Frame plane(double z, boolean up) {
        return Frame.about(Vector3D.of(0, 0, z), up ? Vector3D.Unit.PLUS_Z : Vector3D.Unit.MINUS_Z);
    }

    private static CrossingHull hull(Frame frame, double radius) {
        return CrossingHull.of(frame, PUPIL, FACE, radius, 1e-3);
    }

    @Test
    void linesBetweenTwoSquaresCrossAPlaneInTheSquareBetween() {
        for (boolean up : new boolean[] {true, false}) {
            for (double z : new double[] {2.5, 5, 9, -5, 15}) {
                // Drawn out beyond the face, or the pupil, lines cross: they spread from the other one's corners.
                double half = z < 0 ? 1 - 0.3 * z : z > 10 ? 2 + 0.3 * (z - 10) : 1 + 0.1 * z;
                double[] found = hull(plane(z, up), 0).corners();
                assertThat(found).hasSize(8);
                for (double coordinate : found) {
                    assertThat(Math.abs(coordinate)).isCloseTo(half, within(1e-12));
                }
                assertThat(PlanarPolygons.area(found)).isCloseTo(4 * half * half, within(1e-11));
            }
        }
    }

    @Test
    void theCrossingsAreGivenInTheFrameOfThePlane() {
        Frame frame = Frame.of(Vector3D.of(3, 1, 5), Vector3D.Unit.PLUS_Y, Vector3D.Unit.MINUS_X);
        double[] found = CrossingHull.of(frame, square(4, 0, 2, 10), square(2, 6, 1, 0), 0, 1e-3)
                .corners();
        // Between centres (4, 0) and (2, 6): (3, 3), half side 1.5; u is y - 1 and v is 3 - x.
        double[] middle = {0, 0};
        for (int i = 0; i < found.length; i++) {
            middle[i % 2] += found[i] / 4;
        }
        assertThat(middle[0]).isCloseTo(2, within(1e-12));
        assertThat(middle[1]).isCloseTo(0, within(1e-12));
        assertThat(PlanarPolygons.area(found)).isCloseTo(9, within(1e-12));
    }

    @Test
    void aGrownFaceHasItsCubesCorners() {
        // From a corner of the pupil to the cube's corner at (1.1, 1.1, -0.1), 10.1 below: 2 - 0.9 * 5 / 10.1.
        double[] found = hull(plane(5, true), 0.1).corners();
        assertThat(found).hasSize(8);
        for (double coordinate : found) {
            assertThat(Math.abs(coordinate)).isCloseTo(2 - 0.9 * 5 / 10.1, within(1e-12));
        }
    }

    @Test
    void linesThatRunTooFlatOrTheOtherWayAreNotJudged() {
        double[] low = {0, 0, 1};
        // Length counted along the axes is 99 + 1; a fall of 1 is a hundredth of it.
        double[] far = {99, 0, 0};
        assertThat(CrossingHull.of(plane(0.5, true), low, far, 0, 0.0099)).isNotNull();
        assertThat(CrossingHull.of(plane(0.5, true), low, far, 0, 0.0101)).isNull();
        double[] bothSides = {0, 0, 0, 1, 0, 20, 0, 1, 0};
        assertThat(CrossingHull.of(plane(5, true), PUPIL, bothSides, 0, 1e-3)).isNull();
        assertThat(CrossingHull.of(plane(5, true), FACE, FACE, 0, 1e-3)).isNull();
    }

    /** A corner that is off by a small length moves a crossing by no more than that length times the amplification. */
    @Test
    void noErrorOfACornerGrowsByMoreThanTheAmplification() {
        double off = 1e-6;
        for (double z : new double[] {0.5, 5, 9.5, -8, 25}) {
            double[] away = square(30, -7, 1, 0);
            CrossingHull hull = CrossingHull.of(plane(z, true), PUPIL, away, 0, 1e-3);
            double worst = 0;
            for (int i = 0; i < 12; i++) {
                for (int k = 0; k < 12; k++) {
                    double[] from = PUPIL.clone();
                    double[] to = away.clone();
                    from[i] += off;
                    to[k] -= off;
                    worst = Math.max(worst, farthest(hull, CrossingHull.of(plane(z, true), from, away, 0, 1e-3)));
                    worst = Math.max(worst, farthest(hull, CrossingHull.of(plane(z, true), PUPIL, to, 0, 1e-3)));
                }
            }
            assertThat(worst / off).isLessThan(hull.amplification());
            // Nor is it pessimistic beyond use: the sum of all coordinates' shares is within a small factor.
            assertThat(hull.amplification()).isLessThan(20 * worst / off);
        }
        // Straight down between the two, an error of one end moves a crossing by less than itself.
        assertThat(CrossingHull.of(plane(5, true), new double[] {0, 0, 10}, new double[] {0, 0, 0}, 0, 1e-3)
                        .amplification())
                .isBetween(1.0, 1.5);
    }

    private static double farthest(CrossingHull one, CrossingHull other) {
        double most = 0;
        for (int axis = 0; axis < 2; axis++) {
            for (int sign = -1; sign <= 1; sign += 2) {
                most = Math.max(most, Math.abs(end(one, axis, sign) - end(other, axis, sign)));
            }
        }
        return most;
    }

    private static double end(CrossingHull hull, int axis, int sign) {
        double most = Double.NEGATIVE_INFINITY;
        for (int i = axis; i < hull.corners().length; i += 2) {
            most = Math.max(most, sign * hull.corners()[i]);
        }
        return most;
    }

    @Test
    void aHullIsGrownToEverySide() {
        double[] grown = hull(plane(5, true), 0).grownBy(0.25);
        assertThat(grown).hasSize(8);
        for (double coordinate : grown) {
            assertThat(Math.abs(coordinate)).isCloseTo(1.75, within(1e-12));
        }
    }
}
