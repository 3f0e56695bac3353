package darkrim.study;

import darkrim.layout.form.Wording;
import darkrim.scene.Scene;
import darkrim.scene.Surface;
import darkrim.trace.FacetTree;
import darkrim.trace.StartPoints;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/**
 * A point of a flat surface.
 *
 * @param surface the surface
 * @param u share of the way across its bounding rectangle, 0 to 1; see {@link SurfaceRectangle}
 * @param v likewise, the other way
 * @param position the point, mm; lifted off the surface and kept clear of its edges by rounding, far below a nanometre
 * @param normal the direction in which the surface faces there, unit length
 */
public record SurfacePoint(Surface surface, double u, double v, Vector3D position, Vector3D normal) {
    /** Weights a little below 0 are those of points on an edge. */
    private static final double ON_EDGE = -1e-9;

    /**
     * Finds a point.
     *
     * @param scene the scene
     * @param tree the tree over its facets
     * @param name full name of the surface
     * @param u share across its bounding rectangle, 0 to 1
     * @param v likewise, the other way
     * @throws NoSuchPoint if there is no such surface, it is curved, or the point lies outside its outline
     */
    public static SurfacePoint of(Scene scene, FacetTree tree, String name, double u, double v) throws NoSuchPoint {
        Surface surface = SurfaceNames.find(scene, name);
        requireFlat(scene, surface);
        if (!(u >= 0 && u <= 1 && v >= 0 && v <= 1)) {
            throw new NoSuchPoint("u and v are shares from 0 to 1, got " + Wording.number(u) + "," + Wording.number(v));
        }
        Vector3D wanted = SurfaceRectangle.of(scene, surface).at(u, v);
        int best = surface.firstFacet();
        double[] bestWeights = new double[3];
        double most = Double.NEGATIVE_INFINITY;
        for (int f = surface.firstFacet(); f < surface.firstFacet() + surface.facetCount(); f++) {
            double[] weights = weights(scene, f, wanted);
            double least = Math.min(weights[0], Math.min(weights[1], weights[2]));
            if (least > most) {
                most = least;
                best = f;
                bestWeights = weights;
            }
        }
        if (most < ON_EDGE) {
            throw new NoSuchPoint("the point " + Wording.number(u) + "," + Wording.number(v)
                    + " of the rectangle around '" + name + "' lies outside the surface's outline");
        }
        double[] placed = new double[3];
        double a = Math.max(0, bestWeights[0]);
        double b = Math.max(0, Math.min(1 - a, bestWeights[1]));
        new StartPoints(scene.corners(), tree).place(best, a, b, !surface.back(), placed);
        Vector3D normal = scene.normal(best);
        return new SurfacePoint(surface, u, v, Vector3D.of(placed), surface.back() ? normal.negate() : normal);
    }

    private static void requireFlat(Scene scene, Surface surface) throws NoSuchPoint {
        if (!SurfaceRectangle.isAround(scene, surface)) {
            throw new NoSuchPoint(
                    "'" + surface.name() + "' is not flat, so that u and v say no place on it; name a flat surface");
        }
    }

    /** Weights of a facet's corners at a point of its plane; all between 0 and 1 within the facet. */
    private static double[] weights(Scene scene, int f, Vector3D point) {
        Vector3D normal = scene.normal(f);
        double[] weights = new double[3];
        for (int k = 0; k < 3; k++) {
            Vector3D from = scene.corner(f, (k + 1) % 3);
            Vector3D side = scene.corner(f, (k + 2) % 3).subtract(from);
            weights[k] = side.cross(point.subtract(from)).dot(normal) / (2 * scene.facetArea(f));
        }
        return weights;
    }
}
