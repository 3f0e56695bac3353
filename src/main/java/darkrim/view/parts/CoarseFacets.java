package darkrim.view.parts;

import darkrim.scene.Scene;
import darkrim.scene.Surface;
import darkrim.view.camera.Box;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * A surface of very many facets with fewer, to be shown while the camera moves: corners that lie in one cube of a grid become one of them, and
 * facets that lose a corner so go. What is coarse is never picked, measured or printed.
 */
public final class CoarseFacets {
    /** Stages of more facets than this are shown coarsely in a movement. */
    public static final int MANY = 100_000;
    /** Surfaces of at most this many facets stay as they are. */
    private static final int FEW = 2_000;
    /** Cubes along the diagonal of the box around all parts. */
    private static final int ALONG = 160;

    private final Scene scene;
    private final double side;

    /**
     * @param scene the scene
     * @param box the box around all parts
     */
    public CoarseFacets(Scene scene, Box box) {
        this.scene = scene;
        side = 2 * box.radius() / ALONG;
    }

    /** Whether a surface has a coarse form. */
    public boolean isCoarse(Surface surface) {
        return scene.facetCount() > MANY && surface.facetCount() > FEW && side > 0;
    }

    /** The corners of a facet that is left, by number, the least first. */
    private record Corners(int least, int middle, int most) {
        private static Corners of(int a, int b, int c) {
            int least = Math.min(a, Math.min(b, c));
            int most = Math.max(a, Math.max(b, c));
            return new Corners(least, a + b + c - least - most, most);
        }
    }

    /** The coarse form, each piece with the number of the facet that it comes from. */
    public Pieces of(Surface surface) {
        Map<Long, Integer> numbers = new HashMap<>();
        List<double[]> corners = new ArrayList<>();
        Set<Corners> known = new HashSet<>();
        Pieces pieces = new Pieces();
        for (int f = surface.firstFacet(); f < surface.firstFacet() + surface.facetCount(); f++) {
            int a = number(numbers, corners, f, 0);
            int b = number(numbers, corners, f, 1);
            int c = number(numbers, corners, f, 2);
            if (a != b && b != c && c != a && known.add(Corners.of(a, b, c))) {
                pieces.add(f, corners.get(a), corners.get(b), corners.get(c));
            }
        }
        return pieces;
    }

    private int number(Map<Long, Integer> numbers, List<double[]> corners, int facet, int corner) {
        double x = scene.corner(facet, corner, 0);
        double y = scene.corner(facet, corner, 1);
        double z = scene.corner(facet, corner, 2);
        long cube = (cell(x) << 42) | (cell(y) << 21) | cell(z);
        return numbers.computeIfAbsent(cube, empty -> {
            corners.add(new double[] {x, y, z});
            return corners.size() - 1;
        });
    }

    private long cell(double coordinate) {
        return (long) Math.floor(coordinate / side) & 0x1fffff;
    }
}
