package darkrim.geom.mesh;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/** Measures the faces of a mesh. */
final class FaceMeasure {
    /** A face whose facets face this share of its area in one direction has a direction. */
    private static final double DIRECTED = 0.05;
    /** How far a flat face may leave its plane, as a share of its reach. */
    private static final double FLATNESS = 1e-3;

    private FaceMeasure() {}

    /** The faces, without names. */
    static List<MeshFace> of(FacetMesh mesh, int[] faceOf) {
        int count = 0;
        for (int face : faceOf) {
            count = Math.max(count, face + 1);
        }
        int[] sizes = new int[count];
        for (int face : faceOf) {
            sizes[face]++;
        }
        int[][] facets = new int[count][];
        for (int i = 0; i < count; i++) {
            facets[i] = new int[sizes[i]];
        }
        for (int f = faceOf.length - 1; f >= 0; f--) {
            facets[faceOf[f]][--sizes[faceOf[f]]] = f;
        }
        List<MeshFace> faces = new ArrayList<>();
        for (int[] own : facets) {
            faces.add(face(mesh, own));
        }
        return faces;
    }

    private static MeshFace face(FacetMesh mesh, int[] facets) {
        double area = 0;
        Vector3D moment = Vector3D.ZERO;
        Vector3D sum = Vector3D.ZERO;
        int largest = facets[0];
        double largestArea = -1;
        double[] box = new double[6];
        for (int k = 0; k < 6; k++) {
            box[k] = k < 3 ? Double.POSITIVE_INFINITY : Double.NEGATIVE_INFINITY;
        }
        for (int f : facets) {
            Vector3D normal = mesh.doubledNormal(f);
            double own = normal.norm() / 2;
            area += own;
            sum = sum.add(normal.multiply(0.5));
            moment = moment.add(FlawList.middle(mesh, f).multiply(own));
            // Of facets alike to rounding the first is taken, so that the choice does not hang on last digits.
            if (own > largestArea * (1 + 1e-6)) {
                largestArea = own;
                largest = f;
            }
            for (int i = 0; i < 9; i++) {
                double coordinate = mesh.coordinate(mesh.corner(f, i / 3), i % 3);
                box[i % 3] = Math.min(box[i % 3], coordinate);
                box[3 + i % 3] = Math.max(box[3 + i % 3], coordinate);
            }
        }
        Vector3D centre = moment.multiply(1 / area);
        Optional<Vector3D> normal = sum.norm() > DIRECTED * area ? Optional.of(sum.normalize()) : Optional.empty();
        Vector3D low = Vector3D.of(box[0], box[1], box[2]);
        Vector3D high = Vector3D.of(box[3], box[4], box[5]);
        boolean flat = normal.isPresent() && isFlat(mesh, facets, centre, normal.get(), high.distance(low));
        return new MeshFace(
                "",
                mesh.groups().get(mesh.groupOf(facets[0])),
                facets,
                new MeshFace.Size(
                        area,
                        centre,
                        normal,
                        flat,
                        low,
                        high,
                        FlawList.middle(mesh, largest),
                        mesh.doubledNormal(largest).normalize()));
    }

    private static boolean isFlat(FacetMesh mesh, int[] facets, Vector3D centre, Vector3D normal, double reach) {
        for (int f : facets) {
            for (int k = 0; k < 3; k++) {
                if (Math.abs(normal.dot(mesh.at(f, k).subtract(centre))) > FLATNESS * reach) {
                    return false;
                }
            }
        }
        return true;
    }
}
