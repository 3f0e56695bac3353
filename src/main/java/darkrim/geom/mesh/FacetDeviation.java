package darkrim.geom.mesh;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/**
 * How far the facets of a mesh lie from the surface that they stand for, measured by a finer mesh of the same surface: the corners of the
 * finer one lie on the surface, wherever its facets run. Faces are told apart by the names of groups, so that a point of one face is never
 * measured to another.
 */
public final class FacetDeviation {
    private FacetDeviation() {}

    /**
     * The greatest distance of a corner of the finer mesh from the coarser mesh, mm; infinite where a face that is not flat has no more
     * facets in the finer one, so that nothing is measured; empty if they do not have the same groups.
     *
     * @param coarse the mesh to measure
     * @param fine a finer mesh of the same surfaces
     * @param flat a face within so much of a plane is flat, mm
     */
    public static OptionalDouble of(FacetMesh coarse, FacetMesh fine, double flat) {
        Map<String, int[]> faces = facets(coarse);
        Map<String, int[]> finer = facets(fine);
        if (!faces.keySet().equals(finer.keySet())) {
            return OptionalDouble.empty();
        }
        double greatest = 0;
        int[] seenBy = new int[fine.pointCount()];
        int number = 0;
        for (Map.Entry<String, int[]> face : finer.entrySet()) {
            if (face.getValue().length <= faces.get(face.getKey()).length && thickness(fine, face.getValue()) > flat) {
                return OptionalDouble.of(Double.POSITIVE_INFINITY);
            }
            NearestFacet nearest = new NearestFacet(coarse, faces.get(face.getKey()));
            number++;
            for (int facet : face.getValue()) {
                for (int k = 0; k < 3; k++) {
                    int point = fine.corner(facet, k);
                    if (seenBy[point] != number) {
                        seenBy[point] = number;
                        greatest = Math.max(greatest, nearest.distance(fine.point(point)));
                    }
                }
            }
        }
        return OptionalDouble.of(greatest);
    }

    /** Greatest distance of a corner from the plane of the largest of some facets, mm. */
    private static double thickness(FacetMesh mesh, int[] facets) {
        int largest = facets[0];
        for (int facet : facets) {
            largest = mesh.doubledNormal(facet).norm()
                            > mesh.doubledNormal(largest).norm()
                    ? facet
                    : largest;
        }
        Vector3D normal = mesh.doubledNormal(largest).normalize();
        double greatest = 0;
        for (int facet : facets) {
            for (int k = 0; k < 3; k++) {
                greatest = Math.max(
                        greatest,
                        Math.abs(mesh.at(facet, k).subtract(mesh.at(largest, 0)).dot(normal)));
            }
        }
        return greatest;
    }

    /** Facets with an area, by name of the group. */
    private static Map<String, int[]> facets(FacetMesh mesh) {
        Map<String, List<Integer>> byName = new LinkedHashMap<>();
        for (int facet = 0; facet < mesh.facetCount(); facet++) {
            if (mesh.doubledNormal(facet).norm() > 0) {
                byName.computeIfAbsent(mesh.groups().get(mesh.groupOf(facet)).name(), name -> new ArrayList<>())
                        .add(facet);
            }
        }
        Map<String, int[]> facets = new LinkedHashMap<>();
        byName.forEach((name, list) ->
                facets.put(name, list.stream().mapToInt(Integer::intValue).toArray()));
        return facets;
    }
}
