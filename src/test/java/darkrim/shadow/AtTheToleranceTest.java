package darkrim.shadow;

import static org.assertj.core.api.Assertions.assertThat;

import darkrim.geom.Frame;
import darkrim.geom.Ring;
import darkrim.scene.Beam;
import darkrim.scene.Finish;
import darkrim.scene.Scene;
import java.util.function.ToDoubleFunction;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Lengths that are a tolerance to the last bit, in numbers without rounding: what counts as in a plane does so up to the tolerance itself, and what must be
 * beyond it is so from the next number on. The argument for proofs (docs/proof-of-darkness.md) has the same sense at each place.
 */
class AtTheToleranceTest {
    private static final double ROUNDING = 0x1p-20;
    private static final double FLAT = 0x1p-10;
    private static final double GAP = 0x1p-4;
    private static final Tolerance TOLERANCE = new Tolerance(ROUNDING, FLAT, GAP);

    /** A square about the axis; seen from above where it faces up, from below where it does not. */
    private static FlatPiece square(double half, double z, boolean up) {
        Frame frame = new Frame(
                Vector3D.of(0, 0, z),
                Vector3D.Unit.PLUS_X,
                up ? Vector3D.Unit.PLUS_Y : Vector3D.Unit.MINUS_Y,
                up ? Vector3D.Unit.PLUS_Z : Vector3D.Unit.MINUS_Z);
        return FlatPiece.of(frame, new double[] {-half, -half, half, -half, half, half, -half, half});
    }

    /** A straight shaft: squares of half side 1 at z = 8 and 0. */
    private static Pair pair(double radius) {
        return new Pair(square(1, 8, false), square(1, 0, true), radius, TOLERANCE);
    }

    private static double[] level(double z) {
        return new double[] {0, 0, z, 1, 0, z, 0, 1, z};
    }

    @Test
    void aFacetIsInThePlaneOfThePiecesUpToTheTolerance() {
        double above = Math.nextUp(FLAT);
        assertThat(pair(0).isOutOfReach(level(FLAT), 0)).isTrue();
        assertThat(pair(0).isOutOfReach(level(above), 0)).isFalse();
        assertThat(pair(0).isEdgeOutOfReach(level(FLAT), 0)).isTrue();
        assertThat(pair(0).isEdgeOutOfReach(level(above), 0)).isFalse();
        assertThat(pair(0).isSurelyOutOfReach(level(ROUNDING), 0)).isTrue();
        assertThat(pair(0).isSurelyOutOfReach(level(Math.nextUp(ROUNDING)), 0)).isFalse();
        // Of numbers near 8 the next one is 2^-50 away.
        for (double radius : new double[] {0, 1}) {
            double in = 8 - FLAT;
            assertThat(pair(radius).isOutOfReach(level(in), 0)).isTrue();
            assertThat(pair(radius).isSurelyOutOfReach(level(in), 0)).isTrue();
            assertThat(pair(radius).isEdgeOutOfReach(level(in), 0)).isTrue();
            assertThat(pair(radius).isOutOfReach(level(Math.nextDown(in)), 0)).isFalse();
            assertThat(pair(radius).isSurelyOutOfReach(level(Math.nextDown(in)), 0))
                    .isFalse();
            assertThat(pair(radius).isEdgeOutOfReach(level(Math.nextDown(in)), 0))
                    .isFalse();
        }
    }

    /** Upright at some x, its front to smaller x or to larger. */
    private static double[] wall(double x, boolean front) {
        return front ? new double[] {x, -2, 0, x, 0, 4, x, 2, 0} : new double[] {x, -2, 0, x, 2, 0, x, 0, 4};
    }

    @Test
    void aWallIsBesideThePiecesUpToRoundingIntoTheFaceAndBeyondTheToleranceFromThePupil() {
        for (boolean front : new boolean[] {true, false}) {
            Pair narrow = new Pair(square(0.5, 8, false), square(1, 0, true), 0, TOLERANCE);
            for (int side = -1; side <= 1; side += 2) {
                double in = 1 - ROUNDING;
                assertThat(narrow.isBeside(wall(side * in, front), 0)).isTrue();
                assertThat(narrow.isBeside(wall(side * Math.nextDown(in), front), 0))
                        .isFalse();
                assertThat(narrow.restingPlane(wall(side * in, front), 0)).hasSize(4);
                // Against the face up to the tolerance off it.
                assertThat(narrow.restingPlane(wall(side * (1 + FLAT), front), 0))
                        .hasSize(4);
                assertThat(narrow.restingPlane(wall(side * Math.nextUp(1 + FLAT), front), 0))
                        .isEmpty();
                // A pupil just as wide: it must lie beyond the tolerance.
                assertThat(pair(0).isBeside(wall(side * (1 + FLAT), front), 0)).isFalse();
                assertThat(pair(0).isBeside(wall(side * Math.nextUp(1 + FLAT), front), 0))
                        .isTrue();
            }
        }
    }

    @Test
    void aTriangleTouchesAPieceUpToTheTolerance() {
        for (int side = -1; side <= 1; side += 2) {
            double x = side * (1 + FLAT);
            double next = side * Math.nextUp(1 + FLAT);
            // It stands across the plane of the face, beside it, in a plane that cuts the face.
            assertThat(pair(0).isTouchedBy(new double[] {x, 0, -1, side * 3, 0, -1, x, 0, 1}, 0))
                    .isTrue();
            assertThat(pair(0).isTouchedBy(new double[] {next, 0, -1, side * 3, 0, -1, next, 0, 1}, 0))
                    .isFalse();
            assertThat(pair(0).isTouchedBy(new double[] {0, x, -1, 0, side * 3, -1, 0, x, 1}, 0))
                    .isTrue();
            assertThat(pair(0).isTouchedBy(new double[] {0, next, -1, 0, side * 3, -1, 0, next, 1}, 0))
                    .isFalse();
            // It lies level over the face or under it: in its plane, or beside that.
            assertThat(pair(0).isTouchedBy(level(side * FLAT), 0)).isTrue();
            assertThat(pair(0).isTouchedBy(level(side * Math.nextUp(FLAT)), 0)).isFalse();
            // A wall along a side of the face rests against it up to the tolerance into it.
            assertThat(pair(0).isTouchedBy(shifted(wall(side * (1 - FLAT), true)), 0))
                    .isFalse();
            assertThat(pair(0).isTouchedBy(shifted(wall(side * Math.nextDown(1 - FLAT), true)), 0))
                    .isTrue();
        }
    }

    /** A little down, through the plane of the face, and not up to the pupil. */
    private static double[] shifted(double[] t) {
        return new double[] {t[0], t[1], t[2] - 1, t[3], t[4], t[5] - 1, t[6], t[7], t[8] - 1};
    }

    @Test
    void whatIsApartIsSoFromBeyondTheMarginOn() {
        Shaft shaft = pair(0).shaft();
        double[][] outward = {{1, 0}, {-1, 0}, {0, 1}, {0, -1}};
        for (double[] way : outward) {
            double[] at = {(1 + ROUNDING) * way[0], (1 + ROUNDING) * way[1], 4};
            double[] next = {Math.nextUp(1 + ROUNDING) * way[0], Math.nextUp(1 + ROUNDING) * way[1], 4};
            assertThat(shaft.separates(way[0], way[1], 0, at, 1)).isFalse();
            assertThat(shaft.separates(way[0], way[1], 0, next, 1)).isTrue();
            assertThat(shaft.separates(4 * way[0], 4 * way[1], 0, at, 1)).isFalse();
            assertThat(shaft.separates(4 * way[0], 4 * way[1], 0, next, 1)).isTrue();
            // Along the side of the shaft, and away from it.
            assertThat(shaft.apartFromEdge(new double[] {at[0], at[1], 2, at[0], at[1], 6}, 0))
                    .isFalse();
            assertThat(shaft.apartFromEdge(new double[] {next[0], next[1], 2, next[0], next[1], 6}, 0))
                    .isTrue();
        }
    }

    @Test
    void aBoxMayTouchUpToTheSlack() {
        double slack = 64 * ROUNDING + 2 * GAP;
        double[] far = {-1, -1, 8, 1, 1, 8};
        // So near each other along every axis that the hull counts as a box.
        double[] near = {-1, -1, 7.9375, 1, 1, 7.9375};
        ShaftBoxes boxes = new ShaftBoxes(far, near, 0, TOLERANCE);
        double[] low = {-1, -1, 7.9375};
        double[] high = {1, 1, 8};
        for (int k = 0; k < 3; k++) {
            double[] box = {0, 0, 7.95, 0.5, 0.5, 7.96};
            box[k] = high[k] + slack;
            box[k + 3] = 20;
            assertThat(boxes.mayTouch(box, 0)).isTrue();
            box[k] = Math.nextUp(high[k] + slack);
            assertThat(boxes.mayTouch(box, 0)).isFalse();
            box[k] = -20;
            box[k + 3] = low[k] - slack;
            assertThat(boxes.mayTouch(box, 0)).isTrue();
            box[k + 3] = Math.nextDown(low[k] - slack);
            assertThat(boxes.mayTouch(box, 0)).isFalse();
        }
    }

    /** From half side 1 at z = 4 to half side 2 at z = 12 or -4: half as much again in the middle. */
    @Test
    void aBoxBesideATaperMayTouchUpToTheSlack() {
        double slack = 64 * ROUNDING + 2 * GAP;
        for (int sign = -1; sign <= 1; sign += 2) {
            ShaftBoxes boxes = new ShaftBoxes(
                    new double[] {-2, -2, sign * 8 + 4, 2, 2, sign * 8 + 4},
                    new double[] {-1, -1, 4, 1, 1, 4},
                    0,
                    TOLERANCE);
            for (int k = 0; k < 2; k++) {
                double[] box = {0, 0, sign * 4 + 4, 0.5, 0.5, sign * 4 + 4};
                box[k] = 1.5 + slack;
                box[k + 3] = 20;
                assertThat(boxes.mayTouch(box, 0)).isTrue();
                box[k] = Math.nextUp(1.5 + slack);
                assertThat(boxes.mayTouch(box, 0)).isFalse();
                box[k] = -20;
                box[k + 3] = -1.5 - slack;
                assertThat(boxes.mayTouch(box, 0)).isTrue();
                box[k + 3] = -Math.nextUp(1.5 + slack);
                assertThat(boxes.mayTouch(box, 0)).isFalse();
            }
        }
    }

    @Test
    void aPlaneLiesBetweenThePiecesUpToTheTolerance() {
        Scene scene = new TestParts().sheet("s", -1, 1, -1, 1, 4).build(Beam.of(TestParts.pupilAt(8, Ring.disc(1))));
        CoverCut cut = new CoverCut(scene, scene.corners(), FacetEdges.of(scene), TOLERANCE);
        for (Vector3D normal : new Vector3D[] {Vector3D.Unit.PLUS_Z, Vector3D.Unit.MINUS_Z}) {
            ToDoubleFunction<Double> corners = z -> {
                CrossingHull hull = cut.hull(Frame.about(Vector3D.of(0, 0, z), normal), pair(0).shaft(), pair(0));
                return hull == null ? 0 : hull.corners().length;
            };
            // What is in the plane of the face, up to the tolerance, does not cover it; nor what is in that of the
            // pupil.
            assertThat(corners.applyAsDouble(FLAT)).isEqualTo(8);
            assertThat(corners.applyAsDouble(Math.nextDown(FLAT))).isZero();
            assertThat(corners.applyAsDouble(8 - FLAT)).isZero();
            assertThat(corners.applyAsDouble(Math.nextDown(8 - FLAT))).isEqualTo(8);
        }
        // Upright planes with the pupil on one side: the face may reach through them by the tolerance.
        Pair aside = new Pair(
                FlatPiece.of(square(1, 8, false).frame(), new double[] {2, -1, 3, -1, 3, 1, 2, 1}),
                square(1, 0, true),
                0,
                TOLERANCE);
        for (Vector3D normal : new Vector3D[] {Vector3D.Unit.PLUS_X, Vector3D.Unit.MINUS_X}) {
            Frame through = Frame.about(Vector3D.of(1 - FLAT, 0, 0), normal);
            assertThat(cut.hull(through, aside.shaft(), aside)).isNotNull();
            Frame deeper = Frame.about(Vector3D.of(Math.nextDown(1 - FLAT), 0, 0), normal);
            assertThat(cut.hull(deeper, aside.shaft(), aside)).isNull();
        }
    }

    /** Cells of less than three quarters of the gap need not be covered, and all of them together as much. */
    @Test
    void aSlitIsCoveredBelowThreeQuartersOfTheGapAndSeveralUpToIt() {
        double narrow = 0.75 * GAP;
        assertThat(covers(narrow)).isFalse();
        assertThat(covers(narrow - 0x1p-50)).isTrue();
        assertThat(covers(narrow / 2, narrow / 2)).isTrue();
        assertThat(covers(narrow / 2, narrow / 2, narrow / 4)).isFalse();
        assertThat(covers(narrow / 4, narrow / 4, narrow / 4, narrow / 4)).isTrue();
    }

    /** Strips of half a millimetre across a square of 4, slits of these widths between them. */
    private static boolean covers(double... slits) {
        PlanarCover cover = new PlanarCover(GAP);
        double from = -1;
        for (int i = 0; i <= slits.length; i++) {
            double to = i == slits.length ? 9 : 0.5 * (i + 1);
            loop(cover, i, from, -1, to, -1, to, 5, from, 5);
            from = i == slits.length ? to : to + slits[i];
        }
        return cover.covers(new double[] {0, 0, 4, 0, 4, 4, 0, 4});
    }

    private static void loop(PlanarCover cover, int group, double... corners) {
        int n = corners.length / 2;
        for (int i = 0; i < n; i++) {
            int j = (i + 1) % n;
            cover.add(corners[2 * i], corners[2 * i + 1], corners[2 * j], corners[2 * j + 1], group);
        }
    }

    /** The corners of a diamond lie level with the middle of the square that is asked about: each counts once. */
    @ParameterizedTest
    @ValueSource(doubles = {-20, 1, 20})
    void aCornerLevelWithThePlaceAskedAboutCountsOnce(double u) {
        for (boolean turned : new boolean[] {false, true}) {
            PlanarCover cover = new PlanarCover(GAP);
            double[] there = {u - 6, 1, u, -5, u + 6, 1, u, 7};
            double[] back = {u - 6, 1, u, 7, u + 6, 1, u, -5};
            loop(cover, 0, turned ? back : there);
            assertThat(cover.covers(new double[] {0, 0, 2, 0, 2, 2, 0, 2})).isEqualTo(u == 1);
        }
    }

    @Test
    void aPlaceOnACircleIsOnTheSideOfItsInside() {
        for (int sign = -1; sign <= 1; sign += 2) {
            assertThat(new Circle(1, 2, 5, true).keeps(1 + sign * 3, 2 + 4)).isTrue();
            assertThat(new Circle(1, 2, 5, false).keeps(1 + sign * 3, 2 - 4)).isFalse();
            assertThat(new Circle(1, 2, 5, true).keeps(1 + sign * Math.nextUp(5.0), 2))
                    .isFalse();
        }
        double close = 1e-13 * 5;
        Circle circle = new Circle(0, 0, 5, true);
        assertThat(circle.isSameAs(new Circle(0.5 * close, -0.5 * close, 5, true)))
                .isTrue();
        assertThat(circle.isSameAs(new Circle(close, 0, 5, true))).isFalse();
        assertThat(circle.isSameAs(new Circle(0, -close, 5, true))).isFalse();
        assertThat(circle.isSameAs(new Circle(0, 0, 5 + 2 * close, true))).isFalse();
        assertThat(circle.isSameAs(new Circle(0, 0, 5, false))).isFalse();
    }

    /** An edge that rises no more than the gap above the end of a line, or lies no more than that before the pupil, is not passed. */
    @Test
    void anEdgeIsPassedFromBeyondTheGapOn() {
        WitnessRay line = new WitnessRay(Vector3D.of(0, 0, 8), Vector3D.ZERO, "");
        for (double z : new double[] {GAP, Math.nextUp(GAP), 8 - GAP, Math.nextDown(8 - GAP)}) {
            TestParts parts = new TestParts();
            parts.builder().sheet("s", Finish.ABSORBER, "s/back", Finish.ABSORBER, TestParts.NOWHERE);
            parts.builder().triangle("s", Vector3D.of(2, 0, z), Vector3D.of(4, 0, z), Vector3D.of(2, 2, z));
            Scene scene = parts.build(Beam.of(TestParts.pupilAt(8, Ring.disc(1))));
            LimitingEdge limiting = new LimitingEdge(scene, FacetEdges.of(scene), TOLERANCE);
            boolean passed = z > GAP && z < 8 - GAP;
            assertThat(limiting.of(line, Vector3D.Unit.PLUS_Z)).as("%s", z).isEqualTo(passed ? "s" : "");
        }
    }
}
