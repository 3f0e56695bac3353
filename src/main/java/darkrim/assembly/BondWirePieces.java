package darkrim.assembly;

import darkrim.layout.BondWiresShape;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.apache.commons.geometry.euclidean.twod.Vector2D;

/**
 * Wire bonds: prisms of one regular cross-section along the chords of a parabola, mitred at the joints, so their quadrilaterals are flat. The
 * feet are cut level.
 *
 * <p>The parabola z = h - a (x - p)^2 through (0, 0) and (s, -d) with its highest point at h has p = s sqrt(h) / (sqrt(h) + sqrt(h + d)) and
 * a = h / p^2. A chord over a step w stays a w^2 / 4 below it, measured along z.
 */
final class BondWirePieces {
    private static final int FEWEST_SIDES = 8;
    private static final int FEWEST_STEPS = 8;
    private static final int MOST_STEPS = 2_000;

    private final BondWiresShape wires;
    private final List<Vector2D> path;
    private final List<Vector2D> section;
    private final double chordError;

    private BondWirePieces(BondWiresShape wires) {
        this.wires = wires;
        double h = wires.loopHeight();
        double peak = wires.span() * Math.sqrt(h) / (Math.sqrt(h) + Math.sqrt(h + wires.drop()));
        double bend = h / (peak * peak);
        // Half of the allowed distance for the path, half for the cross-section: the two may add up.
        double share = wires.chord() / 2;
        double needed = Math.ceil(wires.span() / (2 * Math.sqrt(share / bend)));
        if (needed > MOST_STEPS) {
            throw new IllegalArgumentException(
                    "its wires need more than " + MOST_STEPS + " steps to keep the chord: allow a larger one");
        }
        int steps = Math.max(FEWEST_STEPS, (int) needed);
        path = IntStream.rangeClosed(0, steps)
                .mapToObj(i -> {
                    double x = wires.span() * i / steps;
                    return Vector2D.of(x, h - bend * (x - peak) * (x - peak));
                })
                .toList();
        double radius = wires.diameter() / 2;
        int sides = FEWEST_SIDES;
        while (sides < 96 && radius * (1 - StrictMath.cos(Math.PI / sides)) > share) {
            sides += 4;
        }
        section = new RoundSides(sides).inside(radius);
        double step = wires.span() / steps;
        chordError = bend * step * step / 4 + radius * (1 - StrictMath.cos(Math.PI / sides));
    }

    /**
     * The pieces of a row of wires, a body each, named by number from 1 along y.
     *
     * @throws IllegalArgumentException if the wire is too thick for its bends
     */
    static Pieces of(BondWiresShape wires) {
        BondWirePieces one = new BondWirePieces(wires);
        List<Mesh> meshes = new ArrayList<>();
        for (int i = 1; i <= wires.count(); i++) {
            double y = (i - (wires.count() + 1) / 2.0) * wires.spacing();
            meshes.add(one.wire(wires.count() == 1 ? "" : String.valueOf(i), y));
        }
        return new Pieces(meshes, List.of(), List.of(), one.chordError);
    }

    private Mesh wire(String name, double y) {
        Mesh mesh = Mesh.solid(name);
        List<List<Vector3D>> rings = new ArrayList<>();
        for (int i = 0; i < path.size(); i++) {
            rings.add(ring(i, y));
        }
        for (int i = 0; i + 1 < rings.size(); i++) {
            mesh.band(side -> "wire", rings.get(i), rings.get(i + 1));
        }
        end(mesh, "foot-1", rings.get(0), false);
        end(mesh, "foot-2", rings.get(rings.size() - 1), true);
        return mesh;
    }

    /** The cross-section drawn out along a segment to the plane in which it meets the next one, at the ends to the level of the foot. */
    private List<Vector3D> ring(int joint, double y) {
        Vector2D at = path.get(joint);
        boolean first = joint == 0;
        Vector2D along = direction(first ? 0 : joint - 1);
        Vector2D plane;
        if (first || joint == path.size() - 1) {
            plane = Vector2D.of(0, 1);
        } else {
            plane = along.add(direction(joint));
        }
        // Below the way, so that the rings run counter-clockwise as seen from ahead.
        Vector2D below = Vector2D.of(along.getY(), -along.getX());
        double slope = plane.dot(along);
        List<Vector3D> ring = new ArrayList<>();
        for (Vector2D corner : section) {
            Vector2D beside = below.multiply(corner.getX());
            double on = -plane.dot(beside) / slope;
            Vector2D point = at.add(beside).add(along.multiply(on));
            requireStraight(joint, on);
            ring.add(Vector3D.of(
                    point.getX(), y + corner.getY(), first || joint == path.size() - 1 ? at.getY() : point.getY()));
        }
        return ring;
    }

    private void requireStraight(int joint, double on) {
        double before = joint == 0 ? Double.POSITIVE_INFINITY : path.get(joint).distance(path.get(joint - 1));
        double after = joint == path.size() - 1
                ? Double.POSITIVE_INFINITY
                : path.get(joint).distance(path.get(joint + 1));
        if (!(2 * Math.abs(on) < Math.min(before, after))) {
            throw new IllegalArgumentException(
                    "its wire of " + wires.diameter()
                            + " mm is too thick for the bend or the slope at its feet: make it thinner, the loop higher or the span longer");
        }
    }

    private Vector2D direction(int segment) {
        return path.get(segment + 1).subtract(path.get(segment)).normalize();
    }

    /** A convex end, as a fan about its first corner. */
    private static void end(Mesh mesh, String face, List<Vector3D> ring, boolean ahead) {
        for (int i = 1; i + 1 < ring.size(); i++) {
            mesh.triangle(face, ring.get(0), ring.get(ahead ? i : i + 1), ring.get(ahead ? i + 1 : i));
        }
    }
}
