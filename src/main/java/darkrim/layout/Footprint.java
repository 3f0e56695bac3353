package darkrim.layout;

import darkrim.geom.MitredOffset;
import darkrim.geom.Outline;
import darkrim.geom.Polygon;
import darkrim.geom.Ring;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;

/**
 * An outline at a place of a plate, for the check of openings. Discs and upright rectangles are compared exactly;
 * where others meet a disc, the disc counts as a polygon around it, too large by less than 2e-5 of its radius.
 *
 * @param outline the outline about its own centre, mm
 * @param x its centre, mm
 * @param y its centre, mm
 */
record Footprint(Outline outline, double x, double y) {
    private static final GeometryFactory FACTORY = new GeometryFactory();
    private static final int CIRCLE_CORNERS = 512;

    /** The outline with every side moved outward; empty if a side then vanishes or it crosses itself. */
    static Optional<Outline> widened(Outline outline, double by) {
        if (outline instanceof Ring ring) {
            return Optional.of(Ring.disc(ring.radius() + by));
        }
        try {
            return Optional.of(Polygon.of(MitredOffset.outward(((Polygon) outline).corners(), by)));
        } catch (IllegalArgumentException tooFar) {
            return Optional.empty();
        }
    }

    /** The upright rectangle around it. */
    Envelope bounds() {
        if (outline instanceof Ring ring) {
            return new Envelope(x - ring.radius(), x + ring.radius(), y - ring.radius(), y + ring.radius());
        }
        Envelope bounds = new Envelope();
        ((Polygon) outline).corners().forEach(corner -> bounds.expandToInclude(x + corner.getX(), y + corner.getY()));
        return bounds;
    }

    /** Whether it shares a point with another. */
    boolean overlaps(Footprint other) {
        if (!bounds().intersects(other.bounds())) {
            return false;
        }
        if (outline instanceof Ring a && other.outline instanceof Ring b) {
            return Math.hypot(x - other.x, y - other.y) <= a.radius() + b.radius();
        }
        return (isUpright() && other.isUpright()) || geometry().intersects(other.geometry());
    }

    /** Whether it lies within another without touching its border. */
    boolean isInside(Footprint whole) {
        if (whole.outline instanceof Ring plate) {
            return farthestFrom(whole) < plate.radius();
        }
        if (whole.isUpright()) {
            Envelope inner = bounds();
            Envelope outer = whole.bounds();
            return inner.getMinX() > outer.getMinX()
                    && inner.getMaxX() < outer.getMaxX()
                    && inner.getMinY() > outer.getMinY()
                    && inner.getMaxY() < outer.getMaxY();
        }
        Geometry plate = whole.geometry();
        Geometry own = geometry();
        return plate.contains(own) && !plate.getBoundary().intersects(own);
    }

    private double farthestFrom(Footprint whole) {
        if (outline instanceof Ring ring) {
            return Math.hypot(x - whole.x, y - whole.y) + ring.radius();
        }
        return ((Polygon) outline)
                .corners().stream()
                        .mapToDouble(corner -> Math.hypot(x + corner.getX() - whole.x, y + corner.getY() - whole.y))
                        .max()
                        .orElseThrow();
    }

    private boolean isUpright() {
        return outline instanceof Polygon polygon
                && polygon.corners().size() == 4
                && polygon.corners().stream()
                        .allMatch(corner -> polygon.corners().stream()
                                                .filter(other -> other.getX() == corner.getX())
                                                .count()
                                        == 2
                                && polygon.corners().stream()
                                                .filter(other -> other.getY() == corner.getY())
                                                .count()
                                        == 2);
    }

    private Geometry geometry() {
        List<Coordinate> ring = new ArrayList<>();
        if (outline instanceof Polygon polygon) {
            polygon.corners().forEach(corner -> ring.add(new Coordinate(x + corner.getX(), y + corner.getY())));
        } else {
            double step = 2 * Math.PI / CIRCLE_CORNERS;
            double radius = outline.reach() / StrictMath.cos(step / 2);
            for (int i = 0; i < CIRCLE_CORNERS; i++) {
                ring.add(new Coordinate(x + radius * StrictMath.cos(i * step), y + radius * StrictMath.sin(i * step)));
            }
        }
        ring.add(ring.get(0));
        return FACTORY.createPolygon(ring.toArray(new Coordinate[0]));
    }
}
