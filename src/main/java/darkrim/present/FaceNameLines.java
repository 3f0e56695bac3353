package darkrim.present;

import darkrim.assembly.MeshShape;
import darkrim.geom.mesh.MeshFace;
import darkrim.layout.Part;
import darkrim.layout.Shape;
import darkrim.study.FaceListing;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.HashSet;
import java.util.Set;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/** Names for the faces of meshes as lines to paste into a layout, to be replaced by names of the designer's own. */
public final class FaceNameLines {
    /** Places to a tenth of a micrometre, directions to a hundred-thousandth. */
    private static final int DECIMALS = 4;

    private FaceNameLines() {}

    /** The lines, ended by a line feed; empty if no part is a mesh. */
    public static String of(FaceListing listing) {
        StringBuilder text = new StringBuilder();
        for (Part part : listing.faces().keySet()) {
            MeshShape mesh = listing.meshes().get(part.name());
            if (mesh != null) {
                text.append("# Names for faces of the part ")
                        .append(Printable.of(part.name()))
                        .append(", from ")
                        .append(Printable.of(((Shape.Mesh) part.shape()).file().name()))
                        .append(
                                ".\n# Put these lines under the part, and your own words in place of face-1 and so on.\n")
                        .append("    names:\n");
                names(text, mesh);
            }
        }
        return text.toString();
    }

    private static void names(StringBuilder text, MeshShape mesh) {
        Set<String> given = new HashSet<>();
        mesh.matches().forEach(match -> given.add(match.anchor().name()));
        int number = 0;
        for (MeshFace face : mesh.faces()) {
            boolean named = given.contains(face.name());
            String name = face.name();
            if (!named) {
                do {
                    number++;
                    name = "face-" + number;
                } while (given.contains(name));
            }
            text.append("      ")
                    .append(quoted(name))
                    .append(": {at: ")
                    .append(list(face.size().on(), DECIMALS))
                    .append(", facing: ")
                    .append(list(face.size().onNormal(), DECIMALS + 1))
                    .append("}")
                    .append(named ? "\n" : "   # " + Printable.of(face.name()) + "\n");
        }
    }

    private static String quoted(String name) {
        return name.matches("[A-Za-z][A-Za-z0-9_-]*")
                ? name
                : "\"" + name.replace("\\", "\\\\").replace("\"", "\\\"") + "\"";
    }

    private static String list(Vector3D v, int decimals) {
        return "[" + number(v.getX(), decimals) + ", " + number(v.getY(), decimals) + ", " + number(v.getZ(), decimals)
                + "]";
    }

    private static String number(double value, int decimals) {
        BigDecimal shown = BigDecimal.valueOf(value).setScale(decimals, RoundingMode.HALF_EVEN);
        return shown.signum() == 0 ? "0" : shown.stripTrailingZeros().toPlainString();
    }
}
