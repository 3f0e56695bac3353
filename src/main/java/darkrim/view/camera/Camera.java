package darkrim.view.camera;

import org.apache.commons.geometry.euclidean.threed.Vector3D;

/**
 * Where the viewer stands and looks. The z axis stays upright on the screen. Immutable.
 *
 * @param focus the point in the middle of the picture about whose depth the picture is to scale, mm
 * @param azimuth angle of the viewer about +z from +x, deg
 * @param elevation angle of the viewer above the plane of x and y, -90 to 90 deg
 * @param span what the height of the picture measures at the focus, mm
 * @param parallel whether lines of sight are parallel; otherwise they meet in the eye
 */
public record Camera(Vector3D focus, double azimuth, double elevation, double span, boolean parallel) {
    /** Angle that the height of the picture takes up as seen from the eye, deg. */
    public static final double FIELD = 30;

    private static final double HALF_FIELD_TANGENT = StrictMath.tan(StrictMath.toRadians(FIELD / 2));
    /** Room around what is fitted in, as a share of its size. */
    private static final double ROOM = 1.06;

    private static final double LEAST_SPAN = 1e-4;
    private static final double MOST_SPAN = 1e7;

    /** Keeps angles and span within their ranges. */
    public Camera {
        azimuth = Math.IEEEremainder(azimuth, 360);
        elevation = Math.max(-90, Math.min(90, elevation));
        span = Math.max(LEAST_SPAN, Math.min(MOST_SPAN, span));
    }

    /** A first look at a box: from in front, above and to the right. */
    public static Camera at(Box box, double aspect) {
        return new Camera(box.centre(), -60, 30, 1, false).fitted(box, aspect);
    }

    /** To the right in the picture, unit length. */
    public Vector3D right() {
        double turn = StrictMath.toRadians(azimuth);
        return Vector3D.of(-StrictMath.sin(turn), StrictMath.cos(turn), 0);
    }

    /** From the focus to the viewer, unit length. */
    public Vector3D back() {
        double turn = StrictMath.toRadians(azimuth);
        double rise = StrictMath.toRadians(elevation);
        double flat = StrictMath.cos(rise);
        return Vector3D.of(flat * StrictMath.cos(turn), flat * StrictMath.sin(turn), StrictMath.sin(rise));
    }

    /** Up in the picture, unit length. */
    public Vector3D up() {
        return back().cross(right());
    }

    /** Distance of the eye from the focus, mm; in parallel projection what it would be in the other. */
    public double distance() {
        return span / (2 * HALF_FIELD_TANGENT);
    }

    /** The eye, mm. */
    public Vector3D eye() {
        return focus.add(back().multiply(distance()));
    }

    /** A point as the viewer has it: to the right, up and toward the viewer of the focus, mm. */
    public Vector3D seen(Vector3D point) {
        Vector3D from = point.subtract(focus);
        return Vector3D.of(from.dot(right()), from.dot(up()), from.dot(back()));
    }

    private Vector3D unseen(Vector3D seen) {
        return right().multiply(seen.getX()).add(up().multiply(seen.getY())).add(back().multiply(seen.getZ()));
    }

    /** How many mm a pixel is at the depth of a point, in a picture of a height in pixels. */
    public double millimetresPerPixel(Vector3D point, double height) {
        double nearer = parallel ? 1 : Math.max(1e-6, 1 - seen(point).getZ() / distance());
        return span * nearer / height;
    }

    /**
     * Where a point is in a picture.
     *
     * @param point the point, mm
     * @param width width of the picture, pixels
     * @param height height of the picture, pixels
     * @return pixels from the left, pixels from above, and mm in front of the eye; meaningless where the last is not positive
     */
    public Vector3D project(Vector3D point, double width, double height) {
        Vector3D seen = seen(point);
        double depth = distance() - seen.getZ();
        double scale = height / (parallel ? span : 2 * HALF_FIELD_TANGENT * depth);
        return Vector3D.of(width / 2 + seen.getX() * scale, height / 2 - seen.getY() * scale, depth);
    }

    /**
     * The line of sight through a place in a picture.
     *
     * @param x pixels from the left
     * @param y pixels from above
     * @param width width of the picture, pixels
     * @param height height of the picture, pixels
     * @param reach in parallel projection how far in front of the focus it begins, mm
     */
    public SightLine through(double x, double y, double width, double height, double reach) {
        double acrossMm = (x - width / 2) * span / height;
        double upMm = (height / 2 - y) * span / height;
        Vector3D onFocus = focus.add(right().multiply(acrossMm)).add(up().multiply(upMm));
        return parallel
                ? new SightLine(onFocus.add(back().multiply(reach)), back().negate())
                : new SightLine(eye(), onFocus.subtract(eye()).normalize());
    }

    /** Turned about a point, which stays where it is in the picture. */
    public Camera orbited(Vector3D about, double byAzimuth, double byElevation) {
        Vector3D seen = seen(about);
        Camera turned = new Camera(focus, azimuth + byAzimuth, elevation + byElevation, span, parallel);
        return turned.focused(about.subtract(turned.unseen(seen)));
    }

    /** Shifted so that the picture moves to the right and down, mm at the focus. */
    public Camera panned(double toRight, double down) {
        return focused(focus.subtract(right().multiply(toRight)).add(up().multiply(down)));
    }

    /** Nearer to a point, which stays where it is in the picture; a factor below 1 makes everything larger. */
    public Camera zoomed(Vector3D about, double factor) {
        double held = Math.max(LEAST_SPAN, Math.min(MOST_SPAN, span * factor)) / span;
        return new Camera(about.add(focus.subtract(about).multiply(held)), azimuth, elevation, span * held, parallel);
    }

    /** Seen from one of the standard directions. */
    public Camera from(Direction direction) {
        return new Camera(focus, direction.azimuth(), direction.elevation(), span, parallel);
    }

    /** In the other projection, or the same; what lies at the depth of the focus keeps its size. */
    public Camera projecting(boolean inParallel) {
        return new Camera(focus, azimuth, elevation, span, inParallel);
    }

    /** Looking at another point. */
    public Camera focused(Vector3D point) {
        return new Camera(point, azimuth, elevation, span, parallel);
    }

    /**
     * From the same direction, so that a box fills the picture.
     *
     * @param box what to show
     * @param aspect width over height of the picture
     */
    public Camera fitted(Box box, double aspect) {
        Camera centred = focused(box.centre());
        double needed = 0;
        for (Vector3D corner : box.corners()) {
            Vector3D seen = centred.seen(corner);
            double across = Math.max(Math.abs(seen.getY()), Math.abs(seen.getX()) / aspect);
            needed = Math.max(needed, 2 * (across + (parallel ? 0 : HALF_FIELD_TANGENT * seen.getZ())));
        }
        return new Camera(centred.focus, azimuth, elevation, ROOM * needed, parallel);
    }
}
