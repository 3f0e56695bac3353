package darkrim.assembly;

import darkrim.diagnostic.Place;
import darkrim.geom.Placement;
import darkrim.geom.Triangulation;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.IntFunction;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.apache.commons.geometry.euclidean.twod.Vector2D;

/** Gathers the facets of one body in the frame of its part, by face. Loops of corners run counter-clockwise as seen from +z. */
final class Mesh implements Piece {
    private final String name;
    private final Optional<String> back;
    private final Map<String, List<Triangle>> faces = new LinkedHashMap<>();

    private Mesh(String name, Optional<String> back) {
        this.name = name;
        this.back = back;
    }

    /**
     * A closed solid.
     *
     * @param name path below the part; empty if the solid is all of the part
     */
    static Mesh solid(String name) {
        return new Mesh(name, Optional.empty());
    }

    /** A sheet; its one face is the front. */
    static Mesh sheet(String backName) {
        return new Mesh("", Optional.of(backName));
    }

    /**
     * Adds a facet, corners counter-clockwise from outside.
     *
     * @throws IllegalArgumentException if it has no area or is not finite
     */
    void triangle(String face, Vector3D a, Vector3D b, Vector3D c) {
        Triangle facet = new Triangle(a, b, c);
        double area = facet.area();
        if (!(area > 0 && area < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException("its face " + face + " has no area: are two of its sizes the same?");
        }
        faces.computeIfAbsent(face, f -> new ArrayList<>()).add(facet);
    }

    /** Adds a flat convex quadrilateral, corners counter-clockwise from outside. */
    void quad(String face, Vector3D a, Vector3D b, Vector3D c, Vector3D d) {
        triangle(face, a, b, c);
        triangle(face, a, c, d);
    }

    /**
     * Adds the band between two loops of as many corners. Facets face away from the axis where the loops are equal and the first lies
     * lower; exchanging the loops turns them round.
     *
     * @param faceOf name of the face of side i, from corner i to the next
     */
    void band(IntFunction<String> faceOf, List<Vector3D> first, List<Vector3D> second) {
        int corners = first.size();
        for (int i = 0; i < corners; i++) {
            int next = (i + 1) % corners;
            quad(faceOf.apply(i), first.get(i), first.get(next), second.get(next), second.get(i));
        }
    }

    /**
     * Adds the flat strip between two straight chains of corners, both from left to right as seen from outside. Facets have a side on one
     * chain and a corner on the other, so every corner of both chains is used.
     */
    void strip(String face, List<Vector3D> lower, List<Vector3D> upper) {
        int low = 0;
        int up = 0;
        while (low + 1 < lower.size() || up + 1 < upper.size()) {
            boolean lowerNext =
                    up + 1 == upper.size() || (low + 1 < lower.size() && share(lower, low + 1) < share(upper, up + 1));
            if (lowerNext) {
                triangle(face, lower.get(low), lower.get(low + 1), upper.get(up));
                low++;
            } else {
                triangle(face, lower.get(low), upper.get(up + 1), upper.get(up));
                up++;
            }
        }
    }

    /** How far along its chain a corner lies, 0 to 1. */
    private static double share(List<Vector3D> chain, int corner) {
        Vector3D start = chain.get(0);
        return chain.get(corner).distance(start) / chain.get(chain.size() - 1).distance(start);
    }

    /**
     * Adds a level region with holes.
     *
     * @param z height of the region, mm
     * @param facesUp whether it faces +z, otherwise -z
     * @throws IllegalArgumentException if the holes meet each other or the border
     */
    void level(String face, double z, List<Vector2D> outer, List<List<Vector2D>> holes, boolean facesUp) {
        List<Vector3D> corners = new ArrayList<>(at(z, outer));
        holes.forEach(hole -> corners.addAll(at(z, hole)));
        for (int[] t : Triangulation.of(outer, holes)) {
            triangle(face, corners.get(t[0]), corners.get(t[facesUp ? 1 : 2]), corners.get(t[facesUp ? 2 : 1]));
        }
    }

    /** A loop of the plane at a height, mm. */
    static List<Vector3D> at(double z, List<Vector2D> loop) {
        return loop.stream()
                .map(corner -> Vector3D.of(corner.getX(), corner.getY(), z))
                .toList();
    }

    @Override
    public int size() {
        return faces.values().stream().mapToInt(List::size).sum();
    }

    @Override
    public Body placed(String part, Placement placement, Place place) {
        String path = name.isEmpty() ? part : part + "/" + name;
        List<Face> placed = new ArrayList<>();
        faces.forEach((face, triangles) -> placed.add(new Face(
                path + "/" + face,
                back.map(other -> path + "/" + other),
                triangles.stream().map(triangle -> triangle.placed(placement)).toList())));
        return new Body(path, back.isEmpty(), placed, place);
    }
}
