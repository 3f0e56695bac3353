package darkrim.view.parts;

import darkrim.scene.Scene;
import darkrim.scene.Surface;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** The edges that show the shape of parts: where a surface ends, and where it is bent sharply. */
public final class FeatureEdges {
    /** Facets that meet at less than this are taken for one round face: cosine of 25 deg. */
    private static final double SHARP = 0.9063077870366499;

    private FeatureEdges() {}

    /**
     * The edges of every surface.
     *
     * @return by number of the surface six coordinates an edge, mm; a back has the edges of its front
     */
    public static List<double[]> of(Scene scene) {
        double[] corners = scene.copyCorners();
        CornerNumbers numbers = new CornerNumbers(corners);
        List<double[]> found = new ArrayList<>();
        for (Surface surface : scene.surfaces()) {
            found.add(
                    surface.back() && !found.isEmpty() && sharesFacets(scene, surface)
                            ? found.get(found.size() - 1)
                            : edges(scene, surface, corners, numbers));
        }
        return found;
    }

    private static boolean sharesFacets(Scene scene, Surface back) {
        return scene.surfaces().get(back.index() - 1).firstFacet() == back.firstFacet();
    }

    private static double[] edges(Scene scene, Surface surface, double[] corners, CornerNumbers numbers) {
        Map<Long, int[]> sides = new HashMap<>(4 * surface.facetCount());
        for (int f = surface.firstFacet(); f < surface.firstFacet() + surface.facetCount(); f++) {
            for (int k = 0; k < 3; k++) {
                int from = 3 * f + k;
                int to = 3 * f + (k + 1) % 3;
                long a = Math.min(numbers.of(from), numbers.of(to));
                long b = Math.max(numbers.of(from), numbers.of(to));
                int[] known = sides.putIfAbsent(a << 32 | b, new int[] {from, to, f, -1});
                if (known != null) {
                    known[3] = f;
                }
            }
        }
        List<int[]> kept = sides.values().stream()
                .filter(side -> side[3] < 0 || isSharp(scene, side[2], side[3]))
                .sorted((left, right) -> Integer.compare(left[0], right[0]))
                .toList();
        double[] edges = new double[6 * kept.size()];
        for (int i = 0; i < kept.size(); i++) {
            System.arraycopy(corners, 3 * kept.get(i)[0], edges, 6 * i, 3);
            System.arraycopy(corners, 3 * kept.get(i)[1], edges, 6 * i + 3, 3);
        }
        return edges;
    }

    private static boolean isSharp(Scene scene, int f, int g) {
        double cosine = 0;
        for (int axis = 0; axis < 3; axis++) {
            cosine += scene.normal(f, axis) * scene.normal(g, axis);
        }
        return cosine < SHARP;
    }
}
