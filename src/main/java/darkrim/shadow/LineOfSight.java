package darkrim.shadow;

import darkrim.geom.Outline;
import darkrim.geom.Polygon;
import darkrim.geom.Ring;
import darkrim.scene.Beam;
import darkrim.scene.FieldLimit;
import darkrim.scene.Pupil;
import darkrim.scene.Scene;
import darkrim.trace.FacetTree;
import darkrim.trace.Ray;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.apache.commons.geometry.euclidean.twod.Vector2D;

/**
 * Lines from the pupil to points of space that a face may be moved to, each given by five numbers in mm: where it ends, x, y, z, and where it
 * leaves the pupil, u, v over {@link #SCALE}. Says which of them are clear, and what comes into the way of one that is just not. One thread each.
 */
final class LineOfSight {
    /** The pupil is far: moving there matters less than moving the end. */
    static final double SCALE = 16;
    /** An edge that comes into the way touches the line but for this, beside the step between clear and blocked, mm. */
    private static final double TOUCHING = 1e-8;

    /** A line along a round rim keeps within by this share. */
    private static final double WITHIN = 1e-14;

    /** The name of the rim of the pupil, which stands in the place of surfaces. */
    private static final String PUPIL_RIM = "pupil rim";

    private final Scene scene;
    private final FacetTree tree;
    private final FacetEdges edges;
    private final Tolerance tolerance;
    private final Ray ray = new Ray();

    LineOfSight(Scene scene, FacetTree tree, FacetEdges edges, Tolerance tolerance) {
        this.scene = scene;
        this.tree = tree;
        this.edges = edges;
        this.tolerance = tolerance;
    }

    /** What a line must stay on the right side of. */
    interface Stop {
        /** How far a line is from it, mm: negative where it is beyond. */
        double room(double[] line);

        /** What it is called; empty for the plane of the face itself. */
        String name();
    }

    private record Named(String name, double sign, ToDoubleFunction<double[]> distance) implements Stop {
        @Override
        public double room(double[] line) {
            return sign * distance.applyAsDouble(line);
        }
    }

    /** A line whose start is drawn back into the pupil where it left it, so that it can run along a round rim. */
    double[] drawnIn(double[] line) {
        if (pupil().outline() instanceof Ring ring) {
            double radius = SCALE * Math.hypot(line[3], line[4]);
            double within = Math.max(ring.hole() * (1 + WITHIN), Math.min(ring.radius() * (1 - WITHIN), radius));
            if (within != radius && radius > 0) {
                double[] drawn = line.clone();
                drawn[3] *= within / radius;
                drawn[4] *= within / radius;
                return drawn;
            }
        }
        return line;
    }

    /** The rim of a round pupil, along which lines run; of another shape it is met like an edge. */
    List<Stop> roundRim() {
        List<Stop> stops = new ArrayList<>();
        if (pupil().outline() instanceof Ring) {
            rims(PUPIL_RIM, pupil().outline(), this::onPupil, new double[0], stops);
        }
        return stops;
    }

    private Vector2D onPupil(double[] line) {
        return Vector2D.of(SCALE * line[3], SCALE * line[4]);
    }

    /** The end of a line, mm. */
    static Vector3D end(double[] line) {
        return Vector3D.of(line[0], line[1], line[2]);
    }

    private Vector3D start(double[] line) {
        return pupil().frame().at(SCALE * line[3], SCALE * line[4]);
    }

    private Pupil pupil() {
        return scene.covering().pupil();
    }

    /** Whether light takes the line and arrives at the front of a face that was moved to its end without turning. */
    boolean isClear(double[] line, Vector3D facing) {
        Vector3D to = end(line);
        Vector3D way = start(line).subtract(to);
        Beam beam = scene.covering();
        if (!(way.dot(facing) > 0)
                || !(pupil().frame().height(to) > tolerance.gap())
                || !pupil().outline().contains(SCALE * line[3], SCALE * line[4])
                || !beam.fieldLimit()
                        .map(limit -> limit.passes(to.getX(), to.getY(), to.getZ(), way.getX(), way.getY(), way.getZ()))
                        .orElse(true)) {
            return false;
        }
        ray.set(to, way, 1 - 1e-12, Ray.NO_PLANE);
        return !tree.blocked(ray);
    }

    /**
     * What comes into the way between a line that is clear and one near it that is not.
     *
     * @param clear the first
     * @param blocked the other
     * @param facing normal of the face
     */
    Optional<Stop> between(double[] clear, double[] blocked, Vector3D facing) {
        List<Stop> candidates = new ArrayList<>();
        candidates.add(new Named("", 1, line -> start(line).subtract(end(line)).dot(facing)));
        if (pupil().outline() instanceof Polygon) {
            rims(PUPIL_RIM, pupil().outline(), this::onPupil, clear, candidates);
        }
        scene.covering()
                .fieldLimit()
                .ifPresent(limit -> rims(
                        LimitingEdge.FIELD_LIMIT, limit.outline(), line -> crossing(limit, line), clear, candidates));
        Optional<Stop> rim = candidates.stream()
                .filter(stop -> stop.room(clear) >= 0 && stop.room(blocked) <= 0)
                .findFirst();
        return rim.isPresent() ? rim : inTheWay(clear, blocked);
    }

    private static void rims(
            String name, Outline outline, Function<double[], Vector2D> place, double[] clear, List<Stop> into) {
        if (outline instanceof Ring ring) {
            into.add(
                    new Named(name, 1, line -> ring.radius() - place.apply(line).norm()));
            if (ring.hole() > 0) {
                into.add(new Named(name, 1, line -> place.apply(line).norm() - ring.hole()));
            }
            return;
        }
        List<Vector2D> corners = ((Polygon) outline).corners();
        for (int i = 0; i < corners.size(); i++) {
            Vector2D a = corners.get(i);
            Vector2D way = corners.get((i + 1) % corners.size()).subtract(a).normalize();
            ToDoubleFunction<double[]> off =
                    line -> way.signedArea(place.apply(line).subtract(a));
            into.add(new Named(name, Math.signum(off.applyAsDouble(clear)), off));
        }
    }

    private Vector2D crossing(FieldLimit limit, double[] line) {
        double from = limit.frame().height(start(line));
        double to = limit.frame().height(end(line));
        Vector3D at = start(line).lerp(end(line), from / (from - to));
        return Vector2D.of(limit.frame().inU(at), limit.frame().inV(at));
    }

    private Optional<Stop> inTheWay(double[] clear, double[] blocked) {
        Vector3D to = end(blocked);
        ray.set(to, start(blocked).subtract(to), 1 - 1e-12, Ray.NO_PLANE);
        int facet = tree.nearest(ray);
        if (facet < 0) {
            return Optional.empty();
        }
        int plane = scene.plane(facet);
        Vector3D normal = scene.normal(facet);
        Vector3D corner = scene.corner(facet, 0);
        ToDoubleFunction<double[]> height = line -> end(line).subtract(corner).dot(normal);
        if (height.applyAsDouble(clear) * height.applyAsDouble(blocked) <= 0) {
            String name = scene.surfaces().get(scene.frontSurface(facet)).name();
            return Optional.of(new Named(name, Math.signum(height.applyAsDouble(clear)), height));
        }
        double touching = TOUCHING + 4 * SCALE * distance(clear, blocked);
        int best = -1;
        for (int edge = 0; edge < edges.count(); edge++) {
            if (edges.isCrease(edge) && bounds(edge, plane)) {
                double off = LimitingEdge.distance(start(clear), end(clear), a(edge), b(edge));
                if (off < touching) {
                    touching = off;
                    best = edge;
                }
            }
        }
        return best < 0 ? Optional.empty() : Optional.of(pastEdge(best, clear));
    }

    private boolean bounds(int edge, int plane) {
        for (int u = 0; u < edges.useCount(edge); u++) {
            if (scene.plane(edges.use(edge, u)) == plane) {
                return true;
            }
        }
        return false;
    }

    private Stop pastEdge(int edge, double[] clear) {
        Vector3D a = a(edge);
        Vector3D along = b(edge).subtract(a);
        ToDoubleFunction<double[]> off = line -> {
            Vector3D across = start(line).subtract(end(line)).cross(along);
            return end(line).subtract(a).dot(across) / across.norm();
        };
        return new Named(names(edge), Math.signum(off.applyAsDouble(clear)), off);
    }

    private String names(int edge) {
        return LimitingEdge.names(scene, edges, edge);
    }

    private Vector3D a(int edge) {
        double[] ends = edges.ends();
        return Vector3D.of(ends[6 * edge], ends[6 * edge + 1], ends[6 * edge + 2]);
    }

    private Vector3D b(int edge) {
        double[] ends = edges.ends();
        return Vector3D.of(ends[6 * edge + 3], ends[6 * edge + 4], ends[6 * edge + 5]);
    }

    private static double distance(double[] one, double[] other) {
        double sum = 0;
        for (int i = 0; i < one.length; i++) {
            sum += (one[i] - other[i]) * (one[i] - other[i]);
        }
        return Math.sqrt(sum);
    }
}
