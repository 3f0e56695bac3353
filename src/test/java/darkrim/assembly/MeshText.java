package darkrim.assembly;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/** Writes facets as mesh files, for tests. Texts keep every digit, so that what is read back is the same to the last bit. */
public final class MeshText {
    private MeshText() {}

    /** A text STL file of one solid. */
    public static String stl(List<Triangle> facets) {
        StringBuilder text = new StringBuilder("solid s\n");
        for (Triangle facet : facets) {
            text.append("facet normal 0 0 0\nouter loop\n");
            for (Vector3D corner : List.of(facet.a(), facet.b(), facet.c())) {
                text.append("vertex ").append(line(corner));
            }
            text.append("endloop\nendfacet\n");
        }
        return text.append("endsolid s\n").toString();
    }

    /** A binary STL file. */
    public static byte[] binaryStl(List<Triangle> facets) {
        ByteBuffer bytes = ByteBuffer.allocate(84 + 50 * facets.size()).order(ByteOrder.LITTLE_ENDIAN);
        bytes.position(80).putInt(facets.size());
        for (Triangle facet : facets) {
            bytes.putFloat(0).putFloat(0).putFloat(0);
            for (Vector3D corner : List.of(facet.a(), facet.b(), facet.c())) {
                bytes.putFloat((float) corner.getX())
                        .putFloat((float) corner.getY())
                        .putFloat((float) corner.getZ());
            }
            bytes.putShort((short) 0);
        }
        return bytes.array();
    }

    /** An OBJ file with a group for each face. */
    public static String obj(List<Face> faces) {
        StringBuilder text = new StringBuilder();
        Map<Vector3D, Integer> known = new HashMap<>();
        for (Face face : faces) {
            text.append("g ").append(face.name()).append('\n');
            for (Triangle facet : face.triangles()) {
                StringBuilder line = new StringBuilder("f");
                for (Vector3D corner : List.of(facet.a(), facet.b(), facet.c())) {
                    Integer number = known.get(corner);
                    if (number == null) {
                        number = known.size() + 1;
                        known.put(corner, number);
                        text.append("v ").append(line(corner));
                    }
                    line.append(' ').append(number);
                }
                text.append(line).append('\n');
            }
        }
        return text.toString();
    }

    private static String line(Vector3D corner) {
        return corner.getX() + " " + corner.getY() + " " + corner.getZ() + "\n";
    }
}
