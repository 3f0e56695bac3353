package darkrim.shadow;

import darkrim.geom.Polygon;
import darkrim.geom.Ring;
import darkrim.scene.FieldLimit;
import darkrim.scene.Scene;
import java.util.List;
import java.util.TreeSet;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.apache.commons.geometry.euclidean.twod.Vector2D;

/** Names what a line passes most nearly on its way: the edge of a part or the field limit. */
final class LimitingEdge {
    /** The name of the field limit where it stands in the place of surfaces. */
    static final String FIELD_LIMIT = "field limit";

    private final Scene scene;
    private final FacetEdges edges;
    private final Tolerance tolerance;

    LimitingEdge(Scene scene, FacetEdges edges, Tolerance tolerance) {
        this.scene = scene;
        this.edges = edges;
        this.tolerance = tolerance;
    }

    /**
     * The surfaces that meet at the edge, in order of their names, with commas between; or {@code field limit}.
     *
     * @param line the line
     * @param facing normal of the surface on which it ends: edges in its plane or behind it do not count
     */
    String of(WitnessRay line, Vector3D facing) {
        int best = -1;
        double least = Double.POSITIVE_INFINITY;
        double[] ends = edges.ends();
        for (int edge = 0; edge < edges.count(); edge++) {
            Vector3D a = Vector3D.of(ends[6 * edge], ends[6 * edge + 1], ends[6 * edge + 2]);
            Vector3D b = Vector3D.of(ends[6 * edge + 3], ends[6 * edge + 4], ends[6 * edge + 5]);
            if (edges.isCrease(edge) && isOnTheWay(a, b, line, facing)) {
                double distance = distance(line.from(), line.to(), a, b);
                if (distance < least) {
                    least = distance;
                    best = edge;
                }
            }
        }
        boolean field = scene.covering()
                        .fieldLimit()
                        .map(limit -> distanceFromRim(limit, line))
                        .orElse(Double.POSITIVE_INFINITY)
                < least;
        return field ? FIELD_LIMIT : best < 0 ? "" : names(best);
    }

    private boolean isOnTheWay(Vector3D a, Vector3D b, WitnessRay line, Vector3D facing) {
        double height = Math.max(
                a.subtract(line.to()).dot(facing), b.subtract(line.to()).dot(facing));
        return height > tolerance.gap() && Math.max(depth(a), depth(b)) > tolerance.gap();
    }

    private double depth(Vector3D point) {
        return scene.covering().pupil().frame().height(point);
    }

    /** The surfaces that meet at an edge, in order of their names, with commas between. */
    String names(int edge) {
        return names(scene, edges, edge);
    }

    /** The same, of a scene and its edges. */
    static String names(Scene scene, FacetEdges edges, int edge) {
        TreeSet<String> names = new TreeSet<>();
        for (int u = 0; u < edges.useCount(edge); u++) {
            names.add(
                    scene.surfaces().get(scene.frontSurface(edges.use(edge, u))).name());
        }
        return String.join(", ", names);
    }

    private static double distanceFromRim(FieldLimit limit, WitnessRay line) {
        double from = limit.frame().height(line.from());
        double to = limit.frame().height(line.to());
        if (from == to) {
            return Double.POSITIVE_INFINITY;
        }
        Vector3D crossing = line.from().lerp(line.to(), from / (from - to));
        double u = limit.frame().inU(crossing);
        double v = limit.frame().inV(crossing);
        if (limit.outline() instanceof Ring ring) {
            double distance = Math.hypot(u, v);
            double outer = Math.abs(distance - ring.radius());
            return ring.hole() > 0 ? Math.min(outer, Math.abs(distance - ring.hole())) : outer;
        }
        double least = Double.POSITIVE_INFINITY;
        List<Vector2D> corners = ((Polygon) limit.outline()).corners();
        for (int i = 0; i < corners.size(); i++) {
            Vector2D a = corners.get(i);
            Vector2D way = corners.get((i + 1) % corners.size()).subtract(a);
            double t = Math.max(0, Math.min(1, Vector2D.of(u, v).subtract(a).dot(way) / way.normSq()));
            least = Math.min(least, a.add(way.multiply(t)).distance(Vector2D.of(u, v)));
        }
        return least;
    }

    /** Distance of two stretches: Ericson, Real-Time Collision Detection, 2005, ch. 5.1.9. */
    static double distance(Vector3D p, Vector3D q, Vector3D a, Vector3D b) {
        Vector3D d1 = q.subtract(p);
        Vector3D d2 = b.subtract(a);
        Vector3D r = p.subtract(a);
        double length1 = d1.normSq();
        double length2 = d2.normSq();
        double f = d2.dot(r);
        double c = d1.dot(r);
        double product = d1.dot(d2);
        double denominator = length1 * length2 - product * product;
        double s = denominator > 0 ? clamp((product * f - c * length2) / denominator) : 0;
        double t = (product * s + f) / length2;
        if (t < 0) {
            t = 0;
            s = clamp(-c / length1);
        } else if (t > 1) {
            t = 1;
            s = clamp((product - c) / length1);
        }
        return p.add(d1.multiply(s)).distance(a.add(d2.multiply(t)));
    }

    private static double clamp(double t) {
        return Math.max(0, Math.min(1, t));
    }
}
