package darkrim.shadow;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class ShaftBoxesTest {
    /** Slack 64 * 1e-6 + 2 * 1e-3 mm. */
    private static final Tolerance TOLERANCE = new Tolerance(1e-6, 1e-3 / 64, 1e-3);

    private static final double SLACK = 64e-6 + 2e-3;

    /** The axes taken in another order, and turned round. */
    private record Turn(int x, int y, int z, double sign) {
        double[] point(double a, double b, double c) {
            double[] at = new double[3];
            // Off the origin, so that no sum passes for a difference.
            at[x] = a + 7;
            at[y] = b - 3;
            at[z] = sign * c + 50;
            return at;
        }

        double[] points(double half, double height) {
            double[] all = new double[12];
            for (int i = 0; i < 4; i++) {
                System.arraycopy(point(i % 2 == 0 ? half : -half, i < 2 ? half : -half, height), 0, all, 3 * i, 3);
            }
            return all;
        }

        /** One number stands before the box. */
        double[] box(double a0, double a1, double b0, double b1, double c0, double c1) {
            double[] low = point(a0, b0, sign > 0 ? c0 : c1);
            double[] high = point(a1, b1, sign > 0 ? c1 : c0);
            return new double[] {7, low[0], low[1], low[2], high[0], high[1], high[2]};
        }
    }

    private static final Turn[] TURNS = {
        new Turn(0, 1, 2, 1),
        new Turn(0, 1, 2, -1),
        new Turn(1, 2, 0, 1),
        new Turn(1, 2, 0, -1),
        new Turn(2, 0, 1, 1),
        new Turn(2, 0, 1, -1)
    };

    /** The pupil of half side 2 at 10, the face of half side 1 at 0: half side 1 + h / 10 at the height h. */
    @Test
    void aBoxBesideTheTaperedShaftIsApartOnceItIsFartherThanTheSlack() {
        for (Turn turn : TURNS) {
            ShaftBoxes boxes = new ShaftBoxes(turn.points(2, 10), turn.points(1, 0), 0, TOLERANCE);
            for (double side : new double[] {-1, 1}) {
                for (double off : new double[] {-0.3, -1e-4, 1e-4, 0.3}) {
                    // From the height 5 to 6 the shaft is widest at 6: 1.6.
                    double near = 1.6 + SLACK + off;
                    double low = side > 0 ? near : -near - 1;
                    double high = side > 0 ? near + 1 : -near;
                    assertThat(boxes.mayTouch(turn.box(low, high, -0.1, 0.1, 5, 6), 1))
                            .isEqualTo(off < 0);
                    assertThat(boxes.mayTouch(turn.box(-0.1, 0.1, low, high, 5, 6), 1))
                            .isEqualTo(off < 0);
                }
            }
        }
    }

    @Test
    void aBoxAboveThePupilOrBelowTheFaceIsApart() {
        for (Turn turn : TURNS) {
            ShaftBoxes boxes = new ShaftBoxes(turn.points(2, 10), turn.points(1, 0), 0, TOLERANCE);
            assertThat(boxes.mayTouch(turn.box(0, 1, 0, 1, 10 + SLACK - 1e-4, 12), 1))
                    .isTrue();
            assertThat(boxes.mayTouch(turn.box(0, 1, 0, 1, 10 + SLACK + 1e-4, 12), 1))
                    .isFalse();
            assertThat(boxes.mayTouch(turn.box(0, 1, 0, 1, -3, -SLACK + 1e-4), 1))
                    .isTrue();
            assertThat(boxes.mayTouch(turn.box(0, 1, 0, 1, -3, -SLACK - 1e-4), 1))
                    .isFalse();
            // A box that reaches past both ends is held against the whole shaft.
            assertThat(boxes.mayTouch(turn.box(1.9, 3, 0, 1, -1, 12), 1)).isTrue();
            assertThat(boxes.mayTouch(turn.box(2.1, 3, 0, 1, -1, 12), 1)).isFalse();
            assertThat(boxes.mayTouch(turn.box(1.1, 3, 0, 1, -1, 0.5), 1)).isFalse();
            assertThat(boxes.mayTouch(turn.box(1.04, 3, 0, 1, -1, 0.5), 1)).isTrue();
        }
    }

    @Test
    void aGrownFaceIsWiderAndNearer() {
        for (Turn turn : TURNS) {
            ShaftBoxes boxes = new ShaftBoxes(turn.points(2, 10), turn.points(1, 0), 0.5, TOLERANCE);
            // Between half side 1.5 at the height 0.5, and 2 at 10.
            assertThat(boxes.mayTouch(turn.box(1.45, 3, 0, 1, -0.2, 0), 1)).isTrue();
            assertThat(boxes.mayTouch(turn.box(1.55, 3, 0, 1, -0.2, 0), 1)).isFalse();
            assertThat(boxes.mayTouch(turn.box(0, 1, 0, 1, -2, -0.45), 1)).isTrue();
            assertThat(boxes.mayTouch(turn.box(0, 1, 0, 1, -2, -0.55), 1)).isFalse();
        }
    }

    /** Two slanting sets of points, thick along the axis: at any height the box must hold every point of the hull. */
    @Test
    void noPointOfTheHullIsApart() {
        for (Turn turn : TURNS) {
            double[] far = new double[6];
            double[] near = new double[6];
            System.arraycopy(turn.point(3, 1, 9), 0, far, 0, 3);
            System.arraycopy(turn.point(5, 2, 12), 0, far, 3, 3);
            System.arraycopy(turn.point(-4, 0, 1), 0, near, 0, 3);
            System.arraycopy(turn.point(-2, -3, 3), 0, near, 3, 3);
            ShaftBoxes boxes = new ShaftBoxes(far, near, 0, TOLERANCE);
            for (int i = 0; i < 2; i++) {
                for (int k = 0; k < 2; k++) {
                    for (double t = 0; t <= 1; t += 0.125) {
                        double[] box = new double[6];
                        for (int m = 0; m < 3; m++) {
                            box[m] = near[3 * k + m] + t * (far[3 * i + m] - near[3 * k + m]);
                            box[m + 3] = box[m];
                        }
                        assertThat(boxes.mayTouch(box, 0)).isTrue();
                    }
                }
            }
        }
    }

    @Test
    void setsThatComeNearerThanASixtyFourthOfTheWholeAreHeldInOneBox() {
        double[] face = {0, 0, 0, 64, 0, 0, 64, 64, 0, 0, 64, 0};
        double[] box = {0, 0, 0.2, 1, 1, 0.4};
        // A point above the corner at (64, 64): between the two the shaft draws away from the origin.
        for (double height : new double[] {0.9, 1.1}) {
            double[] pupil = {64, 64, height};
            ShaftBoxes boxes = new ShaftBoxes(pupil, face, 0, new Tolerance(1e-9, 1e-6 / 64, 1e-6));
            assertThat(boxes.mayTouch(box, 0)).isEqualTo(height < 1);
        }
    }
}
