package darkrim.geom;

/**
 * Points of the unit circle by the share of a full turn: cosine and sine for the hot code, with the same bits on every machine.
 *
 * <p>{@link Math#cos} may differ from machine to machine in the last bit and {@link StrictMath#cos} costs 3 % of a check. A share of a turn is
 * brought within an eighth of a turn without rounding; the rest are the polynomials of Sun's fdlibm 5.3 (k_sin.c, k_cos.c, 1995), good to a
 * unit in the last place there. Only sums and products: the language fixes every bit.
 */
public final class UnitCircle {
    private static final double[] SINE = {
        1.58969099521155e-10,
        -2.5050760253406863e-8,
        2.7557313707070068e-6,
        -0.0001984126982985795,
        0.00833333333332249,
        -0.16666666666666632
    };
    private static final double[] COSINE = {
        -1.1359647557788195e-11,
        2.087572321298175e-9,
        -2.7557314351390663e-7,
        2.480158728947673e-5,
        -0.001388888888887411,
        0.0416666666666666
    };

    private UnitCircle() {}

    /**
     * Cosine of a share of a full turn.
     *
     * @param turn the share, 0 to 1
     */
    public static double cosine(double turn) {
        int quarter = (int) (4 * turn + 0.5);
        double angle = 2 * Math.PI * (turn - 0.25 * quarter);
        double size = (quarter & 1) == 0 ? nearCosine(angle) : nearSine(angle);
        // Quarters 1 and 2 turn the sign: cos(q pi/2 + a) is cos a, -sin a, -cos a, sin a.
        return ((quarter + 1) & 2) == 0 ? size : -size;
    }

    /**
     * Sine of a share of a full turn.
     *
     * @param turn the share, 0 to 1
     */
    public static double sine(double turn) {
        int quarter = (int) (4 * turn + 0.5);
        double angle = 2 * Math.PI * (turn - 0.25 * quarter);
        double size = (quarter & 1) == 0 ? nearSine(angle) : nearCosine(angle);
        // sin(q pi/2 + a) is sin a, cos a, -sin a, -cos a.
        return (quarter & 2) == 0 ? size : -size;
    }

    private static double nearSine(double angle) {
        double z = angle * angle;
        return angle + angle * z * polynomial(SINE, z);
    }

    private static double nearCosine(double angle) {
        double z = angle * angle;
        return 1 - 0.5 * z + z * z * polynomial(COSINE, z);
    }

    private static double polynomial(double[] c, double z) {
        return ((((c[0] * z + c[1]) * z + c[2]) * z + c[3]) * z + c[4]) * z + c[5];
    }
}
