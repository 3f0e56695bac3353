package darkrim.assembly;

import darkrim.geom.Polygon;
import darkrim.geom.Triangulation;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.function.IntFunction;
import java.util.stream.IntStream;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.apache.commons.geometry.euclidean.twod.Vector2D;

/**
 * The skin of a solid of revolution, from its profile: one ring of corners for each corner of the profile, one band of facets for each side.
 *
 * <p>Every ring has as many corners. A ring from which material reaches outward, as around an opening, is a polygon around its circle; a ring
 * at the rim of material is a polygon inside: never more material than the true part. Where a side that faces the axis meets one that faces
 * away the ring is around the circle, and the side that faces away reaches beyond the true one by up to the chord error there.
 */
final class TurnedSkin {
    private final List<Vector2D> profile;
    private final RoundSides sides;

    /**
     * @param profile corners (distance from the axis, height), counter-clockwise with the distance to the right and the height up, mm
     * @param chord allowed distance between circle and polygon, mm
     * @throws IllegalArgumentException if polygons that come together across thin material would meet or pass each other
     */
    TurnedSkin(List<Vector2D> profile, double chord) {
        this.profile = profile;
        double largest = profile.stream().mapToDouble(Vector2D::getX).max().orElseThrow();
        sides = RoundSides.forRadius(largest, chord);
        requireMaterial();
    }

    /** All polygons are alike but for their size, so that the section through their corners tells of every section. */
    private void requireMaterial() {
        List<Vector2D> section = IntStream.range(0, profile.size())
                .mapToObj(i -> Vector2D.of(radius(i), profile.get(i).getY()))
                .toList();
        boolean sound;
        try {
            Triangulation.requireSimple(section);
            sound = Polygon.signedArea(section) > 0;
        } catch (IllegalArgumentException meeting) {
            sound = false;
        }
        if (!sound) {
            throw new IllegalArgumentException(
                    "it is thinner somewhere than the polygons that stand for its circles allow, %.3g mm: allow less chord"
                            .formatted(2 * chordError()));
        }
    }

    /** Greatest distance between a circle of the part and its polygon, mm. */
    double chordError() {
        return profile.stream()
                .mapToDouble(corner -> sides.chordError(corner.getX()))
                .max()
                .orElseThrow();
    }

    /** Number of sides of every circle. */
    int count() {
        return sides.count();
    }

    /**
     * Adds the skin to a body.
     *
     * @param faceOf name of the face that side i of the profile makes
     * @throws IllegalArgumentException if polygons would let material vanish
     */
    void addTo(Mesh mesh, IntFunction<String> faceOf) {
        int n = profile.size();
        List<List<Vector3D>> rings = new ArrayList<>();
        for (int i = 0; i < n; i++) {
            rings.add(ring(i));
        }
        for (int i = 0; i < n; i++) {
            addBand(mesh, faceOf.apply(i), rings.get(i), rings.get((i + 1) % n));
        }
    }

    /** The loop of a level circle at a corner of the profile. */
    private List<Vector3D> ring(int i) {
        Vector2D corner = profile.get(i);
        if (corner.getX() == 0) {
            return List.of(Vector3D.of(0, 0, corner.getY()));
        }
        return Mesh.at(corner.getY(), isAround(i) ? sides.around(corner.getX()) : sides.inside(corner.getX()));
    }

    /** Whether the polygon at a corner of the profile lies around its circle. */
    private boolean isAround(int i) {
        return facesAxis((i + profile.size() - 1) % profile.size()) || facesAxis(i);
    }

    /** Distance of the corners of that polygon from the axis, mm. */
    private double radius(int i) {
        double radius = profile.get(i).getX();
        return isAround(i) ? radius + sides.chordError(radius) : radius;
    }

    /** A side that runs downward has its material farther from the axis. */
    private boolean facesAxis(int side) {
        Vector2D from = profile.get(side);
        Vector2D to = profile.get((side + 1) % profile.size());
        return to.getY() < from.getY();
    }

    private static void addBand(Mesh mesh, String face, List<Vector3D> from, List<Vector3D> to) {
        if (from.size() == 1 && to.size() == 1) {
            return;
        }
        if (from.size() == 1) {
            List<Vector3D> reversed = new ArrayList<>(to);
            Collections.reverse(reversed);
            fan(mesh, face, from.get(0), reversed);
        } else if (to.size() == 1) {
            fan(mesh, face, to.get(0), from);
        } else {
            mesh.band(i -> face, from, to);
        }
    }

    private static void fan(Mesh mesh, String face, Vector3D tip, List<Vector3D> ring) {
        for (int i = 0; i < ring.size(); i++) {
            mesh.triangle(face, tip, ring.get(i), ring.get((i + 1) % ring.size()));
        }
    }
}
