package darkrim.study.section;

import darkrim.scene.FieldLimit;
import darkrim.scene.Scene;
import darkrim.trace.FacetTree;
import darkrim.trace.Ray;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.apache.commons.geometry.euclidean.twod.Vector2D;

/**
 * Follows rays past edges to where they land in a section. In the section the border of a shadow is a line that touches the edge and meets what is cut;
 * the ray in space from the point of the pupil to that landing is then traced against all parts, since the point of the pupil may lie beside the section
 * and something may stand between.
 */
final class RaySearch {
    /** So far from the edge itself a ray passes, mm. */
    private static final double CLEAR = 1e-6;
    /** A ray lands where it is drawn when it is traced to within this, mm. */
    private static final double SAME = 1e-5;

    /** What is met nearer to the edge than this is its own material, mm. */
    private static final double OWN = 1e-3;

    /** A landing that moves by no more than this from one turn to the next stays, mm. */
    private static final double STAYS = 1e-9;

    /** Each turn moves it by a small share of the turn before, unless it jumps past a corner. */
    private static final int MOST_TURNS = 40;

    private final Scene scene;
    private final FacetTree tree;
    private final SectionPlane plane;
    private final List<CutBody> bodies;
    private final Ray ray = new Ray();
    private final List<SectionRay> rays = new ArrayList<>();
    private final List<LayoutSection.StoppedRay> stopped = new ArrayList<>();

    RaySearch(Scene scene, FacetTree tree, SectionPlane plane, List<CutBody> bodies) {
        this.scene = scene;
        this.tree = tree;
        this.plane = plane;
        this.bodies = bodies;
    }

    /** The rays by edge, of each edge from the one that light ends at. */
    List<SectionRay> rays() {
        return rays;
    }

    List<LayoutSection.StoppedRay> stopped() {
        return stopped;
    }

    /** The edges past which at least one ray comes. */
    List<LimitingEdge> arriving(List<LimitingEdge> edges) {
        return edges.stream()
                .filter(edge -> rays.stream().anyMatch(each -> each.edge().equals(edge)))
                .toList();
    }

    /** The border that belongs to one kind of ray, for the pupil as it seems to one point and the place where the edge is touched. */
    private interface Border {
        Optional<ShadowPlane> of(SeemingPupil pupil, Vector3D touched);
    }

    /** Adds the rays past an edge: from both points of the rim that its shadow touches, and from the middle. */
    void add(LimitingEdge edge) {
        Vector3D narrowest = plane.at(edge.narrowest());
        SeemingPupil pupil = new SeemingPupil(scene.beam(), narrowest);
        Optional<ShadowPlane> middle = ShadowPlane.middle(narrowest, edge.along(), pupil, plane);
        if (middle.isEmpty()) {
            return;
        }
        Vector2D from = plane.seen(middle.get().trace());
        Vector2D touched = edge.touched(from);
        double side = touched.subtract(from).signedArea(edge.open().subtract(touched));
        for (double sense : new double[] {1, -1}) {
            Border border = (seeming, at) -> ShadowPlane.touching(at, edge.along(), seeming, plane, sense);
            border.of(pupil, plane.at(touched)).ifPresent(shadow -> {
                Vector2D start = plane.seen(shadow.trace());
                // From the open side of the line through the middle light reaches farthest behind the edge.
                boolean far = side * touched.subtract(from).signedArea(start.subtract(touched)) > 0;
                add(far ? SectionRay.Kind.LIGHT_ENDS : SectionRay.Kind.PUPIL_WHOLE, edge, touched, border);
            });
        }
        add(
                SectionRay.Kind.CHIEF,
                edge,
                touched,
                (seeming, at) -> ShadowPlane.middle(at, edge.along(), seeming, plane));
    }

    /**
     * Adds a ray. Where the pupil seems to be depends through a window on the landing, which is sought: a landing that stays where it was is the one, as
     * it then lies on the border for the pupil as it seems from there.
     */
    private void add(SectionRay.Kind kind, LimitingEdge edge, Vector2D first, Border border) {
        Vector2D touched = first;
        Vector3D eye = plane.at(touched);
        for (int turn = 0; turn < MOST_TURNS; turn++) {
            Optional<ShadowPlane> shadow = border.of(new SeemingPupil(scene.beam(), eye), plane.at(touched));
            if (shadow.isEmpty()) {
                return;
            }
            Vector2D from = plane.seen(shadow.get().trace());
            boolean stays = edge.touched(from).equals(touched);
            touched = edge.touched(from);
            Vector2D way = touched.subtract(from);
            double side = Math.signum(way.signedArea(edge.open().subtract(touched)));
            Vector2D past = touched.add(way.orthogonal().normalize().multiply(side * CLEAR));
            OptionalDouble landing = landing(from, past.subtract(from));
            if (landing.isEmpty()) {
                stopped.add(new LayoutSection.StoppedRay(kind, edge, "it meets nothing"));
                return;
            }
            Vector3D to = plane.at(from.lerp(past, landing.getAsDouble()));
            if (stays && (scene.beam().window().isEmpty() || to.distance(eye) <= STAYS)) {
                landed(kind, edge, shadow.get(), touched, to);
                return;
            }
            eye = to;
        }
        stopped.add(new LayoutSection.StoppedRay(kind, edge, "it lands beside a corner, in no one place"));
    }

    private void landed(SectionRay.Kind kind, LimitingEdge edge, ShadowPlane shadow, Vector2D touched, Vector3D to) {
        if (plane.seen(to).distance(touched) < OWN) {
            stopped.add(new LayoutSection.StoppedRay(kind, edge, "it strikes the material of the edge itself"));
            return;
        }
        Optional<String> reason = beyondField(to, shadow.from());
        if (reason.isEmpty()) {
            traced(kind, edge, shadow, plane.at(touched), to);
        } else {
            stopped.add(new LayoutSection.StoppedRay(kind, edge, reason.get()));
        }
    }

    /** Where the border of shadow cuts the section, from the pupil to the landing; the window moves it aside by as much as its ray. */
    private List<Vector3D> course(LimitingEdge edge, ShadowPlane shadow, Vector3D to) {
        List<Vector3D> course = new ArrayList<>();
        if (scene.beam().window().isEmpty()) {
            course.add(shadow.trace());
        } else {
            Vector3D way = shadow.from().subtract(to);
            Vector3D normal = edge.along().cross(way);
            for (Vector3D point : scene.beam().course(to, way)) {
                ShadowPlane.trace(normal, point, Vector3D.Unit.PLUS_Z, plane).ifPresent(course::add);
            }
        }
        course.add(to);
        return course;
    }

    private Optional<String> beyondField(Vector3D at, Vector3D start) {
        Optional<FieldLimit> limit = scene.beam().fieldLimit();
        Vector3D way = start.subtract(at);
        return limit.isPresent()
                        && !limit.get().passes(at.getX(), at.getY(), at.getZ(), way.getX(), way.getY(), way.getZ())
                ? Optional.of("the field ends before it")
                : Optional.empty();
    }

    private void traced(SectionRay.Kind kind, LimitingEdge edge, ShadowPlane shadow, Vector3D past, Vector3D to) {
        Vector3D start = shadow.from();
        Vector3D way = to.subtract(start);
        ray.set(start, way, Double.POSITIVE_INFINITY, Ray.NO_PLANE);
        int facet = tree.nearest(ray);
        if (facet < 0) {
            stopped.add(new LayoutSection.StoppedRay(kind, edge, "it meets nothing"));
            return;
        }
        int met = scene.surfaceMet(facet, way.getX(), way.getY(), way.getZ());
        String name = scene.surfaces()
                .get(met == Scene.INSIDE ? scene.frontSurface(facet) : met)
                .name();
        if (Math.abs(ray.distance() - 1) * way.norm() <= SAME) {
            rays.add(new SectionRay(kind, edge, onPupil(to, start), course(edge, shadow, to), past, to, name));
        } else {
            stopped.add(new LayoutSection.StoppedRay(kind, edge, name + " stops it"));
        }
    }

    /** Where a ray leaves the pupil, of which one point seems to be where the ray comes from. */
    private Vector3D onPupil(Vector3D to, Vector3D seems) {
        return scene.beam().window().isEmpty() ? seems : scene.beam().origin(to, seems.subtract(to));
    }

    /** Where a ray first meets what is cut beyond an edge, in lengths of its direction; the edge lies at 1. */
    private OptionalDouble landing(Vector2D from, Vector2D way) {
        double nearest = Double.POSITIVE_INFINITY;
        for (CutBody body : bodies) {
            for (List<Vector2D> outline : body.outlines()) {
                for (int i = 0; i < outline.size(); i++) {
                    nearest = Math.min(
                            nearest, meeting(from, way, outline.get(i), outline.get((i + 1) % outline.size())));
                }
            }
            for (List<Vector2D> line : body.lines()) {
                for (int i = 1; i < line.size(); i++) {
                    nearest = Math.min(nearest, meeting(from, way, line.get(i - 1), line.get(i)));
                }
            }
        }
        return Double.isInfinite(nearest) ? OptionalDouble.empty() : OptionalDouble.of(nearest);
    }

    private static double meeting(Vector2D from, Vector2D way, Vector2D a, Vector2D b) {
        Vector2D side = b.subtract(a);
        double across = way.signedArea(side);
        if (across == 0) {
            return Double.POSITIVE_INFINITY;
        }
        double along = a.subtract(from).signedArea(side) / across;
        double share = a.subtract(from).signedArea(way) / across;
        return along > 1 + 1e-12 && share >= 0 && share <= 1 ? along : Double.POSITIVE_INFINITY;
    }
}
