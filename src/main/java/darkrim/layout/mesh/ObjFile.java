package darkrim.layout.mesh;

import darkrim.geom.mesh.FacetMesh;
import java.io.Reader;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.apache.commons.geometry.io.euclidean.threed.obj.PolygonObjParser;

/**
 * An OBJ file: points, flat polygons, groups ({@code g}, {@code o}) and materials ({@code usemtl}). Normals, textures, lines, curves and
 * material libraries are passed over.
 */
final class ObjFile {
    /** A polygon with more corners is not a facet that a program wrote. */
    private static final int MOST_CORNERS = 10_000;

    private double[] points = new double[3 * 1024];
    private int pointCount;
    private final FacetMeshBuilder mesh = new FacetMeshBuilder();
    private final int mostFacets;
    private String object = "";
    private String group = "";
    private String material = "";

    /** The parser that also tells where it is. */
    private static final class Lines extends PolygonObjParser {
        Lines(Reader source) {
            super(source);
        }

        int line() {
            return getTextParser().getLineNumber();
        }
    }

    private ObjFile(int mostFacets) {
        this.mostFacets = mostFacets;
    }

    static FacetMesh read(Reader source, int mostFacets) throws MeshFault {
        ObjFile file = new ObjFile(mostFacets);
        try {
            Lines parser = new Lines(source);
            while (parser.nextKeyword()) {
                file.take(parser);
            }
        } catch (IllegalStateException problem) {
            throw ParserMessage.fault(problem, 0);
        }
        if (file.mesh.facetCount() == 0) {
            throw new MeshFault("mesh-form", 1, 1, "the file has no faces, expected lines that begin with f");
        }
        return file.mesh.build();
    }

    private void take(Lines parser) throws MeshFault {
        switch (parser.getCurrentKeyword()) {
            case "v" -> point(parser.readVector(), parser.line());
            case "f" -> {
                int line = parser.line();
                face(
                        parser.readFace().getVertexAttributes().stream()
                                .mapToInt(PolygonObjParser.VertexAttributes::getVertexIndex)
                                .toArray(),
                        line);
            }
            case "o" -> {
                object = GroupName.of(text(parser));
                group = "";
                regroup();
            }
            case "g" -> {
                String name = GroupName.of(text(parser));
                group = name.equals("default") || name.equals("off") ? "" : name;
                regroup();
            }
            case "usemtl" -> {
                material = GroupName.of(text(parser));
                regroup();
            }
            default -> parser.discardDataLine();
        }
    }

    private static String text(Lines parser) {
        String line = parser.readDataLine();
        return line == null ? "" : line;
    }

    private void regroup() {
        mesh.group(new FacetMesh.Group(group.isEmpty() ? object : group, material));
    }

    private void point(Vector3D at, int line) throws MeshFault {
        if (!at.isFinite()) {
            throw new MeshFault("mesh-value", line, 1, "this point is not finite, expected numbers");
        }
        if (pointCount == 3 * mostFacets) {
            throw new MeshFault(
                    "mesh-too-large", line, 1, "the file has more than " + 3 * mostFacets + " points, expected fewer");
        }
        if (3 * pointCount == points.length) {
            points = Arrays.copyOf(points, 2 * points.length);
        }
        points[3 * pointCount] = at.getX();
        points[3 * pointCount + 1] = at.getY();
        points[3 * pointCount + 2] = at.getZ();
        pointCount++;
    }

    private void face(int[] corners, int line) throws MeshFault {
        if (mesh.facetCount() + corners.length - 2 > mostFacets) {
            throw new MeshFault(
                    "mesh-too-large", line, 1, "the file has more than " + mostFacets + " facets, expected fewer");
        }
        if (corners.length > MOST_CORNERS) {
            throw new MeshFault(
                    "mesh-form",
                    line,
                    1,
                    "a face has " + corners.length + " corners, expected at most " + MOST_CORNERS);
        }
        int[] own = new int[corners.length];
        List<Vector3D> places = new ArrayList<>();
        for (int i = 0; i < corners.length; i++) {
            int at = 3 * corners[i];
            places.add(Vector3D.of(points[at], points[at + 1], points[at + 2]));
            own[i] = mesh.point(points[at], points[at + 1], points[at + 2]);
        }
        try {
            for (int[] triangle : FlatPolygon.triangles(places)) {
                mesh.facet(own[triangle[0]], own[triangle[1]], own[triangle[2]]);
            }
        } catch (IllegalArgumentException problem) {
            throw new MeshFault(
                    "mesh-form",
                    line,
                    1,
                    "this face cannot be split into triangles: " + problem.getMessage()
                            + ", expected a flat face with corners in order");
        }
    }
}
