package darkrim.study;

import darkrim.layout.form.Wording;
import darkrim.scene.Scene;
import darkrim.scene.Surface;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/**
 * A point as people write it: {@code SURFACE}, its middle, or {@code SURFACE:u,v}. Whether a scene has it is not known yet.
 *
 * @param surface full name of a surface
 * @param u share of the way across its bounding rectangle, 0 to 1; see {@link SurfaceRectangle}
 * @param v likewise, the other way
 */
public record PointName(String surface, double u, double v) {
    private static final double MIDDLE = 0.5;
    /** Digits after the point of a share that is written: on a surface of 100 mm, a micrometre. */
    private static final int DIGITS = 5;

    private static final String NUMBER = "([0-9]{0,20}\\.?[0-9]{0,20}(?:[eE][-+]?[0-9]{1,3})?)";
    private static final Pattern SHARES = Pattern.compile("\\s*" + NUMBER + "\\s*,\\s*" + NUMBER + "\\s*");

    /** The middle of a surface. */
    public static PointName middle(String surface) {
        return new PointName(surface, MIDDLE, MIDDLE);
    }

    /**
     * The point of a flat surface that is nearest to a point in space, to a hundred-thousandth of the surface's size.
     *
     * @param point a point in the surface, mm
     */
    public static PointName at(Scene scene, Surface surface, Vector3D point) {
        SurfaceRectangle rectangle = SurfaceRectangle.of(scene, surface);
        Vector3D from = point.subtract(rectangle.corner());
        return new PointName(surface.name(), share(from, rectangle.alongU()), share(from, rectangle.alongV()));
    }

    private static double share(Vector3D from, Vector3D along) {
        return rounded(from.dot(along) / along.normSq());
    }

    /** The point of a surface at two shares, which are rounded and brought between 0 and 1. */
    public static PointName rounded(String surface, double u, double v) {
        return new PointName(surface, rounded(u), rounded(v));
    }

    private static double rounded(double share) {
        return BigDecimal.valueOf(Math.max(0, Math.min(1, share)))
                .setScale(DIGITS, RoundingMode.HALF_EVEN)
                .doubleValue();
    }

    /**
     * Reads it; names of surfaces hold no colon, so the last one stands before the shares.
     *
     * @throws NoSuchPoint saying what was expected
     */
    public static PointName read(String text) throws NoSuchPoint {
        int colon = text.lastIndexOf(':');
        if (colon < 0) {
            return middle(text);
        }
        Matcher shares = SHARES.matcher(text.substring(colon + 1));
        if (!shares.matches()) {
            throw refused(text);
        }
        return new PointName(text.substring(0, colon), share(shares.group(1), text), share(shares.group(2), text));
    }

    private static double share(String number, String text) throws NoSuchPoint {
        try {
            double share = Double.parseDouble(number);
            if (share >= 0 && share <= 1) {
                return share;
            }
        } catch (NumberFormatException noDigits) {
            throw refused(text);
        }
        throw refused(text);
    }

    private static NoSuchPoint refused(String text) {
        return new NoSuchPoint("'" + Wording.shortened(text)
                + "' is no point: expected the name of a surface, then if need be a colon and two shares from 0 to 1, "
                + "such as 'mosaic/die[1,2]/active:0.25,0.5'");
    }

    /** As it is read. */
    public String text() {
        return surface + ":" + Wording.number(u) + "," + Wording.number(v);
    }
}
