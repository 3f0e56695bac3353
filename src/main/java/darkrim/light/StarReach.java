package darkrim.light;

import darkrim.geom.Outline;
import darkrim.geom.Polygon;
import darkrim.geom.Ring;
import darkrim.reflection.Reflection;
import darkrim.scene.Pupil;
import darkrim.scene.Scene;
import darkrim.scene.Surface;
import darkrim.trace.FacetTree;
import darkrim.trace.StartPoints;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.apache.commons.geometry.euclidean.twod.Vector2D;
import org.locationtech.jts.algorithm.ConvexHull;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.index.strtree.STRtree;

/**
 * Where the focus of a star must lie, in a plane parallel to the focal plane, for its light to strike a facet that can throw it on a receiver.
 *
 * <p>A ray from a point p of the pupil strikes a point e if the focus is where the line through both crosses the plane. For a fixed p that is a
 * projective map of the facet, for a fixed e of the pupil; so all foci of a facet lie in the hull of those of its corners and of the corners
 * around the pupil. Outside all hulls nothing is reflected to the receivers: that is a proof. Parts that shade each other are not looked at, so
 * inside a hull there may be light or not.
 *
 * <p>Immutable; safe for use by many threads.
 */
public final class StarReach {
    private static final GeometryFactory FLAT = new GeometryFactory();
    /** Corners of the polygon around a round pupil. */
    private static final int CORNERS = 32;
    /** What covers rounding of a hull, as a share of its distance from the origin. */
    private static final double ROUNDING = 1e-9;

    private final STRtree hulls = new STRtree();
    private final Scene scene;
    private final double plane;
    private final List<Vector3D> around;
    private final List<Side> sides = new ArrayList<>();
    private boolean everywhere;

    /**
     * What foci strike a facet.
     *
     * @param outline the hull of those foci
     * @param reflected the most that the facet reflects of what strikes it
     */
    private record Hull(Geometry outline, double reflected) {}

    /**
     * A side of a facet that could throw light of a star on a receiver.
     *
     * @param facet the facet
     * @param surface the surface that it has on that side, by number
     * @param plane the plane in which it lies, by number
     * @param normal its normal on that side
     */
    public record Side(int facet, int surface, int plane, Vector3D normal) {}

    /**
     * @param scene the scene
     * @param tree the tree over its facets
     * @param receivers surfaces on which light is counted
     * @param focusHeight height of the plane of the foci, mm
     */
    public StarReach(Scene scene, FacetTree tree, List<Surface> receivers, double focusHeight) {
        this.scene = scene;
        plane = focusHeight;
        around = around(scene.beam().pupil());
        double lift = new StartPoints(scene.corners(), tree).lift();
        List<Facing> facing = receivers.stream()
                .map(each -> new Facing(scene, new Receiver.OnSurface(each), lift))
                .toList();
        for (Surface surface : scene.surfaces()) {
            for (int i = 0; i < surface.facetCount() && surface.finish().reflects(); i++) {
                int facet = surface.firstFacet() + i;
                Vector3D normal = surface.back() ? scene.normal(facet).negate() : scene.normal(facet);
                boolean struck = around.stream()
                        .anyMatch(p -> p.subtract(scene.corner(facet, 0)).dot(normal) > 0);
                if (struck && facing.stream().anyMatch(each -> each.mayGet(facet, surface.back()))) {
                    add(facet, mostReflected(surface));
                    sides.add(new Side(facet, surface.index(), scene.plane(facet), normal));
                }
            }
        }
        hulls.build();
    }

    /** Says of no place any more that no star there lights a receiver: for facets that prove nothing of what they stand for. */
    public void excludeNothing() {
        everywhere = true;
    }

    /** Whether a star somewhere in a rectangle might light a receiver after one reflection; where not, none does. */
    public boolean mayLight(double fromX, double fromY, double toX, double toY) {
        Envelope rectangle = new Envelope(fromX, toX, fromY, toY);
        if (everywhere) {
            return true;
        }
        Geometry cell = FLAT.toGeometry(rectangle);
        for (Object hull : hulls.query(rectangle)) {
            if (((Hull) hull).outline.intersects(cell)) {
                return true;
            }
        }
        return false;
    }

    /**
     * The most of a star's light that any surface reflects that it may strike and that may throw it on a receiver: the greatest total reflectance at any
     * angle, 0 to 1. 0 where the light strikes none.
     */
    public double mostReflected(double x, double y) {
        if (everywhere) {
            return scene.surfaces().stream()
                    .mapToDouble(StarReach::mostReflected)
                    .max()
                    .orElse(0);
        }
        Geometry at = FLAT.createPoint(new Coordinate(x, y));
        double most = 0;
        for (Object each : hulls.query(new Envelope(x, x, y, y))) {
            Hull hull = (Hull) each;
            if (hull.reflected > most && hull.outline.intersects(at)) {
                most = hull.reflected;
            }
        }
        return most;
    }

    private static double mostReflected(Surface surface) {
        Reflection reflection = surface.finish().reflection();
        return Math.min(
                1,
                reflection.greatestBroadReflectance()
                        + reflection.greatestLobeReflectance()
                        + reflection.greatestMirror(0, 1));
    }

    /** All sides of facets that could throw light of a star on a receiver. */
    public List<Side> sides() {
        return List.copyOf(sides);
    }

    private void add(int facet, double reflected) {
        Coordinate[] all = new Coordinate[3 * around.size()];
        double far = 1;
        for (int i = 0; i < all.length; i++) {
            Vector3D p = around.get(i / 3);
            Vector3D e = scene.corner(facet, i % 3);
            if (!(e.getZ() < p.getZ()) || !(plane < p.getZ())) {
                // From a pupil that reaches down to the facet no line need cross the plane; nothing is proved then.
                everywhere = true;
                return;
            }
            Vector2D at = focus(p, e, plane);
            far = Math.max(far, at.norm());
            all[i] = new Coordinate(at.getX(), at.getY());
        }
        Geometry hull = new ConvexHull(all, FLAT).getConvexHull().buffer(ROUNDING * far, 1);
        hulls.insert(hull.getEnvelopeInternal(), new Hull(hull, reflected));
    }

    /** Where the line from a point p of the pupil through a point e crosses a plane of a height. */
    static Vector2D focus(Vector3D p, Vector3D e, double plane) {
        double t = (plane - p.getZ()) / (e.getZ() - p.getZ());
        return Vector2D.of(p.getX() + t * (e.getX() - p.getX()), p.getY() + t * (e.getY() - p.getY()));
    }

    /** Corners of a convex polygon around the pupil. */
    static List<Vector3D> around(Pupil pupil) {
        Outline outline = pupil.outline();
        if (outline instanceof Ring ring) {
            double radius = ring.radius() / StrictMath.cos(Math.PI / CORNERS);
            return IntStream.range(0, CORNERS)
                    .mapToObj(i -> pupil.frame()
                            .at(
                                    radius * StrictMath.cos(2 * Math.PI * i / CORNERS),
                                    radius * StrictMath.sin(2 * Math.PI * i / CORNERS)))
                    .toList();
        }
        return ((Polygon) outline)
                .corners().stream()
                        .map(corner -> pupil.frame().at(corner.getX(), corner.getY()))
                        .toList();
    }
}
