package darkrim.assembly;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/**
 * Equal cells on a face that is one rectangle. Columns run along the side that is nearest to the x axis, or to the y axis where the face is
 * square to x; both sides run in the direction of their largest coordinate.
 *
 * @param origin the corner of the first cell, mm
 * @param alongColumns the whole side along which the columns are counted, mm
 * @param alongRows the whole other side, mm
 * @param columns number of columns
 * @param rows number of rows
 */
public record MapGrid(Vector3D origin, Vector3D alongColumns, Vector3D alongRows, int columns, int rows) {
    /** Directions and areas agree to this share where they agree in the drawing. */
    private static final double ROUNDING = 1e-9;
    /** A face of more facets is not taken for a rectangle: the faces of parts that are rectangles have a handful. */
    private static final int MOST_FACETS = 32;

    /**
     * Cells on a face.
     *
     * @return empty unless the face is one rectangle, however its facets split it
     */
    public static Optional<MapGrid> on(Face face, int columns, int rows) {
        List<Triangle> facets = face.triangles();
        if (facets.size() > MOST_FACETS) {
            return Optional.empty();
        }
        Vector3D normal = facets.get(0).doubledNormal().normalize();
        Set<Vector3D> corners = new LinkedHashSet<>();
        for (Triangle facet : facets) {
            if (facet.doubledNormal().normalize().distance(normal) > ROUNDING) {
                return Optional.empty();
            }
            corners.addAll(List.of(facet.a(), facet.b(), facet.c()));
        }
        double area = face.area();
        for (Triangle facet : facets) {
            for (Vector3D side : List.of(
                    facet.b().subtract(facet.a()),
                    facet.c().subtract(facet.b()),
                    facet.a().subtract(facet.c()))) {
                Optional<MapGrid> grid = filling(corners, side.normalize(), normal, area, columns, rows);
                if (grid.isPresent()) {
                    return grid;
                }
            }
        }
        return Optional.empty();
    }

    /** The box of the corners along one direction and across; it is the face if their areas agree. */
    private static Optional<MapGrid> filling(
            Set<Vector3D> corners, Vector3D side, Vector3D normal, double area, int columns, int rows) {
        Vector3D first = forward(side);
        Vector3D second = forward(normal.cross(side));
        boolean exchange = axisRank(second) < axisRank(first);
        Vector3D u = exchange ? second : first;
        Vector3D v = exchange ? first : second;
        Vector3D origin = null;
        double leastU = Double.POSITIVE_INFINITY;
        double leastV = Double.POSITIVE_INFINITY;
        double mostU = Double.NEGATIVE_INFINITY;
        double mostV = Double.NEGATIVE_INFINITY;
        double leastSum = Double.POSITIVE_INFINITY;
        for (Vector3D corner : corners) {
            double inU = corner.dot(u);
            double inV = corner.dot(v);
            leastU = Math.min(leastU, inU);
            leastV = Math.min(leastV, inV);
            mostU = Math.max(mostU, inU);
            mostV = Math.max(mostV, inV);
            if (inU + inV < leastSum) {
                leastSum = inU + inV;
                origin = corner;
            }
        }
        double width = mostU - leastU;
        double height = mostV - leastV;
        boolean fills = Math.abs(width * height - area) <= ROUNDING * area;
        return fills
                ? Optional.of(new MapGrid(origin, u.multiply(width), v.multiply(height), columns, rows))
                : Optional.empty();
    }

    private static Vector3D forward(Vector3D direction) {
        double x = Math.abs(direction.getX());
        double y = Math.abs(direction.getY());
        double z = Math.abs(direction.getZ());
        // A tie, as at 45 degrees, goes to the earlier axis whatever the rounding.
        double largest = Math.max(x, Math.max(y, z)) * (1 - ROUNDING);
        double leading = x >= largest ? direction.getX() : y >= largest ? direction.getY() : direction.getZ();
        return leading < 0 ? direction.negate() : direction;
    }

    /** Less for a direction nearer to the x axis, then to the y axis. */
    private static double axisRank(Vector3D direction) {
        double x = Math.abs(direction.getX());
        double y = Math.abs(direction.getY());
        return x > ROUNDING ? -1 - x : y > ROUNDING ? -y : 0;
    }
}
