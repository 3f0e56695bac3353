package darkrim.light;

import darkrim.scene.CellGrid;
import darkrim.scene.Scene;
import darkrim.scene.Surface;
import darkrim.trace.Ray;
import java.util.Arrays;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.apache.commons.rng.UniformRandomProvider;

/**
 * Draws points uniformly over a receiver. The last point drawn stands in the fields. Mutable, one for each thread and receiver.
 *
 * <p>Points keep a share of 2^-36 of the facet away from its edges, so that none lies within rounding of a neighbouring facet.
 */
final class PointSampler {
    private static final double FROM_EDGE = 0x1p-36;

    private final Scene scene;
    private final int firstFacet;
    private final int facetCount;
    private final double side;
    private final double[] areaUpTo;
    private final CellGrid grid;
    private final boolean fixed;

    double x;
    double y;
    double z;
    double nx;
    double ny;
    double nz;
    int plane;
    int cell = -1;

    PointSampler(Scene scene, Receiver receiver) {
        this.scene = scene;
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
            face(firstFacet);
        } else {
            Receiver.AtPoint at = (Receiver.AtPoint) receiver;
            firstFacet = -1;
            facetCount = 0;
            side = 1;
            grid = null;
            areaUpTo = new double[0];
            fixed = true;
            place(at.position());
            nx = at.normal().getX();
            ny = at.normal().getY();
            nz = at.normal().getZ();
            plane = Ray.NO_PLANE;
        }
    }

    /** Draws the next point. */
    void next(UniformRandomProvider random) {
        if (fixed) {
            return;
        }
        if (grid != null) {
            double s = inside(random.nextDouble());
            double t = inside(random.nextDouble());
            place(grid.at(s, t));
            cell = (int) (s * grid.columns()) + grid.columns() * (int) (t * grid.rows());
            return;
        }
        int facet = firstFacet + pick(random.nextDouble());
        double root = Math.sqrt(random.nextDouble());
        double t = random.nextDouble();
        double a = inside(1 - root);
        double b = inside(root * (1 - t));
        double c = inside(root * t);
        double sum = a + b + c;
        a /= sum;
        b /= sum;
        c /= sum;
        x = a * scene.corner(facet, 0, 0) + b * scene.corner(facet, 1, 0) + c * scene.corner(facet, 2, 0);
        y = a * scene.corner(facet, 0, 1) + b * scene.corner(facet, 1, 1) + c * scene.corner(facet, 2, 1);
        z = a * scene.corner(facet, 0, 2) + b * scene.corner(facet, 1, 2) + c * scene.corner(facet, 2, 2);
        face(facet);
    }

    private void face(int facet) {
        nx = side * scene.normal(facet, 0);
        ny = side * scene.normal(facet, 1);
        nz = side * scene.normal(facet, 2);
        plane = scene.plane(facet);
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

    private static double inside(double share) {
        return Math.min(1 - FROM_EDGE, Math.max(FROM_EDGE, share));
    }
}
