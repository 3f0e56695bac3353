package darkrim.light;

import static darkrim.reference.ReferenceCase.vector;

import darkrim.diagnostic.Place;
import darkrim.geom.Frame;
import darkrim.scene.Finish;
import darkrim.scene.SceneBuilder;
import java.util.ArrayList;
import java.util.List;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import tools.jackson.databind.JsonNode;

/**
 * The surfaces of a case as facets, corners on the true surface.
 *
 * <p>An inscribed polygon of n sides falls short of its circle by 2 pi^2 / (3 n^2) of the area: 1.3e-5 for the 720 sides of discs and
 * cylinders, 5e-5 for the 360 sides of caps and spheres. That is at most 1/40 of the largest standard error allowed.
 *
 * @param builder receives the facets
 * @param move where the case is moved to
 */
record ReferenceFacets(SceneBuilder builder, ReferenceMove move) {
    private static final int SIDES = 720;
    private static final int SPHERE_SIDES = 360;
    private static final int PLATE_RINGS = 6;

    /** How far an "infinite" plate reaches, mm: beyond every line of the cases that passes its opening. */
    private static final double FAR = 4000;

    /** A corner by its place in a grid of columns and rows. */
    private interface Corner {
        Vector3D at(int column, int row);
    }

    /** Adds a surface under a name: its active side has the finish, its back ({@code name/back}) absorbs. */
    void add(String name, Finish finish, JsonNode surface) {
        builder.sheet(name, finish, name + "/back", Finish.ABSORBER, Place.IN_CODE);
        switch (surface.get("type").asString()) {
            case "disk" -> disk(name, surface);
            case "rect" -> rect(name, surface);
            case "cylinderInside" -> cylinder(name, surface, true);
            case "cylinderOutside", "cylinder" -> cylinder(name, surface, false);
            case "sphereCapInside" -> cap(name, surface);
            case "sphereOutside" -> sphere(name, surface);
            case "polygon" -> polygon(name, surface);
            default -> throw new IllegalArgumentException("no facets for " + surface);
        }
    }

    /** Adds what stands in the way: thin and black on both sides. */
    void addBlocker(String name, JsonNode blocker) {
        switch (blocker.get("type").asString()) {
            case "halfPlane" -> halfPlane(name, blocker);
            case "plateWithRectOpening" -> rectOpening(name, blocker);
            case "plateWithCircleOpening" -> circleOpening(name, blocker);
            default -> add(name, Finish.ABSORBER, blocker);
        }
    }

    private void disk(String name, JsonNode disk) {
        Frame frame = Frame.about(vector(disk.get("center")), vector(disk.get("normal")));
        double hole = disk.get("innerRadius").asDouble();
        double radius = disk.get("radius").asDouble();
        if (hole == 0) {
            fullDisk(name, frame, radius);
        } else {
            grid(name, SIDES, 1, (i, j) -> around(frame, j == 0 ? radius : hole, i, SIDES));
        }
    }

    /** Cuts off every other corner again and again: a fan would have hundreds of slivers in its middle, which are slow to trace. */
    private void fullDisk(String name, Frame frame, double radius) {
        List<Vector3D> loop = new ArrayList<>();
        for (int i = 0; i < SIDES; i++) {
            loop.add(around(frame, radius, i, SIDES));
        }
        while (loop.size() > 2) {
            List<Vector3D> left = new ArrayList<>();
            for (int i = 0; i < loop.size(); i += 2) {
                left.add(loop.get(i));
                if (i + 1 < loop.size()) {
                    triangle(name, loop.get(i), loop.get(i + 1), loop.get((i + 2) % loop.size()));
                }
            }
            loop = left;
        }
    }

    private void rect(String name, JsonNode rect) {
        Vector3D origin = vector(rect.get("origin"));
        Vector3D u = vector(rect.get("u"));
        Vector3D v = vector(rect.get("v"));
        quad(name, origin, origin.add(u), origin.add(u).add(v), origin.add(v));
    }

    private void polygon(String name, JsonNode polygon) {
        List<Vector3D> corners = ReferenceBeams.corners(polygon);
        for (int i = 1; i + 1 < corners.size(); i++) {
            triangle(name, corners.get(0), corners.get(i), corners.get(i + 1));
        }
    }

    private void cylinder(String name, JsonNode cylinder, boolean inside) {
        double radius = cylinder.get("radius").asDouble();
        double low = cylinder.get("z0").asDouble();
        double high = cylinder.get("z1").asDouble();
        grid(
                name,
                SIDES,
                1,
                (i, j) ->
                        around(Frame.LAYOUT, radius, i, SIDES).add(Vector3D.of(0, 0, (j == 0) == inside ? high : low)));
    }

    /** Ring k has 6 k corners, so that facets are alike in size, at the pole too. */
    private void cap(String name, JsonNode cap) {
        Frame frame = Frame.about(vector(cap.get("center")), vector(cap.get("axis")));
        double radius = cap.get("radius").asDouble();
        int rings = SPHERE_SIDES / 6;
        double step = Math.toRadians(cap.get("halfAngleDeg").asDouble()) / rings;
        for (int k = 1; k <= rings; k++) {
            for (int i = 0; i < 6 * k; i++) {
                // Of the six sectors, this corner's; the ring within has one corner less in each.
                int sector = i / k;
                int within = i - sector;
                Vector3D a = onSphere(frame, radius, k * step, i, 6 * k);
                Vector3D b = onSphere(frame, radius, k * step, i + 1, 6 * k);
                Vector3D c = onSphere(frame, radius, (k - 1) * step, within, 6 * (k - 1));
                triangle(name, a, c, b);
                if ((i + 1) % k != 0) {
                    triangle(name, b, c, onSphere(frame, radius, (k - 1) * step, within + 1, 6 * (k - 1)));
                }
            }
        }
    }

    private void sphere(String name, JsonNode sphere) {
        Frame frame = Frame.about(vector(sphere.get("center")), Vector3D.Unit.PLUS_Z);
        double radius = sphere.get("radius").asDouble();
        int rings = SPHERE_SIDES / 6;
        grid(
                name,
                SPHERE_SIDES,
                rings,
                (i, j) -> onSphere(frame, radius, (rings - j) * Math.PI / rings, i, SPHERE_SIDES));
    }

    private void halfPlane(String name, JsonNode blocker) {
        Vector3D clear = vector(blocker.get("clearNormal"));
        Vector3D along = Vector3D.Unit.PLUS_Z.cross(clear);
        Vector3D edge = clear.multiply(blocker.get("edgeOffset").asDouble())
                .add(Vector3D.of(0, 0, blocker.get("z").asDouble()));
        Vector3D a = edge.add(along.multiply(FAR));
        Vector3D b = edge.add(along.multiply(-FAR));
        black(name);
        quad(name, a, a.subtract(clear.multiply(FAR)), b.subtract(clear.multiply(FAR)), b);
    }

    /** Four quadrilaterals that share the corners of the opening. */
    private void rectOpening(String name, JsonNode plate) {
        double z = plate.get("z").asDouble();
        double[] x = {plate.get("x").get(0).asDouble(), plate.get("x").get(1).asDouble()};
        double[] y = {plate.get("y").get(0).asDouble(), plate.get("y").get(1).asDouble()};
        black(name);
        grid(name, 4, 1, (i, j) -> {
            int sideX = i % 4 == 0 || i % 4 == 3 ? 0 : 1;
            int sideY = i % 4 < 2 ? 0 : 1;
            return j == 1
                    ? Vector3D.of(x[sideX], y[sideY], z)
                    : Vector3D.of(FAR * (2 * sideX - 1), FAR * (2 * sideY - 1), z);
        });
    }

    private void circleOpening(String name, JsonNode plate) {
        Vector3D center = Vector3D.of(
                plate.get("center").get(0).asDouble(),
                plate.get("center").get(1).asDouble(),
                plate.get("z").asDouble());
        black(name);
        Frame frame = Frame.about(center, Vector3D.Unit.PLUS_Z);
        double radius = plate.get("radius").asDouble();
        double step = Math.pow(FAR / radius, 1.0 / PLATE_RINGS);
        grid(name, SIDES, PLATE_RINGS, (i, j) -> around(frame, radius * Math.pow(step, j), i, SIDES));
    }

    private void black(String name) {
        builder.sheet(name, Finish.ABSORBER, name + "/back", Finish.ABSORBER, Place.IN_CODE);
    }

    private static Vector3D around(Frame frame, double radius, int step, int sides) {
        double angle = sides == 0 ? 0 : 2 * Math.PI * (step % sides) / sides;
        return frame.at(radius * Math.cos(angle), radius * Math.sin(angle));
    }

    private static Vector3D onSphere(Frame frame, double radius, double fromAxis, int step, int sides) {
        double across = fromAxis == Math.PI ? 0 : radius * Math.sin(fromAxis);
        return around(frame, across, step, sides).add(frame.normal().multiply(radius * Math.cos(fromAxis)));
    }

    /** Counter-clockwise from column to column and then from row to row, as seen from the active side. */
    private void grid(String name, int columns, int rows, Corner corner) {
        for (int i = 0; i < columns; i++) {
            for (int j = 0; j < rows; j++) {
                quad(name, corner.at(i, j), corner.at(i + 1, j), corner.at(i + 1, j + 1), corner.at(i, j + 1));
            }
        }
    }

    private void quad(String name, Vector3D a, Vector3D b, Vector3D c, Vector3D d) {
        triangle(name, a, b, c);
        triangle(name, a, c, d);
    }

    /** At the middle of a disc and at the poles of a sphere a quadrilateral has two equal corners. */
    private void triangle(String name, Vector3D a, Vector3D b, Vector3D c) {
        if (!a.equals(b) && !b.equals(c) && !c.equals(a)) {
            builder.triangle(name, move.point(a), move.point(b), move.point(c));
        }
    }
}
