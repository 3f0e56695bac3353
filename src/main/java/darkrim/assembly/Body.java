package darkrim.assembly;

import darkrim.diagnostic.Place;
import java.util.List;
import java.util.stream.Stream;

/**
 * One connected piece of a part, in place: a closed solid, or a sheet without thickness.
 *
 * <p>Faces of a body that meet share their corners bit for bit, and no corner lies within an edge of a neighbour: every edge of a solid
 * belongs to exactly two facets, which run along it in opposite directions. Bodies may touch one another.
 *
 * @param name path of the piece, the beginning of the names of its faces
 * @param solid whether it is closed and encloses material
 * @param faces its faces
 * @param place where its part stands in the layout file
 */
public record Body(String name, boolean solid, List<Face> faces, Place place) {
    /** Copies the list. */
    public Body {
        faces = List.copyOf(faces);
    }

    /** All facets, face after face. */
    public Stream<Triangle> triangles() {
        return faces.stream().flatMap(face -> face.triangles().stream());
    }

    /** Enclosed volume, mm3, by the divergence theorem; meaningless for a sheet. */
    public double volume() {
        return triangles().mapToDouble(t -> t.a().dot(t.b().cross(t.c())) / 6).sum();
    }
}
