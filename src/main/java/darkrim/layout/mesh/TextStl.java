package darkrim.layout.mesh;

import darkrim.geom.mesh.FacetMesh;
import java.io.BufferedReader;
import java.io.IOException;
import java.util.List;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.apache.commons.geometry.io.euclidean.threed.FacetDefinition;
import org.apache.commons.geometry.io.euclidean.threed.stl.TextStlFacetDefinitionReader;

/** A text STL file, of one solid or several; the name of a solid becomes the name of its group where there are several. */
final class TextStl {
    private TextStl() {}

    static FacetMesh read(BufferedReader source, int mostFacets) throws IOException, MeshFault {
        FacetMeshBuilder mesh = new FacetMeshBuilder();
        SolidLines lines = new SolidLines(source);
        int solids = 0;
        while (lines.next()) {
            int before = lines.line() - 1;
            solids++;
            try {
                // Not closed: that would close the file under the next solid.
                TextStlFacetDefinitionReader reader = new TextStlFacetDefinitionReader(lines);
                FacetDefinition facet = reader.readFacet();
                String name = reader.getSolidName();
                mesh.group(new FacetMesh.Group(GroupName.of(name == null ? "" : name), ""));
                for (; facet != null; facet = reader.readFacet()) {
                    add(mesh, facet.getVertices(), lines.line(), mostFacets);
                }
            } catch (IllegalStateException problem) {
                throw ParserMessage.fault(problem, before);
            }
        }
        if (solids == 0) {
            throw new MeshFault("mesh-form", 1, 1, "the file is empty, expected a solid");
        }
        // The name of an only solid is that of the program or the file, and would change with it.
        return solids == 1 ? mesh.build().nameless() : mesh.build();
    }

    private static void add(FacetMeshBuilder mesh, List<Vector3D> corners, int line, int mostFacets) throws MeshFault {
        if (corners.size() != 3) {
            throw new MeshFault(
                    "mesh-form", line, 1, "a facet has " + corners.size() + " corners, expected a triangle");
        }
        int[] points = new int[3];
        for (int k = 0; k < 3; k++) {
            Vector3D corner = corners.get(k);
            if (!corner.isFinite()) {
                throw new MeshFault("mesh-value", line, 1, "a corner of this facet is not finite, expected numbers");
            }
            points[k] = mesh.point(corner.getX(), corner.getY(), corner.getZ());
        }
        if (mesh.facetCount() == mostFacets) {
            throw new MeshFault(
                    "mesh-too-large", line, 1, "the file has more than " + mostFacets + " facets, expected fewer");
        }
        mesh.facet(points[0], points[1], points[2]);
    }
}
