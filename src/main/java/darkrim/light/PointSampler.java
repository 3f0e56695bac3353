package darkrim.light;

import darkrim.scene.CellGrid;
import darkrim.scene.Scene;
import darkrim.scene.Surface;
import darkrim.trace.Ray;
import darkrim.trace.StartPoints;
import java.util.Arrays;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.apache.commons.rng.UniformRandomProvider;

/**
 * Draws points uniformly over a receiver, kept clear of edges as {@link StartPoints} does. The last point drawn stands in the fields.
 * Mutable, one for each thread and receiver.
 */
final class PointSampler {
    private final Scene scene;
    private final int firstFacet;
    private final int facetCount;
    private final double side;
    private final double[] areaUpTo;
    private final CellGrid grid;
    private final double columnsPerU;
    private final double rowsPerV;
    private final boolean fixed;
    private final StartPoints starts;
    private final double[] placed = new double[3];

    double x;
    double y;
    double z;
    double nx;
    double ny;
    double nz;
    int plane;
    int facet = -1;
    int cell = -1;

    PointSampler(Scene scene, StartPoints starts, Receiver receiver) {
        this.scene = scene;
        this.starts = starts;
        if (receiver instanceof Receiver.OnSurface on) {
            Surface surface = on.surface();
            firstFacet = surface.firstFacet();
            facetCount = surface.facetCount();
            side = surface.back() ? -1 : 1;
            grid = surface.grid().orElse(null);
            areaUpTo = new double[facetCount];
            double sum = 0;
            for (int i = 0; i < facetCount; i++) {
                sum += scene.facetArea(firstFacet + i);
                areaUpTo[i] = sum;
            }
            fixed = false;
            columnsPerU = grid == null ? 0 : grid.columns() / grid.alongU().normSq();
            rowsPerV = grid == null ? 0 : grid.rows() / grid.alongV().normSq();
        } else {
            Receiver.AtPoint at = (Receiver.AtPoint) receiver;
            firstFacet = -1;
            facetCount = 0;
            side = 1;
            grid = null;
            areaUpTo = new double[0];
            fixed = true;
            columnsPerU = 0;
            rowsPerV = 0;
            place(at.position());
            nx = at.normal().getX();
            ny = at.normal().getY();
            nz = at.normal().getZ();
            plane = Ray.NO_PLANE;
        }
    }

    /** Draws the next point of a part of the receiver; it belongs to no cell. */
    void next(UniformRandomProvider random, Patch patch) {
        int triangle = patch.triangles() == 1 ? 0 : patch.triangleAt(random.nextDouble());
        double root = Math.sqrt(random.nextDouble());
        double second = root * (1 - random.nextDouble());
        int facet = patch.facet(triangle);
        starts.place(
                facet,
                patch.weight(triangle, 1 - root, second, 0),
                patch.weight(triangle, 1 - root, second, 1),
                side > 0,
                placed);
        x = placed[0];
        y = placed[1];
        z = placed[2];
        face(facet);
    }

    /** Draws a point of the piece of the receiver that a link reaches. */
    void next(UniformRandomProvider random, LightLinks links, int link) {
        if (fixed) {
            return;
        }
        double root = Math.sqrt(random.nextDouble());
        double second = root * (1 - random.nextDouble());
        int on = links.pieces().facet(links.to(link));
        starts.place(
                on,
                links.weightTo(link, 1 - root, second, 0),
                links.weightTo(link, 1 - root, second, 1),
                side > 0,
                placed);
        x = placed[0];
        y = placed[1];
        z = placed[2];
        face(on);
        findCell();
    }

    /** Draws the next point. */
    void next(UniformRandomProvider random) {
        if (fixed) {
            return;
        }
        int facet = firstFacet + pick(random.nextDouble());
        double root = Math.sqrt(random.nextDouble());
        double t = random.nextDouble();
        starts.place(facet, 1 - root, root * (1 - t), side > 0, placed);
        x = placed[0];
        y = placed[1];
        z = placed[2];
        face(facet);
        findCell();
    }

    private void findCell() {
        if (grid != null) {
            int column = clamp(along(grid.alongU()) * columnsPerU, grid.columns());
            int row = clamp(along(grid.alongV()) * rowsPerV, grid.rows());
            cell = column + grid.columns() * row;
        }
    }

    private double along(Vector3D edge) {
        Vector3D corner = grid.origin();
        return (x - corner.getX()) * edge.getX()
                + (y - corner.getY()) * edge.getY()
                + (z - corner.getZ()) * edge.getZ();
    }

    private static int clamp(double place, int count) {
        return Math.min(count - 1, Math.max(0, (int) place));
    }

    private void face(int on) {
        facet = on;
        nx = side * scene.normal(on, 0);
        ny = side * scene.normal(on, 1);
        nz = side * scene.normal(on, 2);
        plane = scene.plane(on);
    }

    private void place(Vector3D position) {
        x = position.getX();
        y = position.getY();
        z = position.getZ();
    }

    private int pick(double share) {
        if (facetCount == 1) {
            return 0;
        }
        int found = Arrays.binarySearch(areaUpTo, share * areaUpTo[facetCount - 1]);
        return Math.min(facetCount - 1, found >= 0 ? found + 1 : -found - 1);
    }
}
