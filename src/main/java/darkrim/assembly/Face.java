package darkrim.assembly;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * A named face of a part, in place.
 *
 * @param name path such as {@code lid/opening[1,2]/land/-y}; of a sheet the name of its front
 * @param back name of the other side of a sheet; empty for a face of a solid
 * @param triangles its facets
 */
public record Face(String name, Optional<String> back, List<Triangle> triangles) {
    /** Copies the list. */
    public Face {
        // What is immutable already is not copied: a large mesh is held once for all its copies.
        triangles = triangles instanceof PlacedFacets ? triangles : List.copyOf(triangles);
    }

    /** The surfaces that this face makes: one for a face of a solid, front and back for a sheet. */
    public List<String> surfaces() {
        return Stream.concat(Stream.of(name), back.stream()).toList();
    }

    /** Area of one side, mm2. */
    public double area() {
        return triangles.stream().mapToDouble(Triangle::area).sum();
    }
}
