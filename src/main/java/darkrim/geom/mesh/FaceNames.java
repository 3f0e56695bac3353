package darkrim.geom.mesh;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/**
 * Names faces by what they are and where they lie: {@code +z[12,-3.5,3.2]} is flat, faces +z and has its middle there, mm in the frame of the
 * mesh. {@code slope} is flat and faces no axis, {@code outside} and {@code inside} are curved, bulging or hollow. The name tells nothing of
 * the order of the file, so another export of the same shape has the same names; a face that moved has another one, and whatever asks for
 * the old name is told so.
 *
 * <p>Where two names are alike, the largest distance of the face from its middle is added ({@code +z[0,0,3.2,r12.5]}), then a number.
 */
final class FaceNames {
    /** cos of half a degree: a face that is nearer to an axis faces along it. */
    private static final double ALONG_AXIS = 0.99996;

    private static final String[] AXES = {"x", "y", "z"};

    private FaceNames() {}

    /** The faces with their names, those of a group under the name of the group. */
    static List<MeshFace> of(FacetMesh mesh, List<MeshFace> faces) {
        List<String> names = new ArrayList<>();
        Map<String, Integer> uses = new HashMap<>();
        for (MeshFace face : faces) {
            String name =
                    prefix(face) + kind(mesh, face) + "[" + place(face.size().centre()) + "]";
            names.add(name);
            uses.merge(name, 1, Integer::sum);
        }
        Set<String> taken = new HashSet<>();
        List<MeshFace> named = new ArrayList<>();
        for (int i = 0; i < names.size(); i++) {
            String name = names.get(i);
            if (uses.get(name) > 1) {
                name = name.substring(0, name.length() - 1) + ",r" + rounded(reach(mesh, faces.get(i))) + "]";
            }
            String free = name;
            for (int number = 2; !taken.add(free); number++) {
                free = name + "-" + number;
            }
            named.add(faces.get(i).named(free));
        }
        return named;
    }

    private static String prefix(MeshFace face) {
        return face.group().name().isEmpty() ? "" : face.group().name() + "/";
    }

    private static String kind(FacetMesh mesh, MeshFace face) {
        if (face.size().flat()) {
            Vector3D normal = face.size().normal().orElseThrow();
            double[] components = normal.toArray();
            for (int axis = 0; axis < 3; axis++) {
                if (Math.abs(components[axis]) > ALONG_AXIS) {
                    return (components[axis] > 0 ? "+" : "-") + AXES[axis];
                }
            }
            return "slope";
        }
        double bulge = 0;
        for (int f : face.facets()) {
            bulge += mesh.doubledNormal(f)
                    .dot(FlawList.middle(mesh, f).subtract(face.size().centre()));
        }
        return bulge >= 0 ? "outside" : "inside";
    }

    private static double reach(FacetMesh mesh, MeshFace face) {
        double reach = 0;
        for (int f : face.facets()) {
            for (int k = 0; k < 3; k++) {
                reach = Math.max(reach, mesh.at(f, k).distance(face.size().centre()));
            }
        }
        return reach;
    }

    private static String place(Vector3D at) {
        return rounded(at.getX()) + "," + rounded(at.getY()) + "," + rounded(at.getZ());
    }

    /**
     * To a hundredth. Drawings favour multiples of 0.005, which lie in the middle between two hundredths: the middle is moved aside, so that
     * the last digit of a float does not choose the name.
     */
    private static String rounded(double value) {
        double hundredths = Math.floor(value * 100 + 0.57);
        String text = String.format(Locale.ROOT, "%.2f", hundredths / 100 + 0.0);
        return text.contains(".") ? text.replaceAll("0+$", "").replaceAll("\\.$", "") : text;
    }
}
