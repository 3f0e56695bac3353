package darkrim.shadow;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import darkrim.geom.Ring;
import darkrim.scene.Pupil;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Test;

/** The visible part given outright: convex pieces met with circles. The pupil has radius 10, 50 above the origin. */
class PupilViewTest {
    private static final Pupil PUPIL = TestParts.pupilAt(50, Ring.disc(10));
    private static final double AREA = 100 * Math.PI;
    private static final Circle RIM = new Circle(0, 0, 10, true);
    private static final double[] ALL = {-11, -11, 11, -11, 11, 11, -11, 11};

    private static PupilView view(List<double[]> pieces, Circle... circles) {
        return new PupilView(PUPIL, Vector3D.ZERO, Vector3D.Unit.PLUS_Z, pieces, List.of(circles), 1e-6);
    }

    private static double area(double[] piece, Circle... circles) {
        return view(List.of(piece), circles).areaFraction() * AREA;
    }

    /** Area of the part of a disc beyond a chord at a distance from its centre. */
    private static double segment(double radius, double distance) {
        return radius * radius * Math.acos(distance / radius)
                - distance * Math.sqrt(radius * radius - distance * distance);
    }

    @Test
    void aDiscAlonePiecesInsideItAndPartsOfItHaveTheirAreas() {
        assertThat(area(ALL, RIM)).isCloseTo(AREA, within(1e-9));
        assertThat(area(new double[] {1, 2, 4, 2, 4, 6, 1, 6}, RIM)).isCloseTo(12, within(1e-9));
        for (double at : new double[] {0, 3, 9.9, -4}) {
            double expected = at >= 0 ? segment(10, at) : AREA - segment(10, -at);
            assertThat(area(new double[] {at, -11, 11, -11, 11, 11, at, 11}, RIM))
                    .isCloseTo(expected, within(1e-9));
            assertThat(area(new double[] {-11, at, 11, at, 11, 11, -11, 11}, RIM))
                    .isCloseTo(expected, within(1e-9));
        }
        // A wedge of 90 degrees from the centre, and a quarter of which a corner stands out.
        assertThat(area(new double[] {0, 0, 20, -20, 20, 20}, RIM)).isCloseTo(AREA / 4, within(1e-9));
        assertThat(area(new double[] {0, 0, 8, 0, 8, 8, 0, 8}, RIM)).isCloseTo(64 - cornerBeyond(8), within(1e-9));
        assertThat(area(new double[] {12, 12, 14, 12, 14, 14, 12, 14}, RIM)).isZero();
    }

    /** What of the square from 0 to a lies beyond the circle of radius 10. */
    private static double cornerBeyond(double a) {
        double b = Math.sqrt(100 - a * a);
        double inside = a * b + 0.5 * 100 * (Math.atan2(a, b) - Math.atan2(b, a));
        return a * a - inside;
    }

    @Test
    void aHoleAndASecondCircleAreHeeded() {
        Circle hole = new Circle(0, 0, 4, false);
        assertThat(area(ALL, RIM, hole)).isCloseTo(AREA - 16 * Math.PI, within(1e-9));
        assertThat(area(new double[] {0, -11, 11, -11, 11, 11, 0, 11}, RIM, hole))
                .isCloseTo((AREA - 16 * Math.PI) / 2, within(1e-9));
        assertThat(area(new double[] {-1, -1, 1, -1, 1, 1, -1, 1}, RIM, hole)).isZero();
        // A lens of two circles of radius 10, 12 apart: twice a segment at 6.
        assertThat(area(ALL, RIM, new Circle(12, 0, 10, true))).isCloseTo(2 * segment(10, 6), within(1e-9));
        assertThat(area(ALL, RIM, new Circle(0, -12, 10, true))).isCloseTo(2 * segment(10, 6), within(1e-9));
        assertThat(area(ALL, RIM, new Circle(12, 0, 10, false))).isCloseTo(AREA - 2 * segment(10, 6), within(1e-9));
        // Of radius 6, 8 apart: the chord lies at (64 + 100 - 36) / 16 = 8 from one and at 0 from the other.
        assertThat(area(ALL, RIM, new Circle(8, 0, 6, true))).isCloseTo(segment(10, 8) + 18 * Math.PI, within(1e-9));
        // Inside, outside, and touching.
        assertThat(area(ALL, RIM, new Circle(3, 1, 2, true))).isCloseTo(4 * Math.PI, within(1e-9));
        assertThat(area(ALL, RIM, new Circle(30, 1, 2, true))).isZero();
        assertThat(area(ALL, RIM, new Circle(30, 1, 2, false))).isCloseTo(AREA, within(1e-9));
        assertThat(area(ALL, RIM, new Circle(6, 0, 4, false))).isCloseTo(AREA - 16 * Math.PI, within(1e-6));
    }

    @Test
    void piecesThatShareASideAddUpAndASideThatTouchesTheRimCutsNothing() {
        double[] left = {-11, -11, 2, -11, 2, 11, -11, 11};
        double[] right = {2, -11, 11, -11, 11, 11, 2, 11};
        PupilView both = view(List.of(left, right), RIM);
        assertThat(both.areaFraction()).isCloseTo(1, within(1e-12));
        assertThat(both.irradiance()).isCloseTo(view(List.of(ALL), RIM).irradiance(), within(1e-12));
        assertThat(area(new double[] {-10, -11, 11, -11, 11, 11, -10, 11}, RIM)).isCloseTo(AREA, within(1e-6));
        // A side lost in rounding bounds nothing.
        assertThat(area(new double[] {-11, -11, 11, -11, 11, 11, 11 - 1e-13, 11 + 1e-13, -11, 11}, RIM))
                .isCloseTo(AREA, within(1e-9));
    }

    /** Any triangle or square with any two circles, against the share of a grid of 200 by 200 points. */
    @Test
    void theAreaIsThatOfAGridOfPoints() {
        SplittableRandom random = new SplittableRandom(23);
        int some = 0;
        for (int i = 0; i < 60; i++) {
            double[] piece = convex(random);
            Circle[] circles = {
                RIM, new Circle(random.nextDouble(-8, 8), random.nextDouble(-8, 8), random.nextDouble(2, 9), i % 2 == 0)
            };
            int n = 200;
            int inside = 0;
            for (int k = 0; k < n * n; k++) {
                double u = -11 + 22 * (k % n + 0.5) / n;
                double v = -11 + 22 * (Math.floorDiv(k, n) + 0.5) / n;
                inside += holds(piece, u, v)
                                && u * u + v * v < 100
                                && Math.hypot(u - circles[1].u(), v - circles[1].v()) < circles[1].radius()
                                        == (i % 2 == 0)
                        ? 1
                        : 0;
            }
            double expected = 22.0 * 22 * inside / (n * n);
            some += inside > 1000 ? 1 : 0;
            PupilView view = view(List.of(piece), circles);
            // Cells of 0.0121: the rims cut at most a thousand of them, each off by less than half of itself either
            // way, as chance has it; 1.0 is
            // five times the root of a thousand such errors.
            assertThat(view.areaFraction() * AREA).isCloseTo(expected, within(1.0));
            // The irradiance of a plane piece far off lies between its least and its greatest cos^2 cos^2 / h^2
            // factors.
            double flat = view.areaFraction() * AREA / 2500;
            assertThat(view.irradiance()).isBetween(flat * 0.85 - 1e-12, flat + 1e-12);
        }
        assertThat(some).isGreaterThan(20);
    }

    private static double[] convex(SplittableRandom random) {
        int n = random.nextInt(3, 6);
        double u = random.nextDouble(-4, 4);
        double v = random.nextDouble(-4, 4);
        double size = random.nextDouble(2, 12);
        double[] corners = new double[2 * n];
        double turn = random.nextDouble(6);
        for (int i = 0; i < n; i++) {
            corners[2 * i] = u + size * Math.cos(turn + 2 * Math.PI * i / n);
            corners[2 * i + 1] = v + 0.7 * size * Math.sin(turn + 2 * Math.PI * i / n);
        }
        return corners;
    }

    private static boolean holds(double[] piece, double u, double v) {
        int n = piece.length / 2;
        for (int i = 0, j = n - 1; i < n; j = i++) {
            double side = (piece[2 * i] - piece[2 * j]) * (v - piece[2 * j + 1])
                    - (piece[2 * i + 1] - piece[2 * j + 1]) * (u - piece[2 * j]);
            if (side < 0) {
                return false;
            }
        }
        return true;
    }

    /** E / L = pi r^2 / (r^2 + h^2) under a disc; half of a disc gives half of it; a quarter of a square by the formula of a rectangle. */
    @Test
    void theIrradianceUnderADiscAndARectangleIsThatOfTheClosedForms() {
        double disc = Math.PI * 100 / 2600;
        assertThat(view(List.of(ALL), RIM).irradiance()).isCloseTo(disc, within(1e-12));
        assertThat(view(List.of(new double[] {0, -11, 11, -11, 11, 11, 0, 11}), RIM)
                        .irradiance())
                .isCloseTo(disc / 2, within(1e-12));
        Circle hole = new Circle(0, 0, 4, false);
        assertThat(view(List.of(ALL), RIM, hole).irradiance()).isCloseTo(disc - Math.PI * 16 / 2516, within(1e-12));
        // Howell, Menguc, Siegel, catalogue B-3: corner of a rectangle a by b, parallel, at h; times pi.
        double a = 6.0 / 50;
        double b = 3.0 / 50;
        double s = Math.sqrt(1 + a * a);
        double t = Math.sqrt(1 + b * b);
        double rectangle = 0.5 * (a / s * Math.atan(b / s) + b / t * Math.atan(a / t));
        assertThat(view(List.of(new double[] {0, 0, 6, 0, 6, 3, 0, 3}), RIM).irradiance())
                .isCloseTo(rectangle, within(1e-12));
    }

    @Test
    void whatIsNarrowerThanTheBlurCountsAsNothing() {
        // A stroke 5 long and 1e-7 or 1e-5 wide; the blur is 1e-6.
        PupilView thin = view(List.of(new double[] {-2, 1, 3, 1, 3, 1 + 1e-7, -2, 1 + 1e-7}), RIM);
        assertThat(thin.roundingFraction()).isCloseTo(1e-6 * (10 + 2e-7) / AREA, within(1e-15));
        assertThat(thin.isNone()).isTrue();
        assertThat(view(List.of(new double[] {0, 0, 5, 0, 5, 1e-5, 0, 1e-5}), RIM)
                        .isNone())
                .isFalse();
        assertThat(view(List.of(), RIM).isNone()).isTrue();
        assertThat(view(List.of(ALL), RIM).roundingFraction()).isCloseTo(1e-6 * 20 * Math.PI / AREA, within(1e-15));
        PupilView upright = view(List.of(new double[] {-3, -4, -1, -4, -1, 2, -3, 2}), RIM);
        assertThat(upright.roundingFraction()).isCloseTo(1e-6 * 16 / AREA, within(1e-15));
        // A hole adds its own rim.
        assertThat(view(List.of(ALL), RIM, new Circle(0, 0, 4, false)).roundingFraction())
                .isCloseTo(1e-6 * 28 * Math.PI / AREA, within(1e-15));
    }

    @Test
    void theRimIsDrawnAsClosedLoopsOfItsArea() {
        List<PupilView> views = List.of(
                view(List.of(ALL), RIM),
                view(List.of(new double[] {3, -11, 11, -11, 11, 11, 3, 11}), RIM),
                view(List.of(ALL), RIM, new Circle(12, 0, 10, true)),
                view(List.of(ALL), RIM, new Circle(12, 0, 10, false)),
                view(List.of(ALL), RIM, new Circle(1, 2, 4, false)),
                view(List.of(new double[] {1, 2, 4, 2, 4, 6, 1, 6}), RIM));
        for (PupilView view : views) {
            double drawn = 0;
            for (List<RimStep> loop : view.rims()) {
                for (int i = 0; i < loop.size(); i++) {
                    RimStep step = loop.get(i);
                    RimStep next = loop.get((i + 1) % loop.size());
                    assertThat(Math.hypot(step.toU() - next.fromU(), step.toV() - next.fromV()))
                            .isLessThan(1e-8);
                    assertThat(Math.abs(step.turn())).isLessThanOrEqualTo(Math.PI / 2 + 1e-12);
                    assertThat(step.isStraight()).isEqualTo(step.turn() == 0);
                    drawn += 0.5 * (step.fromU() * step.toV() - step.fromV() * step.toU());
                    // The segment between arc and chord.
                    drawn += 0.5 * step.radius() * step.radius() * (step.turn() - Math.sin(step.turn()));
                }
            }
            assertThat(drawn).isCloseTo(view.areaFraction() * AREA, within(1e-8));
            double polygons = 0;
            for (double[] loop : view.loops()) {
                polygons += PlanarPolygons.area(loop);
            }
            // Chords of a degree or less: 5e-5 of the area of each circle.
            assertThat(polygons).isCloseTo(view.areaFraction() * AREA, within(6e-5 * 2 * AREA));
        }
        assertThat(views.get(0).rims()).hasSize(1);
        assertThat(views.get(4).rims()).hasSize(2);
        assertThat(views.get(0).loops().get(0).length).isBetween(720, 728);
        assertThat(views.get(5).loops().get(0)).hasSize(8);
    }

    @Test
    void thePointsOfAnArcLieOnItsCircle() {
        List<RimStep> arcs = new ArrayList<>();
        // About (2, 3), radius 5: from 0 to 90 degrees, and back.
        arcs.add(new RimStep(7, 3, 2, 8, 5, Math.PI / 2));
        arcs.add(new RimStep(2, 8, 7, 3, 5, -Math.PI / 2));
        for (RimStep arc : arcs) {
            double[] corners = arc.corners().toArray();
            assertThat(corners).hasSize(180);
            assertThat(corners[0]).isEqualTo(arc.fromU());
            assertThat(corners[1]).isEqualTo(arc.fromV());
            for (int i = 0; i < 90; i++) {
                double angle = arc.turn() > 0 ? i : 90 - i;
                assertThat(corners[2 * i]).isCloseTo(2 + 5 * Math.cos(Math.toRadians(angle)), within(1e-9));
                assertThat(corners[2 * i + 1]).isCloseTo(3 + 5 * Math.sin(Math.toRadians(angle)), within(1e-9));
            }
        }
        assertThat(new RimStep(1, 2, 3, 4, 0, 0).corners().toArray()).containsExactly(1, 2);
    }

    @Test
    void circlesThatAreTheSameToRoundingAreOne() {
        assertThat(Circle.boundsOf(new Ring(5, 2)))
                .containsExactly(new Circle(0, 0, 5, true), new Circle(0, 0, 2, false));
        assertThat(Circle.boundsOf(Ring.disc(5))).containsExactly(new Circle(0, 0, 5, true));
        assertThat(Circle.boundsOf(darkrim.geom.Polygon.rectangle(2, 2))).isEmpty();
        Circle circle = new Circle(1, 2, 5, true);
        assertThat(circle.isSameAs(new Circle(1 + 4e-13, 2 - 4e-13, 5 + 4e-13, true)))
                .isTrue();
        assertThat(circle.isSameAs(new Circle(1 + 6e-13, 2, 5, true))).isFalse();
        assertThat(circle.isSameAs(new Circle(1, 2 + 6e-13, 5, true))).isFalse();
        assertThat(circle.isSameAs(new Circle(1, 2, 5 + 6e-13, true))).isFalse();
        assertThat(circle.isSameAs(new Circle(1, 2, 5, false))).isFalse();
        assertThat(circle.keeps(1 + 3, 2 + 3.9)).isTrue();
        assertThat(circle.keeps(1 - 3, 2 - 4.1)).isFalse();
        assertThat(new Circle(1, 2, 5, false).keeps(1 - 3, 2 - 4.1)).isTrue();
        assertThat(new Circle(1, 2, 5, false).keeps(1, 2)).isFalse();
    }
}
