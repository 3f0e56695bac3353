package darkrim.study;

import darkrim.scene.Scene;
import darkrim.scene.Surface;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.locationtech.jts.algorithm.ConvexHull;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.GeometryFactory;

/**
 * The bounding rectangle of a flat surface in its own plane. Its sides run along the longest straight side of the surface; where no side
 * stands out (a disc), along the layout's axes.
 *
 * @param corner where both shares are 0, mm
 * @param alongU the side along which the first share runs, mm: the one nearest to +x, on surfaces that face along x to +y
 * @param alongV the side along which the second share runs, mm: the one nearest to +y, on upright surfaces to +z
 */
public record SurfaceRectangle(Vector3D corner, Vector3D alongU, Vector3D alongV) {
    /** A side stands out when it is at least this share of the way round. */
    private static final double STANDS_OUT = 0.1;

    /** Whether a surface has one: all its facets lie in one plane and face the same way. */
    public static boolean isAround(Scene scene, Surface surface) {
        int first = surface.firstFacet();
        return IntStream.range(first, first + surface.facetCount())
                .allMatch(f ->
                        scene.plane(f) == scene.plane(first) && scene.normal(f).dot(scene.normal(first)) > 0);
    }

    /** The rectangle of a surface that has one. */
    public static SurfaceRectangle of(Scene scene, Surface surface) {
        Vector3D normal = scene.normal(surface.firstFacet());
        Vector3D firstAxis = isNearest(normal.getX(), normal) ? Vector3D.Unit.PLUS_Y : Vector3D.Unit.PLUS_X;
        Vector3D secondAxis = isNearest(normal.getZ(), normal) ? Vector3D.Unit.PLUS_Y : Vector3D.Unit.PLUS_Z;
        Vector3D u = firstAxis.reject(normal).normalize();
        Vector3D v = normal.cross(u);
        v = v.dot(secondAxis) < 0 ? v.negate() : v;
        List<Vector3D> corners = corners(scene, surface);
        double turn = turn(corners, u, v);
        Vector3D turnedU = u.multiply(StrictMath.cos(turn)).add(v.multiply(StrictMath.sin(turn)));
        Vector3D turnedV = v.multiply(StrictMath.cos(turn)).subtract(u.multiply(StrictMath.sin(turn)));
        double[] inU = corners.stream().mapToDouble(turnedU::dot).sorted().toArray();
        double[] inV = corners.stream().mapToDouble(turnedV::dot).sorted().toArray();
        Vector3D origin = corners.get(0);
        return new SurfaceRectangle(
                origin.add(turnedU.multiply(inU[0] - turnedU.dot(origin)))
                        .add(turnedV.multiply(inV[0] - turnedV.dot(origin))),
                turnedU.multiply(inU[inU.length - 1] - inU[0]),
                turnedV.multiply(inV[inV.length - 1] - inV[0]));
    }

    /** The point at two shares, mm. */
    public Vector3D at(double u, double v) {
        return corner.add(alongU.multiply(u)).add(alongV.multiply(v));
    }

    private static boolean isNearest(double component, Vector3D normal) {
        double largest = Math.max(Math.abs(normal.getX()), Math.max(Math.abs(normal.getY()), Math.abs(normal.getZ())));
        return Math.abs(component) >= largest * (1 - 1e-9);
    }

    private static List<Vector3D> corners(Scene scene, Surface surface) {
        List<Vector3D> corners = new ArrayList<>();
        for (int f = surface.firstFacet(); f < surface.firstFacet() + surface.facetCount(); f++) {
            for (int k = 0; k < 3; k++) {
                corners.add(scene.corner(f, k));
            }
        }
        return corners;
    }

    /** Angle between the first direction and the nearest of the longest side and the square to it, -45 to 45 deg, rad. */
    private static double turn(List<Vector3D> corners, Vector3D u, Vector3D v) {
        Coordinate[] flat = corners.stream()
                .map(corner -> new Coordinate(u.dot(corner), v.dot(corner)))
                .toArray(Coordinate[]::new);
        Coordinate[] hull =
                new ConvexHull(flat, new GeometryFactory()).getConvexHull().getCoordinates();
        double round = 0;
        double longest = 0;
        double turn = 0;
        for (int i = 1; i < hull.length; i++) {
            double length = hull[i].distance(hull[i - 1]);
            round += length;
            if (length > longest * (1 + 1e-9)) {
                longest = length;
                turn = Math.IEEEremainder(
                        StrictMath.atan2(hull[i].y - hull[i - 1].y, hull[i].x - hull[i - 1].x), Math.PI / 2);
            }
        }
        return longest >= STANDS_OUT * round ? turn : 0;
    }
}
