package darkrim.present.picture;

import darkrim.scene.Scene;

/** Some rows of a {@link RayImage}. Lives for one task. */
final class RayBand {
    private static final int PAPER = 0xfff3f4f6;
    private static final int CUT_FACE = 0xffe4dccb;
    private static final int HATCH = 0xff9a8f78;
    private static final int DARK_EDGE = 0xff20242a;
    private static final int LIGHT_EDGE = 0xff8b939c;
    /** Faces that meet at less than about 20 deg are one round face: cosine. */
    private static final double ROUND = 0.94;
    /** Where the distance jumps by more than this share, one face stands before another. */
    private static final double JUMP = 0.02;
    /** Pixels from one line of a hatch to the next. */
    private static final int HATCH_STEP = 9;

    private final Subject subject;
    private final Scene scene;
    private final Sight sight;
    private final boolean behind;
    private final Glance glance;
    private final RayImage image;
    private final int firstRow;
    private final int endRow;
    private final int n;
    private final int across;
    private final int down;

    private final int[] surfaces;
    private final int[] facets;
    private final double[] distances;
    private final int[] colours;

    RayBand(Subject subject, Sight sight, Glance glance, RayImage image, int firstRow, int endRow) {
        this.subject = subject;
        this.scene = subject.scene();
        this.sight = sight;
        this.behind = sight instanceof Camera camera && camera.isParallel();
        this.glance = glance;
        this.image = image;
        this.firstRow = firstRow;
        this.endRow = endRow;
        n = image.perPixel();
        // One line more to the right and below: edges look at neighbours.
        across = image.width() * n + 1;
        down = (endRow - firstRow) * n + 1;
        surfaces = new int[across * down];
        facets = new int[across * down];
        distances = new double[across * down];
        colours = new int[across * down];
    }

    void paint() {
        SightLine line = new SightLine();
        double step = 2.0 / (image.height() * n);
        for (int j = 0; j < down; j++) {
            double y = 1 - step * (firstRow * n + j + 0.5);
            for (int i = 0; i < across; i++) {
                double x = step * (i + 0.5 - image.width() * n / 2.0);
                look(i + across * j, sight.line(x, y, line) ? line : null, i, firstRow * n + j);
            }
        }
        for (int row = firstRow; row < endRow; row++) {
            for (int column = 0; column < image.width(); column++) {
                resolve(column, row);
            }
        }
    }

    private void look(int at, SightLine line, int i, int j) {
        if (line == null) {
            surfaces[at] = Glance.NOTHING;
            facets[at] = -1;
            distances[at] = Double.POSITIVE_INFINITY;
            colours[at] = PAPER;
            return;
        }
        glance.along(line, behind);
        surfaces[at] = glance.surface;
        facets[at] = glance.facet;
        distances[at] = glance.distance;
        colours[at] = colour(line, i, j);
    }

    private int colour(SightLine line, int i, int j) {
        if (glance.surface == Glance.NOTHING) {
            return PAPER;
        }
        if (glance.surface == Glance.CUT) {
            return (i + j) / n % HATCH_STEP == 0 ? HATCH : CUT_FACE;
        }
        if (subject.light().isPresent()) {
            return subject.colour(glance.surface, glance.facet, glance.x, glance.y, glance.z);
        }
        double cosine = Math.abs(scene.normal(glance.facet, 0) * line.dx
                + scene.normal(glance.facet, 1) * line.dy
                + scene.normal(glance.facet, 2) * line.dz);
        int grey = (int) Math.round(110 + 120 * cosine);
        return opaque(grey, grey, Math.min(255, grey + 6));
    }

    private void resolve(int column, int row) {
        int red = 0;
        int green = 0;
        int blue = 0;
        int perRow = image.width() * n;
        for (int j = 0; j < n; j++) {
            for (int i = 0; i < n; i++) {
                int at = column * n + i + across * ((row - firstRow) * n + j);
                int colour = isEdge(at) ? edge(colours[at]) : colours[at];
                red += colour >> 16 & 255;
                green += colour >> 8 & 255;
                blue += colour & 255;
                image.put(column * n + i, row * n + j, perRow, surfaces[at]);
            }
        }
        int count = n * n;
        image.put(column, row, opaque(mean(red, count), mean(green, count), mean(blue, count)));
    }

    /** The mean of some bytes, rounded: of equal ones that byte itself. */
    private static int mean(int sum, int count) {
        return (sum + count / 2) / count;
    }

    private static int opaque(int red, int green, int blue) {
        return 0xff000000 | (red << 16) | (green << 8) | blue;
    }

    private boolean isEdge(int at) {
        return differ(at, at + 1) || differ(at, at + across);
    }

    private boolean differ(int one, int other) {
        if (surfaces[one] != surfaces[other]) {
            return true;
        }
        int f = facets[one];
        int g = facets[other];
        if (f == g || f < 0) {
            return false;
        }
        double cosine = scene.normal(f, 0) * scene.normal(g, 0)
                + scene.normal(f, 1) * scene.normal(g, 1)
                + scene.normal(f, 2) * scene.normal(g, 2);
        if (cosine < ROUND) {
            return true;
        }
        double jump = Math.abs(distances[one] - distances[other]);
        return scene.plane(f) != scene.plane(g) && jump > JUMP * Math.min(distances[one], distances[other]);
    }

    /** An edge that can be told from its face. */
    private static int edge(int face) {
        int light = 2126 * (face >> 16 & 255) + 7152 * (face >> 8 & 255) + 722 * (face & 255);
        return light < 75 * 10_000 ? LIGHT_EDGE : DARK_EDGE;
    }
}
