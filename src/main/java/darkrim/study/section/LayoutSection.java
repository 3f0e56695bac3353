package darkrim.study.section;

import darkrim.assembly.Assembly;
import darkrim.diagnostic.Findings;
import darkrim.layout.Layout;
import darkrim.scene.Scene;
import darkrim.scene.Window;
import darkrim.study.CheckResult;
import darkrim.trace.FacetTree;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.apache.commons.geometry.euclidean.twod.Vector2D;

/**
 * A section through a layout, with all that a drawing of it shows. Immutable.
 *
 * @param layout what the designer wrote
 * @param plane the plane
 * @param bodies what is cut of each body, in the order of the layout
 * @param edges the edges past which light comes and lands in the section
 * @param pupil the pupil as it is seen in the section, from one end of its rim to the other, in space, mm; empty where the plane lies across the light
 * @param middle the middle of the pupil, mm
 * @param window the plate that light passes between the pupil and the parts, if there is one
 * @param rays the rays that graze the edges
 * @param stopped rays past these edges that do not arrive, with the reason
 * @param margins what the check found
 */
public record LayoutSection(
        Layout layout,
        SectionPlane plane,
        List<CutBody> bodies,
        List<LimitingEdge> edges,
        Optional<Rim> pupil,
        Vector3D middle,
        Optional<Window> window,
        List<SectionRay> rays,
        List<StoppedRay> stopped,
        List<SectionMargin> margins) {
    /** Less than this of a direction upward is rounding. */
    private static final double LEVEL = 1e-9;

    /** Copies the lists. */
    public LayoutSection {
        bodies = List.copyOf(bodies);
        edges = List.copyOf(edges);
        rays = List.copyOf(rays);
        stopped = List.copyOf(stopped);
        margins = List.copyOf(margins);
    }

    /**
     * Two points of the rim of the pupil: no other is seen farther to the left or to the right in the section.
     *
     * @param left the one to the left, mm
     * @param right the one to the right, mm
     */
    public record Rim(Vector3D left, Vector3D right) {}

    /**
     * A ray that would graze an edge but does not arrive.
     *
     * @param kind which ray
     * @param edge the edge
     * @param reason why, such as the surface that stops it
     */
    public record StoppedRay(SectionRay.Kind kind, LimitingEdge edge, String reason) {}

    /**
     * Cuts a layout that was checked.
     *
     * @param result what the check found: margins of direct light are taken from it
     * @param plane the plane
     */
    public static LayoutSection of(CheckResult result, SectionPlane plane) {
        Layout layout = result.layout();
        Scene scene = result.scene();
        Assembly assembly = Assembly.of(layout, new Findings());
        BodyCut cut = new BodyCut(plane);
        List<CutBody> bodies = assembly.bodies().stream()
                .flatMap(body -> cut.of(body).stream())
                .toList();
        Vector3D middle = scene.beam().pupil().frame().origin();
        Vector3D along = middle.subtract(plane.frame().origin());
        Optional<Rim> pupil = plane.holds(scene.beam().pupil().frame().normal()) || plane.holds(along)
                ? Optional.of(PupilRim.of(scene.beam().pupil(), plane))
                : Optional.empty();
        Vector3D seems = new SeemingPupil(scene.beam(), Vector3D.ZERO).frame().origin();
        List<LimitingEdge> edges =
                pupil.isEmpty() ? List.of() : new EdgeSearch(plane, plane.seen(seems)).of(assembly.openings(), bodies);
        FacetTree tree = FacetTree.build(scene.corners(), scene.copyPlanes(), scene.bound());
        RaySearch search = new RaySearch(scene, tree, plane, bodies);
        pupil.ifPresent(rim -> edges.forEach(search::add));
        List<LimitingEdge> arriving = search.arriving(edges);
        return new LayoutSection(
                layout,
                plane,
                bodies,
                arriving,
                pupil,
                middle,
                scene.beam().window(),
                sorted(search.rays(), arriving),
                search.stopped().stream()
                        .filter(each -> arriving.contains(each.edge()))
                        .toList(),
                SectionMargins.of(result, bodies, arriving));
    }

    /** Edge by edge, and of each in the order in which they are told. */
    private static List<SectionRay> sorted(List<SectionRay> rays, List<LimitingEdge> edges) {
        return rays.stream()
                .sorted(Comparator.<SectionRay>comparingInt(ray -> edges.indexOf(ray.edge()))
                        .thenComparing(SectionRay::kind))
                .toList();
    }

    /** The least and the greatest coordinates of what is cut: left, lowest, right, highest, mm; empty where nothing is. */
    public Optional<double[]> bounds() {
        double[] bounds = {
            Double.POSITIVE_INFINITY, Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY, Double.NEGATIVE_INFINITY
        };
        for (CutBody body : bodies) {
            body.outlines().forEach(line -> line.forEach(point -> widen(bounds, point)));
            body.lines().forEach(line -> line.forEach(point -> widen(bounds, point)));
        }
        return bounds[0] <= bounds[2] ? Optional.of(bounds) : Optional.empty();
    }

    /** Heights of the lower and the upper face of the window in the section, mm; empty without a window, and where the plane lies level. */
    public Optional<double[]> plate() {
        double upward = plane.frame().v().getZ();
        return window.filter(any -> Math.abs(upward) > LEVEL)
                .map(any -> new double[] {any.bottom(), any.top()})
                .map(heights -> new double[] {
                    (heights[0] - plane.frame().origin().getZ()) / upward,
                    (heights[1] - plane.frame().origin().getZ()) / upward
                });
    }

    private static void widen(double[] bounds, Vector2D point) {
        bounds[0] = Math.min(bounds[0], point.getX());
        bounds[1] = Math.min(bounds[1], point.getY());
        bounds[2] = Math.max(bounds[2], point.getX());
        bounds[3] = Math.max(bounds[3], point.getY());
    }
}
