package darkrim.present.picture;

import java.util.List;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/**
 * A camera with flat pictures, in perspective or with parallel lines of sight. Immutable.
 *
 * @param middle the point that is in the middle of the picture, mm
 * @param right direction that is to the right in the picture, unit length
 * @param up direction that is up in the picture, unit length
 * @param away direction in which the camera looks, unit length
 * @param halfHeight half the height of what is seen in the plane of the middle, mm
 * @param distance of the eye from the middle, mm; infinite for parallel lines of sight
 */
public record Camera(Vector3D middle, Vector3D right, Vector3D up, Vector3D away, double halfHeight, double distance)
        implements Sight {
    /** Half the angle that a perspective picture is high, as a slope: 15 deg. */
    private static final double SLOPE = 0.2679491924311227;
    /** The parts fill this share of the picture. */
    private static final double FILL = 0.94;

    /**
     * A camera with parallel lines of sight that shows points as large as they fit.
     *
     * @param from azimuth and elevation of the eye
     * @param points what must be seen, mm; at least one
     * @param aspect width of the picture over its height
     */
    public static Camera parallel(ViewDirection from, List<Vector3D> points, double aspect) {
        Extent extent = new Extent(from, points);
        double half = Math.max(extent.height(), extent.width() / aspect) / 2;
        double halfHeight = half > 0 ? half / FILL : 1;
        return new Camera(extent.middle(), from.right(), from.up(), from.away(), halfHeight, Double.POSITIVE_INFINITY);
    }

    /** The same in perspective. */
    public static Camera perspective(ViewDirection from, List<Vector3D> points, double aspect) {
        Vector3D middle = new Extent(from, points).middle();
        double distance = 0;
        for (Vector3D point : points) {
            Vector3D at = point.subtract(middle);
            double off = Math.max(Math.abs(at.dot(from.up())), Math.abs(at.dot(from.right())) / aspect);
            distance = Math.max(distance, off / (SLOPE * FILL) - at.dot(from.away()));
        }
        double positive = distance > 0 ? distance : 1;
        return new Camera(middle, from.right(), from.up(), from.away(), positive * SLOPE, positive);
    }

    /** Whether lines of sight are parallel: lengths can then be measured in the picture. */
    public boolean isParallel() {
        return Double.isInfinite(distance);
    }

    /** The same with what is seen made larger about the middle. */
    public Camera magnified(double factor) {
        return new Camera(middle, right, up, away, halfHeight / factor, isParallel() ? distance : distance / factor);
    }

    @Override
    public boolean line(double x, double y, SightLine into) {
        double inRight = x * halfHeight;
        double inUp = y * halfHeight;
        if (isParallel()) {
            // Far enough back that the start lies before all parts is what clipping sees to; here it is in the middle
            // plane.
            into.x = middle.getX() + inRight * right.getX() + inUp * up.getX();
            into.y = middle.getY() + inRight * right.getY() + inUp * up.getY();
            into.z = middle.getZ() + inRight * right.getZ() + inUp * up.getZ();
            into.dx = away.getX();
            into.dy = away.getY();
            into.dz = away.getZ();
            return true;
        }
        into.x = middle.getX() - distance * away.getX();
        into.y = middle.getY() - distance * away.getY();
        into.z = middle.getZ() - distance * away.getZ();
        double dx = inRight * right.getX() + inUp * up.getX() + distance * away.getX();
        double dy = inRight * right.getY() + inUp * up.getY() + distance * away.getY();
        double dz = inRight * right.getZ() + inUp * up.getZ() + distance * away.getZ();
        double length = Math.sqrt(dx * dx + dy * dy + dz * dz);
        into.dx = dx / length;
        into.dy = dy / length;
        into.dz = dz / length;
        return true;
    }

    @Override
    public boolean place(Vector3D point, double[] into) {
        Vector3D at = point.subtract(middle);
        double scale = halfHeight;
        if (!isParallel()) {
            double depth = at.dot(away) + distance;
            if (!(depth > 1e-6 * distance)) {
                return false;
            }
            scale = halfHeight * depth / distance;
        }
        into[0] = at.dot(right) / scale;
        into[1] = at.dot(up) / scale;
        return true;
    }

    /** How far points reach along the directions of a picture. */
    private static final class Extent {
        private final ViewDirection from;
        private final double[] least = new double[3];
        private final double[] most = new double[3];

        Extent(ViewDirection from, List<Vector3D> points) {
            this.from = from;
            java.util.Arrays.fill(least, Double.POSITIVE_INFINITY);
            java.util.Arrays.fill(most, Double.NEGATIVE_INFINITY);
            for (Vector3D point : points) {
                double[] along = {point.dot(from.right()), point.dot(from.up()), point.dot(from.away())};
                for (int k = 0; k < along.length; k++) {
                    least[k] = Math.min(least[k], along[k]);
                    most[k] = Math.max(most[k], along[k]);
                }
            }
        }

        double width() {
            return most[0] - least[0];
        }

        double height() {
            return most[1] - least[1];
        }

        Vector3D middle() {
            return Vector3D.Sum.create()
                    .addScaled((least[0] + most[0]) / 2, from.right())
                    .addScaled((least[1] + most[1]) / 2, from.up())
                    .addScaled((least[2] + most[2]) / 2, from.away())
                    .get();
        }
    }
}
