package darkrim.study.clearance;

import darkrim.assembly.Body;
import darkrim.assembly.Triangle;
import darkrim.geom.UnionFind;
import darkrim.scene.Surface;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/**
 * Whether a piece of one side lies wholly inside a solid of the other. For sides of which no facets meet: then one corner of a connected piece
 * tells it of the whole piece, by how often the solid goes around it.
 */
final class Nesting {
    private Nesting() {}

    /**
     * A piece inside a solid.
     *
     * @param surface the surface of the piece
     * @param solid name of a face of the solid
     * @param at a corner of the piece, mm
     */
    record Found(Surface surface, String solid, Vector3D at) {}

    /**
     * Looks for pieces inside the solids that the other side belongs to.
     *
     * @param parts the parts
     * @param pieces the surfaces whose pieces are looked for
     * @param others surfaces of the solids
     */
    static Optional<Found> of(ShapedParts parts, List<Surface> pieces, List<Surface> others) {
        Set<String> names = new LinkedHashSet<>();
        others.forEach(surface -> names.add(surface.name()));
        List<Body> solids = parts.assembly().bodies().stream()
                .filter(Body::solid)
                .filter(body -> body.faces().stream().anyMatch(face -> names.contains(face.name())))
                .toList();
        Map<Vector3D, Surface> corners = cornerOfEachPiece(parts, pieces);
        for (Body solid : solids) {
            List<Triangle> facets = solid.triangles().toList();
            double[] box = box(facets);
            for (Map.Entry<Vector3D, Surface> corner : corners.entrySet()) {
                if (isIn(box, corner.getKey()) && winding(facets, corner.getKey()) > 0.5) {
                    String face = solid.faces().stream()
                            .map(each -> each.name())
                            .filter(names::contains)
                            .findFirst()
                            .orElseThrow();
                    return Optional.of(new Found(corner.getValue(), face, corner.getKey()));
                }
            }
        }
        return Optional.empty();
    }

    private static Map<Vector3D, Surface> cornerOfEachPiece(ShapedParts parts, List<Surface> surfaces) {
        Map<Vector3D, Integer> numbers = new HashMap<>();
        List<Vector3D> points = new ArrayList<>();
        List<Surface> surfaceOf = new ArrayList<>();
        List<int[]> facets = new ArrayList<>();
        for (Surface surface : surfaces) {
            for (int f = surface.firstFacet(); f < surface.firstFacet() + surface.facetCount(); f++) {
                int[] facet = new int[3];
                for (int k = 0; k < 3; k++) {
                    Vector3D corner = parts.scene().corner(f, k);
                    Integer known = numbers.putIfAbsent(corner, points.size());
                    if (known == null) {
                        points.add(corner);
                        surfaceOf.add(surface);
                    }
                    facet[k] = numbers.get(corner);
                }
                facets.add(facet);
            }
        }
        UnionFind joined = new UnionFind(points.size());
        for (int[] facet : facets) {
            joined.join(facet[0], facet[1]);
            joined.join(facet[0], facet[2]);
        }
        Map<Vector3D, Surface> corners = new LinkedHashMap<>();
        for (int i = 0; i < points.size(); i++) {
            if (joined.find(i) == i) {
                corners.put(points.get(i), surfaceOf.get(i));
            }
        }
        return corners;
    }

    private static double[] box(List<Triangle> facets) {
        double[] box = new double[6];
        for (int k = 0; k < 6; k++) {
            box[k] = k < 3 ? Double.POSITIVE_INFINITY : Double.NEGATIVE_INFINITY;
        }
        for (Triangle facet : facets) {
            for (Vector3D corner : List.of(facet.a(), facet.b(), facet.c())) {
                double[] at = corner.toArray();
                for (int k = 0; k < 3; k++) {
                    box[k] = Math.min(box[k], at[k]);
                    box[3 + k] = Math.max(box[3 + k], at[k]);
                }
            }
        }
        return box;
    }

    private static boolean isIn(double[] box, Vector3D point) {
        double[] at = point.toArray();
        boolean within = true;
        for (int k = 0; k < 3; k++) {
            within &= at[k] > box[k] && at[k] < box[3 + k];
        }
        return within;
    }

    /**
     * The sum of the solid angles of the facets over 4 pi: 1 inside, 0 outside (Van Oosterom and Strackee, The Solid Angle of a Plane Triangle,
     * IEEE Trans. Biomed. Eng. 30(2), 1983).
     */
    private static double winding(List<Triangle> facets, Vector3D point) {
        double sum = 0;
        for (Triangle facet : facets) {
            Vector3D a = facet.a().subtract(point);
            Vector3D b = facet.b().subtract(point);
            Vector3D c = facet.c().subtract(point);
            double la = a.norm();
            double lb = b.norm();
            double lc = c.norm();
            double below = la * lb * lc + a.dot(b) * lc + b.dot(c) * la + c.dot(a) * lb;
            sum += StrictMath.atan2(a.dot(b.cross(c)), below);
        }
        return sum / (2 * Math.PI);
    }
}
