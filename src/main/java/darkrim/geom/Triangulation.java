package darkrim.geom;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.apache.commons.geometry.euclidean.twod.Vector2D;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LinearRing;
import org.locationtech.jts.operation.valid.IsValidOp;
import org.locationtech.jts.operation.valid.TopologyValidationError;
import org.locationtech.jts.triangulate.polygon.ConstrainedDelaunayTriangulator;

/**
 * Splits a flat region with holes into triangles that use its corners and no others, so that faces which share an edge share its two
 * corners exactly: a mesh of such faces has no gap along a seam.
 */
public final class Triangulation {
    private static final GeometryFactory FACTORY = new GeometryFactory();

    private Triangulation() {}

    /**
     * Triangles of a region.
     *
     * @param outer corners of the outer border, counter-clockwise, mm
     * @param holes corners of each hole, in either sense
     * @return triangles as indices into the outer corners followed by the corners of the holes in their order, counter-clockwise
     * @throws IllegalArgumentException if the region is not simple: a corner comes twice or is not finite, the outline crosses or touches
     *     itself, or a hole reaches out of it or touches it or another hole
     */
    public static List<int[]> of(List<Vector2D> outer, List<List<Vector2D>> holes) {
        Map<Coordinate, Integer> indexOf = new HashMap<>();
        int next = 0;
        for (Vector2D corner : outer) {
            indexOf.put(coordinate(corner), next++);
        }
        LinearRing[] inner = new LinearRing[holes.size()];
        for (int i = 0; i < inner.length; i++) {
            for (Vector2D corner : holes.get(i)) {
                indexOf.put(coordinate(corner), next++);
            }
            inner[i] = ring(holes.get(i));
        }
        LinearRing border = ring(outer);
        requireApart(border, inner);
        Geometry region = FACTORY.createPolygon(border, inner);
        requireValid(region);
        Geometry pieces = ConstrainedDelaunayTriangulator.triangulate(region);
        List<int[]> triangles = new ArrayList<>();
        for (int i = 0; i < pieces.getNumGeometries(); i++) {
            Coordinate[] ends = pieces.getGeometryN(i).getCoordinates();
            int[] triangle = {indexOf.get(ends[0]), indexOf.get(ends[1]), indexOf.get(ends[2])};
            double turn = (ends[1].x - ends[0].x) * (ends[2].y - ends[0].y)
                    - (ends[1].y - ends[0].y) * (ends[2].x - ends[0].x);
            triangles.add(turn > 0 ? triangle : new int[] {triangle[0], triangle[2], triangle[1]});
        }
        return triangles;
    }

    /**
     * Refuses a chain of corners that crosses or touches itself.
     *
     * @throws IllegalArgumentException with the place where it does
     */
    public static void requireSimple(List<Vector2D> chain) {
        requireValid(FACTORY.createPolygon(ring(chain)));
    }

    /** Borders that touch are valid to JTS, but their seam would not be shared corner by corner. */
    private static void requireApart(LinearRing border, LinearRing[] holes) {
        for (int i = 0; i < holes.length; i++) {
            if (border.intersects(holes[i])) {
                throw new IllegalArgumentException("hole " + (i + 1) + " touches the outline");
            }
            for (int j = 0; j < i; j++) {
                if (holes[i].intersects(holes[j])) {
                    throw new IllegalArgumentException("holes " + (j + 1) + " and " + (i + 1) + " touch");
                }
            }
        }
    }

    private static void requireValid(Geometry region) {
        TopologyValidationError problem = new IsValidOp(region).getValidationError();
        if (problem != null) {
            Coordinate where = problem.getCoordinate();
            throw new IllegalArgumentException(
                    "the outline is not simple near (%.6g, %.6g) mm".formatted(where.x, where.y));
        }
    }

    private static LinearRing ring(List<Vector2D> chain) {
        if (chain.size() < 3 || !chain.stream().allMatch(Vector2D::isFinite)) {
            throw new IllegalArgumentException("an outline needs at least three finite corners");
        }
        Coordinate[] closed = new Coordinate[chain.size() + 1];
        for (int i = 0; i < closed.length; i++) {
            closed[i] = coordinate(chain.get(i % chain.size()));
            if (i > 0 && closed[i].equals2D(closed[i - 1])) {
                throw new IllegalArgumentException("two corners lie at " + chain.get(i - 1) + " mm");
            }
        }
        return FACTORY.createLinearRing(closed);
    }

    private static Coordinate coordinate(Vector2D corner) {
        // Adding 0 turns -0 into 0: the two compare equal but hash apart.
        return new Coordinate(corner.getX() + 0.0, corner.getY() + 0.0);
    }
}
