package darkrim.shadow;

import darkrim.geom.Outline;
import darkrim.geom.Polygon;
import darkrim.geom.Ring;
import darkrim.scene.FieldLimit;
import darkrim.scene.Scene;
import java.util.ArrayList;
import java.util.List;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.apache.commons.geometry.euclidean.twod.Vector2D;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.operation.overlayng.OverlayNG;
import org.locationtech.jts.operation.overlayng.OverlayNGRobust;

/** The visible area by another algorithm: all facets projected whole and subtracted by OverlayNG; circles with 4,096 sides. */
final class OverlayOracle {
    private static final GeometryFactory FACTORY = new GeometryFactory();

    private OverlayOracle() {}

    /** A projection of the whole field limit exists only if no line from the point to it runs parallel to the pupil. */
    static boolean canJudge(Scene scene, Vector3D point) {
        if (scene.beam().fieldLimit().isEmpty()) {
            return true;
        }
        FieldLimit limit = scene.beam().fieldLimit().get();
        double reach = limit.outline().reach();
        double depth = scene.beam().pupil().frame().height(point);
        double sign = 0;
        for (int i = 0; i < 4; i++) {
            Vector3D corner = limit.frame().at(i % 2 == 0 ? reach : -reach, i < 2 ? reach : -reach);
            double side = Math.signum(scene.beam().pupil().frame().height(corner) - depth);
            if (sign * side < 0) {
                return false;
            }
            sign = side;
        }
        return true;
    }

    /** Visible share of the pupil, for an upward element and a pupil above it. */
    static double visibleArea(Scene scene, Vector3D point) {
        var frame = scene.beam().pupil().frame();
        Geometry seen = polygon(scene.beam().pupil().outline());
        double whole = seen.getArea();
        double depth = frame.height(point);
        for (int f = 0; f < scene.facetCount(); f++) {
            List<Vector3D> corners =
                    new ArrayList<>(List.of(scene.corner(f, 0), scene.corner(f, 1), scene.corner(f, 2)));
            corners = clip(
                    corners, frame.normal().negate(), frame.normal().negate().dot(point) + 1e-9 * depth);
            corners = clip(corners, frame.normal(), frame.normal().dot(frame.origin()));
            if (corners.size() < 3) {
                continue;
            }
            Coordinate[] ring = new Coordinate[corners.size() + 1];
            for (int i = 0; i < ring.length; i++) {
                Vector3D c = corners.get(i % corners.size());
                double t = depth / (depth - frame.height(c));
                Vector3D on = point.lerp(c, t);
                // Far beyond the pupil the corner is drawn in; the scenes are small enough for that to change nothing.
                ring[i] = new Coordinate(frame.inU(on), frame.inV(on));
            }
            Geometry hidden = FACTORY.createPolygon(ring);
            if (hidden.getArea() > 1e-9) {
                seen = polygons(OverlayNGRobust.overlay(seen, hidden, OverlayNG.DIFFERENCE));
            }
        }
        if (scene.beam().fieldLimit().isPresent()) {
            seen = OverlayNGRobust.overlay(
                    seen, field(scene.beam().fieldLimit().get(), frame, point), OverlayNG.INTERSECTION);
        }
        return seen.getArea() / whole;
    }

    /** Without the points and lines that an overlay may leave where borders only touch. */
    private static Geometry polygons(Geometry mixed) {
        List<org.locationtech.jts.geom.Polygon> parts = new ArrayList<>();
        for (int i = 0; i < mixed.getNumGeometries(); i++) {
            if (mixed.getGeometryN(i) instanceof org.locationtech.jts.geom.Polygon part) {
                parts.add(part);
            }
        }
        return FACTORY.createMultiPolygon(parts.toArray(org.locationtech.jts.geom.Polygon[]::new));
    }

    private static Geometry field(FieldLimit limit, darkrim.geom.Frame frame, Vector3D point) {
        Geometry outline = polygon(limit.outline());
        Geometry projected = outline.copy();
        projected.apply((org.locationtech.jts.geom.CoordinateFilter) c -> {
            Vector3D in = limit.frame().at(c.x, c.y);
            double t = frame.height(point) / (frame.height(point) - frame.height(in));
            Vector3D on = point.lerp(in, t);
            c.x = frame.inU(on);
            c.y = frame.inV(on);
        });
        projected.geometryChanged();
        return projected;
    }

    private static List<Vector3D> clip(List<Vector3D> corners, Vector3D normal, double offset) {
        List<Vector3D> out = new ArrayList<>();
        for (int i = 0; i < corners.size(); i++) {
            Vector3D a = corners.get(i);
            Vector3D b = corners.get((i + 1) % corners.size());
            double ha = normal.dot(a) - offset;
            double hb = normal.dot(b) - offset;
            if (ha >= 0) {
                out.add(a);
            }
            if (ha * hb < 0) {
                out.add(a.lerp(b, ha / (ha - hb)));
            }
        }
        return out;
    }

    private static Geometry polygon(Outline outline) {
        if (outline instanceof Ring ring) {
            Geometry disc = circle(ring.radius());
            return ring.hole() > 0 ? disc.difference(circle(ring.hole())) : disc;
        }
        List<Vector2D> corners = ((Polygon) outline).corners();
        Coordinate[] closed = new Coordinate[corners.size() + 1];
        for (int i = 0; i < closed.length; i++) {
            closed[i] = new Coordinate(
                    corners.get(i % corners.size()).getX(),
                    corners.get(i % corners.size()).getY());
        }
        return FACTORY.createPolygon(closed);
    }

    private static Geometry circle(double radius) {
        int sides = 4096;
        Coordinate[] closed = new Coordinate[sides + 1];
        for (int i = 0; i <= sides; i++) {
            double angle = 2 * Math.PI * (i % sides) / sides;
            closed[i] = new Coordinate(radius * Math.cos(angle), radius * Math.sin(angle));
        }
        return FACTORY.createPolygon(closed);
    }
}
