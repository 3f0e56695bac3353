package darkrim.assembly;

import darkrim.layout.Shape;
import java.util.ArrayList;
import java.util.List;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/**
 * A cap of a sphere as a sheet: rings of corners on the sphere about the z axis, each ring a polygon, quadrilaterals between them. The
 * facets lie within the sphere.
 *
 * <p>Facets are kept within the larger of 0.001 mm and a ten-thousandth of the radius of the sphere: a sphere needs the square of the sides
 * that a circle needs.
 */
final class SpherePieces {
    private static final double RELATIVE_TOLERANCE = 1e-4;

    private SpherePieces() {}

    static Pieces of(Shape.SphereCap cap) {
        double radius = cap.radius();
        // Half the tolerance for the sides of a ring, half for the step from ring to ring: the two add up in the middle
        // of a facet.
        double tolerance = Math.max(RoundSides.TOLERANCE, RELATIVE_TOLERANCE * radius) / 2;
        RoundSides sides = RoundSides.forRadius(radius, tolerance);
        double halfAngle = Math.toRadians(cap.halfAngle());
        int rings = (int) Math.ceil(Math.max(1, halfAngle * sides.count() / (2 * Math.PI)));
        boolean closed = cap.halfAngle() == 180;
        Mesh mesh = Mesh.sheet("inside");
        Vector3D pole = Vector3D.of(0, 0, radius);
        List<Vector3D> above = ring(sides, radius, halfAngle / rings);
        fan(mesh, pole, above);
        for (int i = 2; i <= (closed ? rings - 1 : rings); i++) {
            List<Vector3D> below = ring(sides, radius, halfAngle * i / rings);
            mesh.band(side -> "outside", below, above);
            above = below;
        }
        if (closed) {
            List<Vector3D> reversed = new ArrayList<>(above);
            java.util.Collections.reverse(reversed);
            fan(mesh, pole.negate(), reversed);
        }
        double step = Math.max(halfAngle / rings, 2 * Math.PI / sides.count());
        return Pieces.of(mesh, 2 * radius * (1 - StrictMath.cos(step / 2)));
    }

    private static List<Vector3D> ring(RoundSides sides, double radius, double fromPole) {
        return Mesh.at(radius * StrictMath.cos(fromPole), sides.inside(radius * StrictMath.sin(fromPole)));
    }

    private static void fan(Mesh mesh, Vector3D tip, List<Vector3D> ring) {
        for (int i = 0; i < ring.size(); i++) {
            mesh.triangle("outside", tip, ring.get(i), ring.get((i + 1) % ring.size()));
        }
    }
}
