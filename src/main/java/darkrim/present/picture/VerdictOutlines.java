package darkrim.present.picture;

import darkrim.scene.Scene;
import darkrim.scene.Surface;
import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.geom.Path2D;
import java.util.ArrayList;
import java.util.List;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/** Draws, where a surface can be seen, its border in the line of its verdict. */
final class VerdictOutlines {
    /** A border is not thicker than this share of how thick what is seen of its face appears. */
    private static final double SHARE = 0.22;

    private static final double THINNEST = 0.7;

    private final Subject subject;
    private final Sight sight;
    private final SeenSurfaces seen;
    private final Graphics2D graphics;
    private final double scale;

    /**
     * @param graphics its origin is the top left of the picture
     * @param scale how much larger than plain lines are
     */
    VerdictOutlines(Subject subject, Sight sight, SeenSurfaces seen, Graphics2D graphics, double scale) {
        this.subject = subject;
        this.sight = sight;
        this.seen = seen;
        this.graphics = graphics;
        this.scale = scale;
    }

    void paint() {
        subject.verdicts().keySet().stream()
                .filter(surface -> subject.shown().get(surface) && seen.area(surface) > 0)
                .sorted()
                .forEach(this::paint);
    }

    private void paint(int number) {
        VerdictMark mark = VerdictMark.of(subject.verdicts().get(number));
        List<double[]> runs = new ArrayList<>();
        for (Vector3D[] side :
                border(subject.scene(), subject.scene().surfaces().get(number))) {
            visible(side[0], side[1], number, runs);
        }
        Path2D path = new Path2D.Double();
        double length = 0;
        for (double[] run : runs) {
            path.moveTo(run[0], run[1]);
            path.lineTo(run[2], run[3]);
            length += Math.sqrt((run[2] - run[0]) * (run[2] - run[0]) + (run[3] - run[1]) * (run[3] - run[1]));
        }
        if (length == 0) {
            return;
        }
        double thick = 2 * seen.area(number) / length;
        double width = Math.max(THINNEST, Math.min(mark.width(), SHARE * thick / scale)) * scale;
        stroke(path, new Color(0xd0ffffff, true), width + 1.4 * scale * Math.min(1, width / scale), List.of());
        stroke(path, new Color(mark.argb()), width, mark.dashes());
    }

    private void stroke(Path2D path, Color colour, double width, List<Double> dashes) {
        float[] pattern = new float[dashes.size()];
        for (int i = 0; i < pattern.length; i++) {
            pattern[i] = (float) (dashes.get(i) * scale);
        }
        graphics.setColor(colour);
        graphics.setStroke(new BasicStroke(
                (float) width,
                BasicStroke.CAP_BUTT,
                BasicStroke.JOIN_ROUND,
                1,
                pattern.length == 0 ? null : pattern,
                0));
        graphics.draw(path);
    }

    /** Adds the stretches of a side beside which the surface is seen, in pixels. */
    private void visible(Vector3D from, Vector3D to, int number, List<double[]> runs) {
        double[] start = new double[2];
        double[] end = new double[2];
        if (!seen.place(sight, from, start) || !seen.place(sight, to, end)) {
            return;
        }
        double dx = end[0] - start[0];
        double dy = end[1] - start[1];
        int steps = (int) Math.min(10_000, Math.max(2, Math.ceil(Math.sqrt(dx * dx + dy * dy))));
        double[] place = new double[2];
        double[] run = null;
        for (int i = 0; i <= steps; i++) {
            boolean there = seen.place(sight, from.lerp(to, (double) i / steps), place)
                    && seen.isSeenNear(place[0], place[1], number);
            if (there && run == null) {
                run = new double[] {place[0], place[1], place[0], place[1]};
            } else if (there) {
                run[2] = place[0];
                run[3] = place[1];
            }
            if (run != null && (!there || i == steps)) {
                runs.add(run);
                run = null;
            }
        }
    }

    /** The sides that belong to one facet of a surface only. Facets of a surface share corners to the last bit. */
    static List<Vector3D[]> border(Scene scene, Surface surface) {
        record Side(Vector3D from, Vector3D to) {}
        java.util.Set<Side> sides = new java.util.LinkedHashSet<>();
        for (int f = surface.firstFacet(); f < surface.firstFacet() + surface.facetCount(); f++) {
            for (int k = 0; k < 3; k++) {
                Vector3D from = scene.corner(f, k);
                Vector3D to = scene.corner(f, (k + 1) % 3);
                if (!sides.remove(new Side(to, from))) {
                    sides.add(new Side(from, to));
                }
            }
        }
        return sides.stream()
                .map(side -> new Vector3D[] {side.from(), side.to()})
                .toList();
    }
}
