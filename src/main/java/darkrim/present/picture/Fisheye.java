package darkrim.present.picture;

import darkrim.geom.Frame;
import darkrim.geom.Outline;
import darkrim.geom.Polygon;
import darkrim.geom.Ring;
import darkrim.scene.Pupil;
import darkrim.study.SurfacePoint;
import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.Rectangle;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Path2D;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/**
 * What one point sees, in a disc: the direction in which its surface faces is in the middle, and the distance from the middle grows in
 * proportion to the angle from there (equidistant projection). Immutable.
 *
 * @param at the point and the directions that are right, up and to the viewer's front in the picture; the normal of the frame is the direction
 *     in the middle
 * @param halfAngle angle at the rim of the disc, deg, up to 90
 * @param pupil the pupil, which is outlined whether parts hide it or not
 */
record Fisheye(Frame at, double halfAngle, Pupil pupil) implements Sight {
    private static final Color RIM = new Color(0x20242a);
    private static final Color PUPIL = new Color(0x0a6b7a);
    private static final double FILL = 0.97;
    private static final int POINTS = 180;

    @Override
    public boolean line(double x, double y, SightLine into) {
        double radius = Math.sqrt(x * x + y * y) / FILL;
        if (radius > 1) {
            return false;
        }
        double angle = Math.toRadians(radius * halfAngle);
        double off = radius > 0 ? StrictMath.sin(angle) / (radius * FILL) : 0;
        double front = StrictMath.cos(angle);
        Vector3D direction = Vector3D.Sum.create()
                .addScaled(x * off, at.u())
                .addScaled(y * off, at.v())
                .addScaled(front, at.normal())
                .get()
                .normalize();
        into.x = at.origin().getX();
        into.y = at.origin().getY();
        into.z = at.origin().getZ();
        into.dx = direction.getX();
        into.dy = direction.getY();
        into.dz = direction.getZ();
        return true;
    }

    @Override
    public boolean place(Vector3D point, double[] into) {
        double u = at.inU(point);
        double v = at.inV(point);
        double off = Math.sqrt(u * u + v * v);
        double radius = Math.toDegrees(StrictMath.atan2(off, at.height(point))) / halfAngle;
        if (radius > 1) {
            return false;
        }
        into[0] = off > 0 ? FILL * radius * u / off : 0;
        into[1] = off > 0 ? FILL * radius * v / off : 0;
        return true;
    }

    /**
     * The sight from a point.
     *
     * @param from the point
     * @param up the direction along the surface that is up in the picture
     * @param halfAngle angle at the rim, deg, above 0 and up to 90
     * @param pupil the pupil
     */
    static Fisheye of(SurfacePoint from, Vector3D up, double halfAngle, Pupil pupil) {
        Vector3D unitUp = up.normalize();
        return new Fisheye(Frame.of(from.position(), unitUp.cross(from.normal()), unitUp), halfAngle, pupil);
    }

    /** Draws the rim of the disc and the outline of the pupil. */
    void outline(Graphics2D graphics, Rectangle room, double scale) {
        double half = room.height / 2.0;
        double radius = FILL * half;
        graphics.setColor(RIM);
        graphics.setStroke(new BasicStroke((float) (1.5 * scale)));
        graphics.draw(new Ellipse2D.Double(room.width / 2.0 - radius, half - radius, 2 * radius, 2 * radius));
        Path2D path = new Path2D.Double();
        Outline shape = pupil.outline();
        if (shape instanceof Ring ring) {
            circle(path, ring.radius(), room);
            if (ring.hole() > 0) {
                circle(path, ring.hole(), room);
            }
        } else if (shape instanceof Polygon polygon) {
            polygon(path, polygon, room);
        }
        graphics.setColor(Color.WHITE);
        graphics.setStroke(new BasicStroke((float) (3.6 * scale)));
        graphics.draw(path);
        graphics.setColor(PUPIL);
        graphics.setStroke(new BasicStroke((float) (1.8 * scale)));
        graphics.draw(path);
    }

    /** Writes which directions of the layout are to the right and up, beside the disc. */
    void compass(Sheet sheet, Graphics2D graphics, Rectangle room) {
        graphics.setFont(Sheet.font(java.awt.Font.PLAIN, sheet.letters()));
        graphics.setColor(RIM);
        java.awt.FontMetrics metrics = graphics.getFontMetrics();
        double half = room.height / 2.0;
        double radius = FILL * half + sheet.margin() / 2.0;
        float beside = (float) (room.width / 2.0 + radius);
        graphics.drawString("right: " + axis(at.u()), beside, (float) (half + metrics.getAscent() / 2.0));
        graphics.drawString("up: " + axis(at.v()), beside, (float) (half - metrics.getHeight()));
        graphics.drawString(
                "rim: " + RoundNumbers.letters(halfAngle) + " deg", beside, (float) (half + 2.0 * metrics.getHeight()));
    }

    /** The axis of the layout that is nearest to a direction. */
    static String axis(Vector3D direction) {
        double[] along = direction.toArray();
        int most = 0;
        for (int k = 1; k < along.length; k++) {
            if (Math.abs(along[k]) > Math.abs(along[most])) {
                most = k;
            }
        }
        return (along[most] < 0 ? "-" : "+") + "xyz".charAt(most);
    }

    private void circle(Path2D path, double radius, Rectangle room) {
        boolean pen = false;
        for (int i = 0; i <= POINTS; i++) {
            double turn = 2 * Math.PI * i / POINTS;
            pen = point(path, radius * StrictMath.cos(turn), radius * StrictMath.sin(turn), room, pen);
        }
    }

    private void polygon(Path2D path, Polygon polygon, Rectangle room) {
        boolean pen = false;
        int count = polygon.corners().size();
        for (int i = 0; i < count; i++) {
            var from = polygon.corners().get(i);
            var to = polygon.corners().get((i + 1) % count);
            for (int k = 0; k <= POINTS / count; k++) {
                double t = (double) k * count / POINTS;
                pen = point(
                        path,
                        from.getX() + t * (to.getX() - from.getX()),
                        from.getY() + t * (to.getY() - from.getY()),
                        room,
                        pen);
            }
        }
    }

    private boolean point(Path2D path, double u, double v, Rectangle room, boolean pen) {
        double[] place = new double[2];
        if (!place(pupil.frame().at(u, v), place)) {
            return false;
        }
        double half = room.height / 2.0;
        double x = room.width / 2.0 + place[0] * half;
        double y = half - place[1] * half;
        if (pen) {
            path.lineTo(x, y);
        } else {
            path.moveTo(x, y);
        }
        return true;
    }
}
