package darkrim.study.contact;

import darkrim.scene.Scene;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/**
 * The straight stretch in which two facets meet that are not parallel: where each crosses the plane of the other, as far as both reach
 * (Möller, A Fast Triangle-Triangle Intersection Test, Journal of Graphics Tools 2(2), 1997).
 *
 * @param from one end, mm
 * @param to the other end, mm
 * @param through whether each facet goes on to both sides of the other, beyond the tolerance
 */
record FacetCrossing(Vector3D from, Vector3D to, boolean through) {
    /** Planes that meet at a smaller angle, rad, have no line in common that is known well enough. */
    private static final double LEAST_SINE = 1e-4;

    /**
     * The crossing of two facets.
     *
     * @param tolerance corners this near to a plane lie in it, and shorter crossings count for nothing, mm
     * @return null if there is none
     */
    static FacetCrossing of(Scene scene, int f, int g, double tolerance) {
        Vector3D along = scene.normal(f).cross(scene.normal(g));
        double sine = along.norm();
        if (sine < LEAST_SINE) {
            return null;
        }
        double[] heightsOfF = heights(scene, f, g);
        double[] heightsOfG = heights(scene, g, f);
        Vector3D[] inF = stretch(scene, f, heightsOfF, tolerance);
        Vector3D[] inG = stretch(scene, g, heightsOfG, tolerance);
        if (inF == null || inG == null) {
            return null;
        }
        Vector3D way = along.multiply(1 / sine);
        double start = inF[0].dot(way);
        double end = inF[1].dot(way);
        double from = Math.max(Math.min(start, end), Math.min(inG[0].dot(way), inG[1].dot(way)));
        double to = Math.min(Math.max(start, end), Math.max(inG[0].dot(way), inG[1].dot(way)));
        if (!(to - from > 4 * tolerance)) {
            return null;
        }
        Vector3D first = inF[0].add(way.multiply(from - start));
        Vector3D last = inF[0].add(way.multiply(to - start));
        return new FacetCrossing(first, last, straddles(heightsOfF, tolerance) && straddles(heightsOfG, tolerance));
    }

    Vector3D middle() {
        return from.lerp(to, 0.5);
    }

    /** Heights of the corners of a facet above the plane of another, mm. */
    private static double[] heights(Scene scene, int f, int plane) {
        double[] heights = new double[3];
        for (int k = 0; k < 3; k++) {
            heights[k] = scene.normal(plane).dot(scene.corner(f, k).subtract(scene.corner(plane, 0)));
        }
        return heights;
    }

    private static boolean straddles(double[] heights, double tolerance) {
        return Math.min(heights[0], Math.min(heights[1], heights[2])) < -tolerance
                && Math.max(heights[0], Math.max(heights[1], heights[2])) > tolerance;
    }

    /** Where a facet meets a plane: two ends, or null where that is no more than a point. */
    private static Vector3D[] stretch(Scene scene, int f, double[] heights, double tolerance) {
        double flat = tolerance / 8;
        Vector3D[] ends = new Vector3D[3];
        int count = 0;
        for (int k = 0; k < 3; k++) {
            double here = heights[k];
            double next = heights[(k + 1) % 3];
            if (Math.abs(here) <= flat) {
                ends[count++] = scene.corner(f, k);
            } else if (Math.abs(next) > flat && here < 0 != next < 0) {
                ends[count++] = scene.corner(f, k).lerp(scene.corner(f, (k + 1) % 3), here / (here - next));
            }
        }
        return count == 2 ? ends : null;
    }
}
