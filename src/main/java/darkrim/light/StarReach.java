package darkrim.light;

import darkrim.geom.Outline;
import darkrim.geom.Polygon;
import darkrim.geom.Ring;
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
import org.locationtech.jts.algorithm.MinimumDiameter;
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
    /** Points of the pupil through which seeds look at a facet. */
    private static final int LOOKS = 8;
    /** What covers rounding of a hull, as a share of its distance from the origin. */
    private static final double ROUNDING = 1e-9;

    private final STRtree hulls = new STRtree();
    private final Scene scene;
    private final double plane;
    private final List<Vector3D> around;
    private final List<Vector3D> looks;
    private final double pupilWidth;
    private final List<Side> sides = new ArrayList<>();
    private boolean everywhere;

    /**
     * A side of a facet that could throw light of a star on a receiver.
     *
     * @param facet the facet
     * @param normal its normal on that side
     */
    public record Side(int facet, Vector3D normal) {}

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
        looks = looks(scene.beam().pupil());
        pupilWidth = width(around);
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
                    add(facet);
                    sides.add(new Side(facet, normal));
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
            if (((Geometry) hull).intersects(cell)) {
                return true;
            }
        }
        return false;
    }

    /** All sides of facets that could throw light of a star on a receiver. */
    public List<Side> sides() {
        return List.copyOf(sides);
    }

    /**
     * Least width of the bands of foci from which the corners of a side are struck, mm; for a level pupil. Where a side runs through the plane of the
     * foci, points between its corners have narrower bands, beside those of their neighbours.
     */
    public double narrowest(Side side) {
        double least = Double.POSITIVE_INFINITY;
        double pupilHeight = around.get(0).getZ();
        for (int corner = 0; corner < 3; corner++) {
            double z = scene.corner(side.facet(), corner, 2);
            least = Math.min(least, pupilWidth * Math.abs(z - plane) / Math.max(pupilHeight - z, Double.MIN_NORMAL));
        }
        return least;
    }

    private void add(int facet) {
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
            Vector2D at = focus(p, e);
            far = Math.max(far, at.norm());
            all[i] = new Coordinate(at.getX(), at.getY());
        }
        Geometry hull = new ConvexHull(all, FLAT).getConvexHull().buffer(ROUNDING * far, 1);
        hulls.insert(hull.getEnvelopeInternal(), hull);
    }

    /**
     * Foci at which the star is aimed at each piece of a side, mm: through the point of the pupil that sees it most steeply and through one that sees
     * it less so.
     *
     * @param step size of a piece, mm
     * @return at least one, unless the pupil hides behind the plane of the side
     */
    public List<Vector2D> seeds(Side side, double step) {
        int facet = side.facet();
        Vector3D normal = side.normal();
        List<Vector2D> found = new ArrayList<>();
        Vector3D a = scene.corner(facet, 0);
        Vector3D b = scene.corner(facet, 1);
        Vector3D c = scene.corner(facet, 2);
        double longest = Math.max(a.distance(b), Math.max(b.distance(c), c.distance(a)));
        int cuts = (int) Math.max(1, Math.ceil(longest / step));
        List<Vector3D> inFront = looks.stream()
                .filter(p -> p.subtract(a).dot(normal) > 0)
                .sorted((one, two) -> Double.compare(two.dot(normal), one.dot(normal)))
                .toList();
        for (int i = 0; i < cuts && !inFront.isEmpty(); i++) {
            for (int j = 0; i + j < cuts; j++) {
                double u = (i + 1.0 / 3) / cuts;
                double v = (j + 1.0 / 3) / cuts;
                Vector3D e = a.multiply(1 - u - v).add(b.multiply(u)).add(c.multiply(v));
                for (Vector3D p : List.of(inFront.get(0), inFront.get(inFront.size() / 2))) {
                    if (e.getZ() < p.getZ() && plane < p.getZ()) {
                        found.add(focus(p, e));
                    }
                }
            }
        }
        return found;
    }

    private Vector2D focus(Vector3D p, Vector3D e) {
        double t = (plane - p.getZ()) / (e.getZ() - p.getZ());
        return Vector2D.of(p.getX() + t * (e.getX() - p.getX()), p.getY() + t * (e.getY() - p.getY()));
    }

    /** Least width of a convex polygon, seen from above, mm. */
    private static double width(List<Vector3D> polygon) {
        Coordinate[] corners =
                polygon.stream().map(p -> new Coordinate(p.getX(), p.getY())).toArray(Coordinate[]::new);
        return new MinimumDiameter(FLAT.createMultiPointFromCoords(corners)).getLength();
    }

    /** Corners of a convex polygon around the pupil. */
    private static List<Vector3D> around(Pupil pupil) {
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

    /** Points spread over the pupil. */
    private static List<Vector3D> looks(Pupil pupil) {
        List<Vector3D> looks = new ArrayList<>();
        double[] at = new double[2];
        for (int i = 0; i < LOOKS; i++) {
            pupil.outline().place(i % 2 == 0 ? 0.9 : 0.5, (i + 0.5) / LOOKS, at);
            looks.add(pupil.frame().at(at[0], at[1]));
        }
        return looks;
    }
}
