package darkrim.present.picture;

/**
 * The colours of the scale, from deep blue over rose to pale yellow: equal steps of the value are equal steps of lightness, so that a grey print
 * and an eye that tells fewer colours apart still see the order, and equal steps of colour.
 *
 * <p>Made, not tabulated: in CIELAB (CIE 15:2004, D65 white) the lightness L* rises in proportion from 15 to 95 while a*, b* follow a cubic
 * Bezier curve at even speed, so every step has the same colour difference (CIE 1976) but for rounding to 8 bits. The control points were
 * chosen so that the whole curve lies within the colours of a screen (IEC 61966-2-1, sRGB).
 */
public final class ColourMap {
    /** Number of colours. */
    public static final int SIZE = 256;

    private static final double DARKEST = 15;
    private static final double LIGHTEST = 95;
    private static final double[][] CURVE = {{18, -38}, {62, -2}, {60, 68}, {-10, 46}};
    /** Pieces of the curve for its length: the error of a colour is far below a step of 8 bits. */
    private static final int PIECES = 4096;

    private static final int[] COLOURS = colours();

    private ColourMap() {}

    /**
     * The colour at an index, opaque, as {@code 0xffrrggbb}.
     *
     * @param index 0 (darkest) to {@link #SIZE} - 1
     */
    public static int argb(int index) {
        return COLOURS[index];
    }

    /** The colour at a share of the way from the darkest to the lightest, which is kept within 0 to 1. */
    public static int argb(double share) {
        return COLOURS[index(share)];
    }

    /** The index that stands for a share of the way, which is kept within 0 to 1. */
    public static int index(double share) {
        return Math.min(SIZE - 1, Math.max(0, (int) (share * SIZE)));
    }

    private static int[] colours() {
        double[] length = new double[PIECES + 1];
        for (int i = 1; i <= PIECES; i++) {
            double[] from = onCurve((i - 1.0) / PIECES);
            double[] to = onCurve((double) i / PIECES);
            double da = to[0] - from[0];
            double db = to[1] - from[1];
            length[i] = length[i - 1] + Math.sqrt(da * da + db * db);
        }
        int[] colours = new int[SIZE];
        int piece = 0;
        for (int i = 0; i < SIZE; i++) {
            double share = (double) i / (SIZE - 1);
            double wanted = share * length[PIECES];
            while (piece < PIECES - 1 && length[piece + 1] < wanted) {
                piece++;
            }
            double within = (wanted - length[piece]) / (length[piece + 1] - length[piece]);
            double[] ab = onCurve((piece + within) / PIECES);
            colours[i] = argb(DARKEST + share * (LIGHTEST - DARKEST), ab[0], ab[1]);
        }
        return colours;
    }

    private static double[] onCurve(double t) {
        double s = 1 - t;
        double[] weights = {s * s * s, 3 * s * s * t, 3 * s * t * t, t * t * t};
        double[] point = new double[2];
        for (int i = 0; i < weights.length; i++) {
            point[0] += weights[i] * CURVE[i][0];
            point[1] += weights[i] * CURVE[i][1];
        }
        return point;
    }

    /** The colour of a place in CIELAB, opaque, as {@code 0xffrrggbb}. */
    static int argb(double lightness, double a, double b) {
        double fy = (lightness + 16) / 116;
        double x = 0.95047 * tristimulus(fy + a / 500);
        double y = tristimulus(fy);
        double z = 1.08883 * tristimulus(fy - b / 200);
        int red = byteOf(3.2404542 * x - 1.5371385 * y - 0.4985314 * z);
        int green = byteOf(-0.9692660 * x + 1.8760108 * y + 0.0415560 * z);
        int blue = byteOf(0.0556434 * x - 0.2040259 * y + 1.0572252 * z);
        return 0xff000000 | red << 16 | green << 8 | blue;
    }

    private static double tristimulus(double f) {
        double knee = 6.0 / 29;
        return f > knee ? f * f * f : 3 * knee * knee * (f - 4.0 / 29);
    }

    private static int byteOf(double linear) {
        double coded = linear <= 0.0031308 ? 12.92 * linear : 1.055 * StrictMath.pow(linear, 1 / 2.4) - 0.055;
        return (int) Math.round(255 * Math.min(1, Math.max(0, coded)));
    }
}
