package darkrim.present.picture;

import java.awt.Color;
import java.awt.color.ColorSpace;

/** Colours as an eye sees them, by the JDK's own colour management and published formulas: nothing of it is used by the program. */
final class SeenColour {
    /** Loss of one kind of cone, linear sRGB: Machado, Oliveira, Fernandes, IEEE TVCG 15(6), 2009, table 1, severity 1 (figures from memory). */
    static final double[][] NO_LONG = {
        {0.152286, 1.052583, -0.204868}, {0.114503, 0.786281, 0.099216}, {-0.003882, -0.048116, 1.051998}
    };

    static final double[][] NO_MIDDLE = {
        {0.367322, 0.860646, -0.227968}, {0.280085, 0.672501, 0.047413}, {-0.011820, 0.042940, 0.968881}
    };

    static final double[][] NO_SHORT = {
        {1.255528, -0.076749, -0.178779}, {-0.078411, 0.930809, 0.147602}, {0.004733, 0.691367, 0.303900}
    };

    private SeenColour() {}

    /** CIELAB (white of the profile connection space, D50) by the colour profiles of the JDK. */
    static double[] lab(int argb) {
        float[] xyz = new Color(argb).getColorComponents(ColorSpace.getInstance(ColorSpace.CS_CIEXYZ), null);
        double[] f = {f(xyz[0] / 0.9642), f(xyz[1]), f(xyz[2] / 0.8249)};
        return new double[] {116 * f[1] - 16, 500 * (f[0] - f[1]), 200 * (f[1] - f[2])};
    }

    private static double f(double t) {
        double knee = 6.0 / 29;
        return t > knee * knee * knee ? StrictMath.cbrt(t) : t / (3 * knee * knee) + 4.0 / 29;
    }

    /** Difference of two colours, CIE 1976. */
    static double difference(int one, int other) {
        double[] a = lab(one);
        double[] b = lab(other);
        return Math.sqrt((a[0] - b[0]) * (a[0] - b[0]) + (a[1] - b[1]) * (a[1] - b[1]) + (a[2] - b[2]) * (a[2] - b[2]));
    }

    /** The colour that looks the same to an eye that lacks one kind of cone. */
    static int without(double[][] cones, int argb) {
        double[] linear = {linear(argb >> 16 & 255), linear(argb >> 8 & 255), linear(argb & 255)};
        int seen = 0xff;
        for (double[] row : cones) {
            double value = row[0] * linear[0] + row[1] * linear[1] + row[2] * linear[2];
            seen = seen << 8 | coded(Math.min(1, Math.max(0, value)));
        }
        return seen;
    }

    /** Contrast of two colours, 1 to 21: Web Content Accessibility Guidelines 2.1, "contrast ratio". */
    static double contrast(int one, int other) {
        double lighter = Math.max(luminance(one), luminance(other));
        double darker = Math.min(luminance(one), luminance(other));
        return (lighter + 0.05) / (darker + 0.05);
    }

    private static double luminance(int argb) {
        return 0.2126 * linear(argb >> 16 & 255) + 0.7152 * linear(argb >> 8 & 255) + 0.0722 * linear(argb & 255);
    }

    private static double linear(int coded) {
        double share = coded / 255.0;
        return share <= 0.04045 ? share / 12.92 : StrictMath.pow((share + 0.055) / 1.055, 2.4);
    }

    private static int coded(double linear) {
        return (int) Math.round(
                255 * (linear <= 0.0031308 ? 12.92 * linear : 1.055 * StrictMath.pow(linear, 1 / 2.4) - 0.055));
    }
}
