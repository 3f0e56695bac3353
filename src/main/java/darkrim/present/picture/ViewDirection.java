package darkrim.present.picture;

import org.apache.commons.geometry.euclidean.threed.Vector3D;

/**
 * From where parts are looked at.
 *
 * @param azimuth angle of the eye about z from +x toward +y, deg
 * @param elevation angle of the eye above the plane of x and y, -90 to 90 deg
 */
public record ViewDirection(double azimuth, double elevation) {
    /** From above, +x to the right and +y up, as a layout is drawn. */
    public static final ViewDirection TOP = new ViewDirection(-90, 90);
    /** From below, +x to the right. */
    public static final ViewDirection BOTTOM = new ViewDirection(-90, -90);
    /** From -y, +x to the right. */
    public static final ViewDirection FRONT = new ViewDirection(-90, 0);
    /** From +y. */
    public static final ViewDirection BACK = new ViewDirection(90, 0);
    /** From -x. */
    public static final ViewDirection LEFT = new ViewDirection(180, 0);
    /** From +x. */
    public static final ViewDirection RIGHT = new ViewDirection(0, 0);
    /** From above over the corner of +x and -y. */
    public static final ViewDirection CORNER = new ViewDirection(-60, 40);

    /**
     * @throws IllegalArgumentException if an angle is not finite or the elevation is beyond a right angle
     */
    public ViewDirection {
        if (!Double.isFinite(azimuth) || !(Math.abs(elevation) <= 90)) {
            throw new IllegalArgumentException("no direction to look from: " + azimuth + ", " + elevation);
        }
    }

    /** Direction in which the eye looks, unit length. */
    public Vector3D away() {
        return Vector3D.of(-cosine(elevation) * cosine(azimuth), -cosine(elevation) * sine(azimuth), -sine(elevation));
    }

    /** Direction that is to the right in the picture, unit length. */
    public Vector3D right() {
        return Vector3D.of(-sine(azimuth), cosine(azimuth), 0);
    }

    /** Direction that is up in the picture, unit length. */
    public Vector3D up() {
        return right().cross(away());
    }

    /** Exact at right angles, so that a picture from the top shows no walls that stand upright. */
    private static double cosine(double degrees) {
        return sine(degrees + 90);
    }

    private static double sine(double degrees) {
        double turned = Math.IEEEremainder(degrees, 360);
        if (turned == 0 || Math.abs(turned) == 180) {
            return 0;
        }
        return Math.abs(turned) == 90 ? Math.signum(turned) : StrictMath.sin(Math.toRadians(turned));
    }
}
