package darkrim.present.geometry;

import darkrim.assembly.Assembly;
import darkrim.assembly.Body;
import darkrim.assembly.Face;
import darkrim.assembly.Triangle;
import darkrim.layout.Layout;
import darkrim.present.LayoutWords;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Predicate;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/**
 * The shape of the parts, in mm, as STL and OBJ text with all digits: corners that coincide have the same numbers, so that solids stay closed. Sheets are
 * written once, facing their front.
 */
public final class ShapeFiles {
    private ShapeFiles() {}

    /**
     * STL: a solid for each body, of which at least one face is wanted.
     *
     * @param wanted whether the face of a name is written
     */
    public static String stl(Assembly assembly, Predicate<String> wanted) {
        StringBuilder text = new StringBuilder();
        for (Body body : assembly.bodies()) {
            List<Face> faces = chosen(body, wanted);
            if (!faces.isEmpty()) {
                String name = word(body.name());
                text.append("solid ").append(name).append('\n');
                faces.forEach(face -> face.triangles().forEach(facet -> facet(text, facet)));
                text.append("endsolid ").append(name).append('\n');
            }
        }
        return text.toString();
    }

    private static void facet(StringBuilder text, Triangle facet) {
        Vector3D across = facet.doubledNormal().normalize();
        text.append("facet normal ").append(numbers(across)).append("\nouter loop\n");
        for (Vector3D corner : List.of(facet.a(), facet.b(), facet.c())) {
            text.append("vertex ").append(numbers(corner)).append('\n');
        }
        text.append("endloop\nendfacet\n");
    }

    /**
     * OBJ: an object for each body, a group for each face.
     *
     * @param wanted whether the face of a name is written
     */
    public static String obj(Assembly assembly, Layout layout, String version, Predicate<String> wanted) {
        StringBuilder text = new StringBuilder();
        text.append("# ").append(LayoutWords.title(layout)).append("; mm\n# ");
        text.append(LayoutWords.file(layout))
                .append("; Darkrim ")
                .append(version)
                .append('\n');
        int written = 0;
        for (Body body : assembly.bodies()) {
            List<Face> faces = chosen(body, wanted);
            if (faces.isEmpty()) {
                continue;
            }
            text.append("o ").append(word(body.name())).append('\n');
            Map<Vector3D, Integer> numbers = new HashMap<>();
            for (Face face : faces) {
                for (Triangle facet : face.triangles()) {
                    for (Vector3D corner : List.of(facet.a(), facet.b(), facet.c())) {
                        if (numbers.putIfAbsent(unsigned(corner), written + 1) == null) {
                            written++;
                            text.append("v ").append(numbers(corner)).append('\n');
                        }
                    }
                }
            }
            for (Face face : faces) {
                text.append("g ").append(word(face.name())).append('\n');
                for (Triangle facet : face.triangles()) {
                    text.append("f ")
                            .append(numbers.get(unsigned(facet.a())))
                            .append(' ')
                            .append(numbers.get(unsigned(facet.b())))
                            .append(' ')
                            .append(numbers.get(unsigned(facet.c())))
                            .append('\n');
                }
            }
        }
        return text.toString();
    }

    private static List<Face> chosen(Body body, Predicate<String> wanted) {
        return body.faces().stream()
                .filter(face -> face.surfaces().stream().anyMatch(wanted))
                .toList();
    }

    /** A name as one word of printable ASCII, which every reader takes. */
    private static String word(String name) {
        return name.replaceAll("[^\\x21-\\x7e]", "_").replace("#", "_").replace("\\", "_");
    }

    /** The same place without a sign before 0: two corners that differ in nothing else are one. */
    private static Vector3D unsigned(Vector3D place) {
        return Vector3D.of(place.getX() + 0.0, place.getY() + 0.0, place.getZ() + 0.0);
    }

    private static String numbers(Vector3D place) {
        Vector3D shown = unsigned(place);
        return shown.getX() + " " + shown.getY() + " " + shown.getZ();
    }
}
