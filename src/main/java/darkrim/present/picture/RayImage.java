package darkrim.present.picture;

import darkrim.scene.Scene;
import darkrim.trace.FacetTree;
import darkrim.verdict.Workers;
import java.util.stream.IntStream;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/**
 * Parts as seen by lines of sight through the ray core, several for each pixel; edges are drawn where neighbours see different faces. Rows are
 * worked out by any thread with the same result. Immutable.
 */
final class RayImage {
    /** Rows of pixels that one task works out. */
    private static final int BAND = 8;

    private final int width;
    private final int height;
    private final int perPixel;
    private final int[] argb;
    /** The surface that each line of sight met. */
    private final int[] surfaces;

    private RayImage(int width, int height, int perPixel) {
        this.width = width;
        this.height = height;
        this.perPixel = perPixel;
        argb = new int[width * height];
        surfaces = new int[width * perPixel * height * perPixel];
    }

    /**
     * Looks at a subject.
     *
     * @param width width, pixels
     * @param height height, pixels
     * @param perPixel lines of sight along each side of a pixel
     * @param threads number of threads; never changes the picture
     */
    static RayImage of(Subject subject, Sight sight, int width, int height, int perPixel, int threads) {
        int[] facets = subject.facets();
        double reach = reach(subject, sight);
        FacetTree tree = tree(subject.scene(), facets, reach);
        return of(subject, sight, new RayImage(width, height, perPixel), facets, tree, reach, threads);
    }

    /**
     * Looks at all of a scene from within it.
     *
     * @param subject a subject that shows every surface, without a section
     * @param tree the tree over all facets of its scene
     * @param size width and height, pixels
     */
    static RayImage within(Subject subject, Sight sight, FacetTree tree, int size, int perPixel, int threads) {
        int[] facets = IntStream.range(0, subject.scene().facetCount()).toArray();
        return of(subject, sight, new RayImage(size, size, perPixel), facets, tree, 0, threads);
    }

    private static RayImage of(
            Subject subject, Sight sight, RayImage image, int[] facets, FacetTree tree, double reach, int threads) {
        Scene scene = subject.scene();
        int height = image.height();
        try (Workers workers = new Workers(threads)) {
            workers.all(IntStream.range(0, (height + BAND - 1) / BAND).mapToObj(band -> () -> {
                Glance glance =
                        new Glance(scene, tree, facets, reach, subject.section().orElse(null));
                int first = band * BAND;
                new RayBand(subject, sight, glance, image, first, Math.min(height, first + BAND)).paint();
                return band;
            }));
        }
        return image;
    }

    private static FacetTree tree(Scene scene, int[] facets, double reach) {
        double[] corners = new double[9 * facets.length];
        int[] planes = new int[facets.length];
        for (int i = 0; i < facets.length; i++) {
            for (int k = 0; k < 9; k++) {
                corners[9 * i + k] = scene.corner(facets[i], k / 3, k % 3);
            }
            planes[i] = scene.plane(facets[i]);
        }
        return FacetTree.build(corners, planes, scene.bound() + 2 * reach);
    }

    /** All parts lie within this distance of any start of a line of sight. */
    private static double reach(Subject subject, Sight sight) {
        SightLine line = new SightLine();
        Vector3D start = sight.line(0, 0, line) ? Vector3D.of(line.x, line.y, line.z) : Vector3D.ZERO;
        double farthest = subject.corners().stream()
                .mapToDouble(corner -> corner.distance(start))
                .max()
                .orElse(1);
        return 4 * farthest;
    }

    int width() {
        return width;
    }

    int height() {
        return height;
    }

    int perPixel() {
        return perPixel;
    }

    /** Colour of a pixel, as {@code 0xffrrggbb}; row 0 is the top. */
    int argb(int column, int row) {
        return argb[column + width * row];
    }

    void put(int column, int row, int colour) {
        argb[column + width * row] = colour;
    }

    /** The surface that a line of sight met, or one of the marks of {@link Glance}; counted in lines, from the top left. */
    int surface(int column, int row) {
        return surfaces[column + width * perPixel * row];
    }

    void put(int column, int row, int perRow, int surface) {
        surfaces[column + perRow * row] = surface;
    }
}
