package darkrim.shadow;

import darkrim.geom.Outline;
import darkrim.geom.Polygon;
import darkrim.geom.Ring;
import darkrim.scene.Pupil;
import darkrim.scene.Scene;
import darkrim.scene.Surface;
import darkrim.trace.FacetTree;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/**
 * What a point sees of the pupil, exactly: the outline without the projections of all that stands between.
 *
 * <p>Each facet in the way hides the part of the pupil's plane that lies inside the planes through the point and its sides. These wedges are
 * taken from convex pieces of the plane one after the other; what is left is met with the circles of the outline. The planes through a side
 * that two facets share have the same coefficients with opposite sign, so no sliver is left along it. Of a closed solid only the facets that
 * turn their back to the point are projected: every line that runs into the solid leaves it through one of them.
 *
 * <p>Immutable; safe for use by many threads.
 */
public final class VisiblePupil {
    private final Scene scene;
    private final FacetTree tree;
    /** Facets of a surface joined to convex polygons: three coordinates a corner, in the sense of the normal. */
    private final double[][] screens;

    private final int[] screenOfFacet;
    private final int[] facetOfScreen;
    private final FacetEdges edges;
    private final Tolerance tolerance;
    private final Pupil pupil;

    /**
     * @param scene the scene
     * @param tree the tree over its facets
     */
    public VisiblePupil(Scene scene, FacetTree tree) {
        this.scene = scene;
        this.tree = tree;
        edges = FacetEdges.of(scene);
        tolerance = Tolerance.of(scene.bound(), ProofSettings.DEFAULT.gapWidth());
        pupil = scene.covering().pupil();
        screenOfFacet = new int[scene.facetCount()];
        List<double[]> found = new ArrayList<>();
        List<Integer> first = new ArrayList<>();
        for (Surface surface : scene.surfaces()) {
            if (!surface.back()) {
                new FaceMerge(scene, surface, tolerance).forEach((facets, corners) -> {
                    facets.forEach(f -> screenOfFacet[f] = found.size());
                    first.add(facets.get(0));
                    found.add(corners);
                });
            }
        }
        screens = found.toArray(double[][]::new);
        facetOfScreen = first.stream().mapToInt(f -> f).toArray();
    }

    /**
     * What a point sees.
     *
     * @param point the point, mm
     * @param normal unit normal of the element at the point: it gets no light from behind it
     */
    public PupilView from(Vector3D point, Vector3D normal) {
        double depth = pupil.frame().height(point);
        List<Circle> circles = new ArrayList<>();
        List<double[]> pieces = lit(point, normal, circles);
        double nearest = depth;
        for (int screen : pieces.isEmpty() ? new int[0] : inTheWay(point)) {
            if (pieces.isEmpty()) {
                break;
            }
            List<double[]> left = without(pieces, screen, point, normal, depth);
            if (!left.equals(pieces)) {
                nearest = Math.min(nearest, distance(screen, point, normal, depth));
            }
            pieces = left;
        }
        // A point in the plane of the pupil has no depth, and sees nothing.
        double blur = depth > 0 ? tolerance.rounding() * depth / nearest : tolerance.rounding();
        return new PupilView(pupil, point, normal, pieces, circles, blur);
    }

    /**
     * What a point would see if nothing stood between: what lies in front of the element and within the field limit.
     *
     * @param point the point, mm
     * @param normal unit normal of the element at the point
     */
    public PupilView withoutParts(Vector3D point, Vector3D normal) {
        List<Circle> circles = new ArrayList<>();
        return new PupilView(pupil, point, normal, lit(point, normal, circles), circles, tolerance.rounding());
    }

    private List<double[]> lit(Vector3D point, Vector3D normal, List<Circle> circles) {
        if (!(pupil.frame().height(point) > 0)) {
            return List.of();
        }
        List<double[]> pieces = clipAll(outline(circles), new ViewLine(pupil.frame(), normal, point));
        return scene.covering()
                .fieldLimit()
                .map(limit -> FieldProjection.clip(limit, pupil.frame(), point, pieces, circles))
                .orElse(pieces);
    }

    /** Convex pieces that hold the outline, and the circles that bound it where it is round. */
    private List<double[]> outline(List<Circle> circles) {
        Outline outline = pupil.outline();
        if (outline instanceof Ring ring) {
            circles.addAll(Circle.boundsOf(ring));
            double side = 1.001 * ring.radius();
            return List.of(new double[] {-side, -side, side, -side, side, side, -side, side});
        }
        return PupilPieces.convexParts((Polygon) outline);
    }

    private int[] inTheWay(Vector3D point) {
        double reach = 1.001 * pupil.outline().reach();
        double[] square = new double[12];
        for (int i = 0; i < 4; i++) {
            Vector3D corner = pupil.frame().at(i % 2 == 0 ? reach : -reach, i < 2 ? reach : -reach);
            square[3 * i] = corner.getX();
            square[3 * i + 1] = corner.getY();
            square[3 * i + 2] = corner.getZ();
        }
        double[] eye = {point.getX(), point.getY(), point.getZ()};
        ShaftBoxes cone = new ShaftBoxes(square, eye, 0, tolerance);
        BitSet found = new BitSet(screens.length);
        tree.passing(cone::mayTouch, f -> found.set(screenOfFacet[f]));
        return found.stream().toArray();
    }

    private List<double[]> without(List<double[]> pieces, int screen, Vector3D point, Vector3D normal, double depth) {
        int f = facetOfScreen[screen];
        double[] part = between(screens[screen], point, normal, depth);
        if (part.length < 9) {
            return pieces;
        }
        // The volume of the point and the facet says which side is looked at, and whether it is seen edge-on.
        Vector3D a = Vector3D.of(part[0] - point.getX(), part[1] - point.getY(), part[2] - point.getZ());
        double height = scene.normal(f).dot(a);
        double size = a.norm();
        if (Math.abs(height) <= 1e-13 * size || (height < 0 && showsBackFirst(f))) {
            return pieces;
        }
        int n = part.length / 3;
        ViewLine[] sides = new ViewLine[n];
        for (int i = 0, j = n - 1; i < n; j = i++) {
            sides[i] = ViewLine.through(pupil.frame(), point, part, 3 * j, 3 * i, height < 0);
        }
        List<double[]> left = new ArrayList<>(pieces.size() + 2);
        for (double[] piece : pieces) {
            subtract(piece, sides, left);
        }
        return left;
    }

    /** How far from the point, along the axis of the pupil, the nearest corner of a facet in the way lies; touching parts left out, mm. */
    private double distance(int screen, Vector3D point, Vector3D normal, double depth) {
        double[] part = between(screens[screen], point, normal, depth);
        double nearest = depth;
        for (int i = 0; i < part.length; i += 3) {
            double ahead = depth - pupil.frame().height(Vector3D.of(part[i], part[i + 1], part[i + 2]));
            if (ahead > tolerance.gap()) {
                nearest = Math.min(nearest, ahead);
            }
        }
        return nearest;
    }

    /** Whether a facet that turns its front to the point can be left out, because lines leave its solid through others. */
    private boolean showsBackFirst(int f) {
        int solid = edges.solid(f);
        if (!edges.isClosed(solid) || scene.backSurface(f) != Scene.INSIDE) {
            return false;
        }
        // A solid that reaches to the pupil or behind it may be left only there.
        Vector3D n = pupil.frame().normal();
        double nearest = -n.dot(pupil.frame().origin());
        nearest += n.getX() * edges.bound(solid, n.getX() > 0 ? 0 : 3);
        nearest += n.getY() * edges.bound(solid, n.getY() > 0 ? 1 : 4);
        nearest += n.getZ() * edges.bound(solid, n.getZ() > 0 ? 2 : 5);
        return nearest > tolerance.gap();
    }

    /** The part of a facet between the point and the pupil and in front of the element; three coordinates a corner. */
    private double[] between(double[] screen, Vector3D point, Vector3D normal, double depth) {
        double[] part =
                SpaceClip.above(screen, pupil.frame().normal(), pupil.frame().origin(), 0);
        part = SpaceClip.above(
                part, pupil.frame().normal().negate(), point, Math.min(1e-12 * depth, tolerance.rounding()));
        return SpaceClip.above(part, normal, point, tolerance.rounding());
    }

    /**
     * Adds to the list what is left of a piece without the part inside all sides. The side that leaves most outside comes first, so that
     * little is cut up.
     */
    static void subtract(double[] piece, ViewLine[] sides, List<double[]> left) {
        boolean[] inner = new boolean[sides.length];
        for (int i = 0; i < sides.length; i++) {
            int side = sides[i].sideOf(piece);
            if (side < 0) {
                left.add(piece);
                return;
            }
            inner[i] = side > 0;
        }
        double[] inside = piece;
        while (inside.length > 0) {
            int best = -1;
            double most = -1;
            for (int i = 0; i < sides.length; i++) {
                if (!inner[i]) {
                    double[] outside = sides[i].outsideOf(inside);
                    double area = outside.length == 0 ? -1 : PlanarPolygons.area(outside);
                    if (area > most) {
                        most = area;
                        best = i;
                    }
                }
            }
            if (best < 0) {
                return;
            }
            // Rounding may leave a stroke without area.
            if (most > 0) {
                left.add(sides[best].outsideOf(inside));
            }
            inside = sides[best].insideOf(inside);
            inner[best] = true;
        }
    }

    private static List<double[]> clipAll(List<double[]> pieces, ViewLine line) {
        List<double[]> left = new ArrayList<>();
        for (double[] piece : pieces) {
            double[] part = line.insideOf(piece);
            if (part.length > 0) {
                left.add(part);
            }
        }
        return left;
    }
}
