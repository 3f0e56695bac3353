package darkrim.present.picture;

import darkrim.scene.Scene;
import darkrim.study.SurfacePoint;
import darkrim.study.SurfaceRectangle;
import darkrim.trace.FacetTree;
import java.awt.Graphics2D;
import java.awt.Rectangle;
import java.awt.RenderingHints;
import java.awt.image.BufferedImage;
import java.util.BitSet;
import java.util.Optional;
import java.util.stream.IntStream;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/**
 * The same as {@link PixelPicture} for a screen: a square of colours without words, in which one can ask what is seen where. Immutable; the
 * same for any number of threads.
 */
public final class SeenPicture {
    private final Scene scene;
    private final FacetTree tree;
    private final Fisheye sight;
    /** Each facet by its own number: the tree has all of them. */
    private final int[] facets;

    private final BitSet surfaces;
    private final BufferedImage image;

    /**
     * What is seen at a place of the picture.
     *
     * @param surface number of the surface
     * @param facet the facet
     * @param point where on it, mm
     */
    public record Seen(int surface, int facet, Vector3D point) {}

    private SeenPicture(Scene scene, FacetTree tree, Fisheye sight, BitSet surfaces, BufferedImage image) {
        this.scene = scene;
        this.tree = tree;
        this.sight = sight;
        this.facets = IntStream.range(0, scene.facetCount()).toArray();
        this.surfaces = surfaces;
        this.image = image;
    }

    /**
     * Looks.
     *
     * @param subject what is seen; shows every surface, without a section
     * @param tree the tree over all facets of its scene
     * @param at the point
     * @param halfAngle angle from the middle of the picture to its rim, deg, above 0 and up to 90
     * @param size width and height, pixels
     * @param perPixel lines of sight along each side of a pixel
     * @param threads number of threads
     */
    public static SeenPicture of(
            Subject subject, FacetTree tree, SurfacePoint at, double halfAngle, int size, int perPixel, int threads) {
        Scene scene = subject.scene();
        Vector3D up = SurfaceRectangle.of(scene, at.surface()).alongV();
        Fisheye sight = Fisheye.of(at, up, halfAngle, scene.beam().pupil());
        RayImage rays = RayImage.within(subject, sight, tree, size, perPixel, threads);
        BufferedImage image = new BufferedImage(size, size, BufferedImage.TYPE_INT_ARGB);
        for (int row = 0; row < size; row++) {
            for (int column = 0; column < size; column++) {
                image.setRGB(column, row, rays.argb(column, row));
            }
        }
        Graphics2D graphics = image.createGraphics();
        graphics.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
        sight.outline(graphics, new Rectangle(size, size), Math.max(0.5, size / 400.0));
        graphics.dispose();
        BitSet surfaces = new BitSet();
        for (int row = 0; row < size * perPixel; row++) {
            for (int column = 0; column < size * perPixel; column++) {
                int surface = rays.surface(column, row);
                if (surface >= 0) {
                    surfaces.set(surface);
                }
            }
        }
        return new SeenPicture(scene, tree, sight, surfaces, image);
    }

    /** Width and height, pixels. */
    public int size() {
        return image.getWidth();
    }

    /** A copy of the colours as {@code 0xffrrggbb}, row by row from above. */
    public int[] copyArgb() {
        return image.getRGB(0, 0, size(), size(), null, 0, size());
    }

    /** Numbers of the surfaces that are seen. */
    public int[] surfaces() {
        return surfaces.stream().toArray();
    }

    /**
     * What is seen at a place.
     *
     * @param x from the left, 0 to 1
     * @param y from above, 0 to 1
     * @return empty outside the disc and where nothing is in the way
     */
    public Optional<Seen> at(double x, double y) {
        Optional<SightLine> line = line(x, y);
        if (line.isEmpty()) {
            return Optional.empty();
        }
        Glance glance = new Glance(scene, tree, facets, 0, null);
        glance.along(line.get(), false);
        return glance.surface < 0
                ? Optional.empty()
                : Optional.of(new Seen(glance.surface, glance.facet, Vector3D.of(glance.x, glance.y, glance.z)));
    }

    /** The angle from the direction in the middle, deg; empty outside the disc. */
    public Optional<Double> angle(double x, double y) {
        return line(x, y)
                .map(line -> Math.toDegrees(StrictMath.acos(Math.max(
                        -1,
                        Math.min(
                                1,
                                Vector3D.of(line.dx, line.dy, line.dz)
                                        .dot(sight.at().normal()))))));
    }

    private Optional<SightLine> line(double x, double y) {
        SightLine line = new SightLine();
        return sight.line(2 * x - 1, 1 - 2 * y, line) ? Optional.of(line) : Optional.empty();
    }

    /**
     * Where a point appears.
     *
     * @param point the point, mm
     * @return shares from the left and from above; empty where it lies outside the disc
     */
    public Optional<double[]> place(Vector3D point) {
        double[] place = new double[2];
        return sight.place(point, place)
                ? Optional.of(new double[] {(1 + place[0]) / 2, (1 - place[1]) / 2})
                : Optional.empty();
    }

    /** The axis of the layout that is nearest to the right of the picture, such as {@code +x}. */
    public String right() {
        return Fisheye.axis(sight.at().u());
    }

    /** The axis of the layout that is nearest to up in the picture. */
    public String up() {
        return Fisheye.axis(sight.at().v());
    }
}
