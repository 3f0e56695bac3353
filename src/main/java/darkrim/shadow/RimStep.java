package darkrim.shadow;

import java.util.Arrays;
import java.util.stream.DoubleStream;

/**
 * A stretch of the rim of what a point sees of the pupil, in the pupil's u and v; what is seen lies to the left.
 *
 * @param fromU start, mm
 * @param fromV likewise
 * @param toU end, mm
 * @param toV likewise
 * @param radius radius of an arc, mm; 0 for a straight stretch
 * @param turn angle the arc turns through about its centre, rad, at most half a turn; positive when counter-clockwise
 */
public record RimStep(double fromU, double fromV, double toU, double toV, double radius, double turn) {
    /** Whether it is straight. */
    public boolean isStraight() {
        return radius == 0;
    }

    /** The start and, on an arc, a point each degree after it; the end is left to the next step. */
    DoubleStream corners() {
        int parts = (int) Math.max(1, Math.ceil(Math.abs(turn) * 180 / Math.PI));
        double[] corners = new double[2 * parts];
        corners[0] = fromU;
        corners[1] = fromV;
        // The centre lies square to the chord, cos(turn / 2) radii from its middle, on the inner side of the turn.
        double chord = Math.hypot(toU - fromU, toV - fromV);
        double off = isStraight() ? 0 : Math.copySign(radius * StrictMath.cos(turn / 2), turn) / chord;
        double u = (fromU + toU) / 2 - off * (toV - fromV);
        double v = (fromV + toV) / 2 + off * (toU - fromU);
        for (int i = 1; i < parts; i++) {
            double cosine = StrictMath.cos(turn * i / parts);
            double sine = StrictMath.sin(turn * i / parts);
            corners[2 * i] = u + cosine * (fromU - u) - sine * (fromV - v);
            corners[2 * i + 1] = v + sine * (fromU - u) + cosine * (fromV - v);
        }
        return Arrays.stream(corners);
    }
}
