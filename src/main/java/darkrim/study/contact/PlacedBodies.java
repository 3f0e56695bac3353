package darkrim.study.contact;

import darkrim.assembly.Assembly;
import darkrim.assembly.Body;
import darkrim.assembly.Face;
import darkrim.assembly.PartName;
import darkrim.scene.Scene;
import darkrim.scene.Surface;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/** Which facet of a scene belongs to which body, and where each body stands. Immutable. */
final class PlacedBodies {
    private final List<Body> bodies;
    private final int[] bodyOfFacet;
    private final String[] copyOfBody;
    /** Six bounds a body: least x, y, z, greatest x, y, z, mm. */
    private final double[] boxes;

    PlacedBodies(Assembly assembly, Scene scene) {
        bodies = assembly.bodies();
        Map<String, Integer> bodyOfFace = new HashMap<>();
        copyOfBody = new String[bodies.size()];
        for (int b = 0; b < bodies.size(); b++) {
            copyOfBody[b] = PartName.ofCopy(bodies.get(b).name());
            for (Face face : bodies.get(b).faces()) {
                bodyOfFace.put(face.name(), b);
            }
        }
        bodyOfFacet = new int[scene.facetCount()];
        boxes = new double[6 * bodies.size()];
        for (int i = 0; i < boxes.length; i++) {
            boxes[i] = i % 6 < 3 ? Double.POSITIVE_INFINITY : Double.NEGATIVE_INFINITY;
        }
        for (Surface surface : scene.surfaces()) {
            if (!surface.back()) {
                int body = bodyOfFace.get(surface.name());
                int first = surface.firstFacet();
                Arrays.fill(bodyOfFacet, first, first + surface.facetCount(), body);
                for (int f = first; f < first + surface.facetCount(); f++) {
                    widen(boxes, 6 * body, scene, f);
                }
            }
        }
    }

    private static void widen(double[] box, int at, Scene scene, int f) {
        for (int i = 0; i < 9; i++) {
            double coordinate = scene.corner(f, i / 3, i % 3);
            box[at + i % 3] = Math.min(box[at + i % 3], coordinate);
            box[at + 3 + i % 3] = Math.max(box[at + 3 + i % 3], coordinate);
        }
    }

    int count() {
        return bodies.size();
    }

    Body body(int number) {
        return bodies.get(number);
    }

    /** The body that a facet belongs to. */
    int of(int facet) {
        return bodyOfFacet[facet];
    }

    /** Whether two bodies belong to the same part, and to the same copy of it: these are made to fit. */
    boolean belongTogether(int one, int other) {
        return copyOfBody[one].equals(copyOfBody[other]);
    }

    /** Name of the part of a body, without the number of a copy. */
    String part(int body) {
        return PartName.of(copyOfBody[body]);
    }

    /** Least ({@code k} from 0 to 2) or greatest (3 to 5) coordinate of a body, mm. */
    double bound(int body, int k) {
        return boxes[6 * body + k];
    }

    /** The box that two bodies share, drawn in by a margin on all sides, as six bounds; null if there is none. */
    double[] sharedBox(int one, int other, double margin) {
        double[] box = new double[6];
        for (int k = 0; k < 3; k++) {
            box[k] = Math.max(bound(one, k), bound(other, k)) + margin;
            box[k + 3] = Math.min(bound(one, k + 3), bound(other, k + 3)) - margin;
            if (!(box[k] < box[k + 3])) {
                return null;
            }
        }
        return box;
    }

    /** Whether a point lies in the box of a body. */
    boolean inBox(int body, Vector3D p) {
        return p.getX() >= bound(body, 0)
                && p.getX() <= bound(body, 3)
                && p.getY() >= bound(body, 1)
                && p.getY() <= bound(body, 4)
                && p.getZ() >= bound(body, 2)
                && p.getZ() <= bound(body, 5);
    }

    /** The box about a facet, grown by a margin: three least, three greatest coordinates, mm. */
    static double[][] boxOf(Scene scene, int facet, double margin) {
        double[] box = new double[6];
        Arrays.fill(box, 0, 3, Double.POSITIVE_INFINITY);
        Arrays.fill(box, 3, 6, Double.NEGATIVE_INFINITY);
        widen(box, 0, scene, facet);
        return new double[][] {
            {box[0] - margin, box[1] - margin, box[2] - margin}, {box[3] + margin, box[4] + margin, box[5] + margin}
        };
    }
}
