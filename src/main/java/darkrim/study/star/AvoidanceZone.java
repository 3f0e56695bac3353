package darkrim.study.star;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import org.apache.commons.geometry.euclidean.twod.Vector2D;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LinearRing;
import org.locationtech.jts.geom.Polygon;
import org.locationtech.jts.geom.util.PolygonExtracter;
import org.locationtech.jts.operation.union.UnaryUnionOp;

/**
 * Where a star sends, or may send, more than a level of its flux to the receivers: the union of all cells of the scan whose upper bound is above the
 * level, each widened by half its side all around. A cell that was not looked at counts in full.
 *
 * @param level share of the star's flux
 * @param areas the pieces
 * @param area of all pieces together, mm2
 */
public record AvoidanceZone(double level, List<Area> areas, double area) {
    private static final GeometryFactory FLAT = new GeometryFactory();

    /** Copies the list. */
    public AvoidanceZone {
        areas = List.copyOf(areas);
    }

    /**
     * A piece.
     *
     * @param outline its corners, mm, counter-clockwise
     * @param holes corners of what is left out of it, clockwise
     */
    public record Area(List<Vector2D> outline, List<List<Vector2D>> holes) {
        /** Copies the lists. */
        public Area {
            outline = List.copyOf(outline);
            holes = List.copyOf(holes);
        }

        /** Area, without the holes, mm2. */
        public double size() {
            return enclosed(outline)
                    - holes.stream().mapToDouble(Area::enclosed).sum();
        }

        /** Area within a ring, by the shoelace formula. */
        private static double enclosed(List<Vector2D> ring) {
            double twice = 0;
            for (int i = 0; i < ring.size(); i++) {
                twice += ring.get(i).signedArea(ring.get((i + 1) % ring.size()));
            }
            return Math.abs(twice) / 2;
        }
    }

    /** The zone of some cells within a region. */
    static AvoidanceZone of(List<StarCell> cells, double level, StarBound bound, StarRegion region) {
        List<Geometry> squares = new ArrayList<>();
        Envelope all = new Envelope(region.fromX(), region.toX(), region.fromY(), region.toY());
        for (StarCell cell : cells) {
            if (cell.upper(bound) > level) {
                double w = cell.width();
                squares.add(FLAT.toGeometry(
                        new Envelope(cell.x() - w, cell.x() + w, cell.y() - w, cell.y() + w).intersection(all)));
            }
        }
        Geometry union = squares.isEmpty() ? FLAT.createPolygon() : UnaryUnionOp.union(squares);
        List<Area> areas = new ArrayList<>();
        for (Object each : PolygonExtracter.getPolygons(union.norm())) {
            Polygon polygon = (Polygon) each;
            if (polygon.isEmpty()) {
                continue;
            }
            areas.add(new Area(
                    corners(polygon.getExteriorRing()),
                    IntStream.range(0, polygon.getNumInteriorRing())
                            .mapToObj(i -> corners(polygon.getInteriorRingN(i)))
                            .toList()));
        }
        return new AvoidanceZone(level, areas, union.getArea());
    }

    /** Whether a position lies in it. */
    public boolean contains(double x, double y) {
        return areas.stream()
                .anyMatch(each ->
                        inside(each.outline, x, y) && each.holes.stream().noneMatch(hole -> inside(hole, x, y)));
    }

    private static boolean inside(List<Vector2D> ring, double x, double y) {
        boolean in = false;
        for (int i = 0; i < ring.size(); i++) {
            Vector2D a = ring.get(i);
            Vector2D b = ring.get((i + 1) % ring.size());
            if (a.getY() > y != b.getY() > y
                    && x < a.getX() + (b.getX() - a.getX()) * (y - a.getY()) / (b.getY() - a.getY())) {
                in = !in;
            }
        }
        return in;
    }

    /** The corners of a ring, in the other direction than the library's normal form, those left out that lie on a straight side. */
    private static List<Vector2D> corners(LinearRing ring) {
        Coordinate[] all = ring.reverse().getCoordinates();
        int count = all.length - 1;
        List<Vector2D> corners = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            Coordinate before = all[(i + count - 1) % count];
            Coordinate after = all[(i + 1) % count];
            boolean straight =
                    (before.x == all[i].x && all[i].x == after.x) || (before.y == all[i].y && all[i].y == after.y);
            if (!straight) {
                corners.add(Vector2D.of(all[i].x, all[i].y));
            }
        }
        return corners;
    }
}
