package darkrim.hard;

import darkrim.scene.Scene;
import darkrim.trace.FacetTree;
import darkrim.trace.Ray;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import java.util.function.Consumer;
import org.apache.commons.geometry.euclidean.threed.Planes;
import org.apache.commons.geometry.euclidean.threed.Triangle3D;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.apache.commons.geometry.euclidean.threed.line.Line3D;
import org.apache.commons.geometry.euclidean.threed.line.Lines3D;
import org.apache.commons.numbers.core.Precision;

/** The nearest facet that a ray meets, by looking at all of them with the triangles of a library, which shares no code with the tree. */
final class FacetLoop {
    private static final Precision.DoubleEquivalence PRECISION = Precision.doubleEquivalenceOfEpsilon(1e-10);
    /** Hits this near to the edge of a facet, or to each other, may be told apart otherwise by either, mm. */
    private static final double NEAR = 1e-6;

    private final List<Triangle3D> facets = new ArrayList<>();

    private FacetLoop(Scene scene) {
        for (int f = 0; f < scene.facetCount(); f++) {
            facets.add(
                    Planes.triangleFromVertices(scene.corner(f, 0), scene.corner(f, 1), scene.corner(f, 2), PRECISION));
        }
    }

    /**
     * Compares rays by chance through a scene with what the tree finds.
     *
     * @param wrong receives what differs
     * @return how many rays were judged: those that pass an edge nearly are left out
     */
    static int compare(Scene scene, FacetTree tree, SplittableRandom random, int rays, Consumer<String> wrong) {
        FacetLoop loop = new FacetLoop(scene);
        Ray ray = new Ray();
        int judged = 0;
        for (int i = 0; i < rays; i++) {
            Vector3D from = place(random);
            Vector3D to = place(random);
            Vector3D way = to.subtract(from).normalize();
            double expected = loop.nearest(from, way);
            // A ray beside it that meets something much nearer or farther: this one passes an edge.
            if (loop.isDoubtful(from, way, expected)) {
                continue;
            }
            judged++;
            ray.set(from, way, Double.POSITIVE_INFINITY, Ray.NO_PLANE);
            int facet = tree.nearest(ray);
            double found = facet < 0 ? Double.POSITIVE_INFINITY : ray.distance();
            boolean same = Double.isInfinite(expected) ? Double.isInfinite(found) : Math.abs(found - expected) < NEAR;
            if (!same) {
                wrong.accept("ray from " + from + " along " + way + ": " + found + " by the tree, " + expected
                        + " by the loop");
            }
            double length = 100 * random.nextDouble();
            ray.set(from, way, length, Ray.NO_PLANE);
            if (Math.abs(length - expected) > NEAR && tree.blocked(ray) != expected < length) {
                wrong.accept("ray from " + from + " along " + way + ": blocked within " + length + " otherwise than by"
                        + " the loop, " + expected);
            }
        }
        return judged;
    }

    private static Vector3D place(SplittableRandom random) {
        return Vector3D.of(80 * random.nextDouble() - 40, 80 * random.nextDouble() - 40, 70 * random.nextDouble() - 10);
    }

    private boolean isDoubtful(Vector3D from, Vector3D way, double expected) {
        Vector3D across = way.orthogonal();
        Vector3D other = way.cross(across);
        for (Vector3D step : List.of(across, across.negate(), other, other.negate())) {
            double beside = nearest(from.add(step.multiply(NEAR)), way);
            boolean same = Double.isInfinite(expected) ? Double.isInfinite(beside) : Math.abs(beside - expected) < 1e-2;
            if (!same) {
                return true;
            }
        }
        return false;
    }

    /** Distance of the nearest facet, mm; infinite where there is none. */
    private double nearest(Vector3D from, Vector3D way) {
        Line3D line = Lines3D.fromPointAndDirection(from, way, PRECISION);
        double start = line.abscissa(from);
        double nearest = Double.POSITIVE_INFINITY;
        for (Triangle3D facet : facets) {
            Vector3D hit = facet.intersection(line);
            if (hit != null && line.abscissa(hit) > start + NEAR) {
                nearest = Math.min(nearest, line.abscissa(hit) - start);
            }
        }
        return nearest;
    }
}
