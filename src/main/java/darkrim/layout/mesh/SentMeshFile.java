package darkrim.layout.mesh;

import darkrim.geom.mesh.FacetMesh;
import java.io.Serializable;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** A mesh file as it travels to another machine: the facets know nothing of streams. */
final class SentMeshFile implements Serializable {
    private static final long serialVersionUID = 1L;

    private final String name;
    private final String sha256;
    private final boolean outside;
    /** Null for a file that has facets. */
    private final Meshing meshing;

    private final double[] points;
    private final int[] corners;
    private final int[] groupOf;
    /** Name and material of each group, one after the other. */
    private final String[] groups;

    SentMeshFile(MeshFile file) {
        FacetMesh mesh = file.mesh();
        name = file.name();
        sha256 = file.sha256();
        outside = file.outside();
        meshing = file.meshing().orElse(null);
        points = new double[3 * mesh.pointCount()];
        for (int i = 0; i < points.length; i++) {
            points[i] = mesh.coordinate(i / 3, i % 3);
        }
        corners = new int[3 * mesh.facetCount()];
        for (int i = 0; i < corners.length; i++) {
            corners[i] = mesh.corner(i / 3, i % 3);
        }
        groupOf = new int[mesh.facetCount()];
        for (int f = 0; f < groupOf.length; f++) {
            groupOf[f] = mesh.groupOf(f);
        }
        groups = mesh.groups().stream()
                .flatMap(group -> List.of(group.name(), group.material()).stream())
                .toArray(String[]::new);
    }

    private Object readResolve() {
        List<FacetMesh.Group> whole = new ArrayList<>();
        for (int i = 0; i < groups.length; i += 2) {
            whole.add(new FacetMesh.Group(groups[i], groups[i + 1]));
        }
        return new MeshFile(
                name, sha256, outside, FacetMesh.of(points, corners, groupOf, whole), Optional.ofNullable(meshing));
    }
}
