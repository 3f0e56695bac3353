package darkrim.present.picture;

/**
 * The colours of a ratio, value after over value before: blue where there is less, brown where there is more, near white where nothing changed.
 * The scale is logarithmic and even on both sides of 1.
 *
 * <p>Made, not tabulated: from the middle to either end lightness L* falls from 93 to 38 in CIELAB (CIE 15:2004, D65 white) and a*, b* grow in
 * proportion, so equal steps of the logarithm are equal colour differences (CIE 1976) within a side. The sides differ mostly in b*, blue to yellow, which
 * eyes that confuse red and green tell apart; who sees no b* needs the signs that are drawn with the colours. All lie within the colours of a
 * screen (IEC 61966-2-1, sRGB).
 */
public final class ChangeScale {
    /** The largest ratio with a colour of its own; its inverse is the smallest. */
    public static final double MOST = 10;

    private static final double LIGHTEST = 93;
    private static final double DARKEST = 38;
    private static final double[] LESS = {8, -46};
    private static final double[] MORE = {30, 46};

    private ChangeScale() {}

    /** Where a ratio stands: 0 at a tenth and less, 1/2 at no change, 1 at ten times and more. NaN where it is not known. */
    public static double share(double ratio) {
        if (Double.isNaN(ratio) || ratio < 0) {
            return Double.NaN;
        }
        double decades = StrictMath.log10(ratio) / StrictMath.log10(MOST);
        return 0.5 + 0.5 * Math.max(-1, Math.min(1, decades));
    }

    /** The colour at a place of the scale, opaque, as {@code 0xffrrggbb}; that of what is not known for NaN. */
    public static int argb(double share) {
        if (Double.isNaN(share)) {
            return ColourScale.UNKNOWN;
        }
        double away = Math.min(1, Math.abs(2 * share - 1));
        double[] end = share < 0.5 ? LESS : MORE;
        return ColourMap.argb(LIGHTEST + away * (DARKEST - LIGHTEST), away * end[0], away * end[1]);
    }
}
