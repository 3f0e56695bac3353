package darkrim.study;

import darkrim.layout.form.Wording;
import darkrim.scene.Scene;
import darkrim.scene.Surface;
import darkrim.trace.FacetTree;
import darkrim.trace.StartPoints;
import java.util.Optional;
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
        Nearest nearest = Nearest.of(scene, surface, wanted);
        if (nearest.least() < ON_EDGE) {
            throw new NoSuchPoint("the point " + Wording.number(u) + "," + Wording.number(v)
                    + " of the rectangle around '" + name + "' lies outside the surface's outline");
        }
        Lifted lifted = nearest.lifted(scene, tree, surface);
        return new SurfacePoint(surface, u, v, lifted.position(), lifted.normal());
    }

    /**
     * A point of a surface, lifted off it.
     *
     * @param position as of a {@link SurfacePoint}
     * @param normal likewise
     */
    record Lifted(Vector3D position, Vector3D normal) {}

    /**
     * Lifts a point off its surface; empty if the surface is curved.
     *
     * @param scene the scene
     * @param tree the tree over its facets
     * @param surface the surface
     * @param point a point of it, mm
     */
    static Optional<Lifted> lifted(Scene scene, FacetTree tree, Surface surface, Vector3D point) {
        return SurfaceRectangle.isAround(scene, surface)
                ? Optional.of(Nearest.of(scene, surface, point).lifted(scene, tree, surface))
                : Optional.empty();
    }

    /**
     * The facet of a flat surface in which a point lies, or nearly.
     *
     * @param facet its number
     * @param least the least of the point's weights
     * @param a weight of the facet's first corner, cut off where the point lies outside
     * @param b likewise of the second
     */
    private record Nearest(int facet, double least, double a, double b) {
        static Nearest of(Scene scene, Surface surface, Vector3D point) {
            int best = surface.firstFacet();
            double[] bestWeights = new double[3];
            double most = Double.NEGATIVE_INFINITY;
            for (int f = surface.firstFacet(); f < surface.firstFacet() + surface.facetCount(); f++) {
                double[] weights = weights(scene, f, point);
                double least = Math.min(weights[0], Math.min(weights[1], weights[2]));
                if (least > most) {
                    most = least;
                    best = f;
                    bestWeights = weights;
                }
            }
            double a = Math.max(0, bestWeights[0]);
            return new Nearest(best, most, a, Math.max(0, Math.min(1 - a, bestWeights[1])));
        }

        Lifted lifted(Scene scene, FacetTree tree, Surface surface) {
            double[] placed = new double[3];
            new StartPoints(scene.corners(), tree).place(facet, a, b, !surface.back(), placed);
            Vector3D normal = scene.normal(facet);
            return new Lifted(Vector3D.of(placed), surface.back() ? normal.negate() : normal);
        }
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
