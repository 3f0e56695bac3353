package darkrim.assembly;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/** What every body must satisfy, whatever it is. Each law is checked from the facets alone. */
final class MeshLaws {
    private MeshLaws() {}

    private record Edge(Vector3D from, Vector3D to) {}

    /** Closed and conformal, no facet without area, normals out of the material. */
    static void holdForSolid(Body body) {
        assertThat(body.solid()).as(body.name()).isTrue();
        List<Triangle> facets = body.triangles().toList();
        everyFacetHasArea(body.name(), facets);
        edgesPairUp(body.name(), facets);
        assertThat(body.volume()).as("volume of " + body.name()).isPositive();
        normalsPointOut(body.name(), facets);
    }

    static void holdForSheet(Body body) {
        assertThat(body.solid()).as(body.name()).isFalse();
        List<Triangle> facets = body.triangles().toList();
        everyFacetHasArea(body.name(), facets);
        assertThat(usedOtherThanOnce(uses(facets))).as(body.name()).isEmpty();
    }

    static void hold(Body body) {
        if (body.solid()) {
            holdForSolid(body);
        } else {
            holdForSheet(body);
        }
    }

    private static void everyFacetHasArea(String name, List<Triangle> facets) {
        assertThat(facets).as(name).isNotEmpty();
        for (Triangle facet : facets) {
            // A facet thinner than 1e-9 mm would be rounding, not drawing.
            double longest = Math.max(
                    facet.a().distance(facet.b()),
                    Math.max(facet.b().distance(facet.c()), facet.c().distance(facet.a())));
            if (!(2 * facet.area() / longest > 1e-9)) {
                throw new AssertionError(name + " has a facet without area: " + facet);
            }
        }
    }

    /** Every directed edge is used once and its opposite once: corners equal bit for bit, since equality of vectors compares bits. */
    private static void edgesPairUp(String name, List<Triangle> facets) {
        Map<Edge, Integer> uses = uses(facets);
        assertThat(usedOtherThanOnce(uses)).as(name).isEmpty();
        assertThat(uses.keySet().stream().filter(edge -> !uses.containsKey(new Edge(edge.to(), edge.from()))))
                .as(name + ": edges with one facet only")
                .isEmpty();
    }

    private static List<Edge> usedOtherThanOnce(Map<Edge, Integer> uses) {
        return uses.entrySet().stream()
                .filter(use -> use.getValue() != 1)
                .map(Map.Entry::getKey)
                .toList();
    }

    private static Map<Edge, Integer> uses(List<Triangle> facets) {
        Map<Edge, Integer> uses = new HashMap<>();
        for (Triangle facet : facets) {
            uses.merge(new Edge(facet.a(), facet.b()), 1, Integer::sum);
            uses.merge(new Edge(facet.b(), facet.c()), 1, Integer::sum);
            uses.merge(new Edge(facet.c(), facet.a()), 1, Integer::sum);
        }
        return uses;
    }

    /** Just outside a facet the winding number is 0, just inside 1, on up to 60 facets spread over the body. */
    private static void normalsPointOut(String name, List<Triangle> facets) {
        int stride = Math.max(1, facets.size() / 60);
        for (int i = 0; i < facets.size(); i += stride) {
            Triangle facet = facets.get(i);
            Vector3D middle = facet.a().add(facet.b()).add(facet.c()).multiply(1.0 / 3);
            // Small against the facet's own thickness, so that no other facet of the body lies between.
            double step = 1e-3 * thickness(facet);
            Vector3D normal = facet.doubledNormal().normalize().multiply(step);
            assertThat(windingNumber(middle.add(normal), facets))
                    .as(name + " outside " + facet)
                    .isBetween(-0.01, 0.01);
            assertThat(windingNumber(middle.subtract(normal), facets))
                    .as(name + " inside " + facet)
                    .isBetween(0.99, 1.01);
        }
    }

    private static double thickness(Triangle facet) {
        double longest = Math.max(
                facet.a().distance(facet.b()),
                Math.max(facet.b().distance(facet.c()), facet.c().distance(facet.a())));
        return 2 * facet.area() / longest;
    }

    /** Sum of signed solid angles over 4 pi; van Oosterom and Strackee, IEEE Trans. Biomed. Eng. 30, 1983. */
    static double windingNumber(Vector3D point, List<Triangle> facets) {
        double sum = 0;
        for (Triangle facet : facets) {
            Vector3D a = facet.a().subtract(point);
            Vector3D b = facet.b().subtract(point);
            Vector3D c = facet.c().subtract(point);
            double la = a.norm();
            double lb = b.norm();
            double lc = c.norm();
            double below = la * lb * lc + a.dot(b) * lc + b.dot(c) * la + c.dot(a) * lb;
            sum += 2 * Math.atan2(a.dot(b.cross(c)), below);
        }
        return sum / (4 * Math.PI);
    }
}
