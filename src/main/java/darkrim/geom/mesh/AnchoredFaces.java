package darkrim.geom.mesh;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/**
 * Finds the faces that names were given to: the one that comes nearest to the place of the name, among those that face that way there. A name
 * that finds no face, or two that are as near, finds nothing: a guess could put a requirement on the wrong face.
 */
public final class AnchoredFaces {
    /** cos 25 deg: a face turned farther than this is another one. */
    private static final double LEAST_COSINE = 0.906;
    /** Two faces are as near as each other if their distances differ by less than this share of what is allowed. */
    private static final double AS_NEAR = 0.02;

    private AnchoredFaces() {}

    /**
     * What a name found.
     *
     * @param anchor the name and its place
     * @param face number of the face; -1 where none or more than one was found
     * @param distance how far the face, or the nearest that faces that way, is from the place, mm; infinite if none faces that way
     * @param other number of another face that is as near, or has the name already; -1 if there is none
     */
    public record Match(FaceAnchor anchor, int face, double distance, int other) {}

    /**
     * Looks for every name.
     *
     * @param within farther faces are not taken, mm
     */
    public static List<Match> of(FacetMesh mesh, List<MeshFace> faces, List<FaceAnchor> anchors, double within) {
        List<Match> matches = new ArrayList<>();
        Map<Integer, Integer> taken = new HashMap<>();
        for (FaceAnchor anchor : anchors) {
            Match match = match(mesh, faces, anchor, within);
            Integer before = match.face() < 0 ? null : taken.putIfAbsent(match.face(), matches.size());
            matches.add(before == null ? match : new Match(anchor, -1, match.distance(), match.face()));
        }
        return matches;
    }

    private static Match match(FacetMesh mesh, List<MeshFace> faces, FaceAnchor anchor, double within) {
        double best = Double.POSITIVE_INFINITY;
        double second = Double.POSITIVE_INFINITY;
        int bestFace = -1;
        int secondFace = -1;
        for (int i = 0; i < faces.size(); i++) {
            // Beyond the second best nothing matters.
            if (boxDistance(faces.get(i), anchor.at()) <= second) {
                double distance = distance(mesh, faces.get(i), anchor, second);
                if (distance < best) {
                    second = best;
                    secondFace = bestFace;
                    best = distance;
                    bestFace = i;
                } else if (distance < second) {
                    second = distance;
                    secondFace = i;
                }
            }
        }
        if (!(best <= within)) {
            return new Match(anchor, -1, best, -1);
        }
        boolean unclear = second - best < AS_NEAR * within;
        return new Match(anchor, unclear ? -1 : bestFace, best, unclear ? secondFace : -1);
    }

    private static double boxDistance(MeshFace face, Vector3D p) {
        double[] low = face.size().low().toArray();
        double[] high = face.size().high().toArray();
        double[] at = p.toArray();
        double squared = 0;
        for (int k = 0; k < 3; k++) {
            double beyond = Math.max(0, Math.max(low[k] - at[k], at[k] - high[k]));
            squared += beyond * beyond;
        }
        return Math.sqrt(squared);
    }

    private static double distance(FacetMesh mesh, MeshFace face, FaceAnchor anchor, double most) {
        double least = Double.POSITIVE_INFINITY;
        Vector3D facing = anchor.facing().normalize();
        for (int f : face.facets()) {
            Vector3D normal = mesh.doubledNormal(f);
            if (normal.dot(facing) >= LEAST_COSINE * normal.norm()) {
                least = Math.min(
                        least, PointToTriangle.distance(anchor.at(), mesh.at(f, 0), mesh.at(f, 1), mesh.at(f, 2)));
            }
        }
        return least <= most ? least : Double.POSITIVE_INFINITY;
    }
}
