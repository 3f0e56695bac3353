package darkrim.present.picture;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Path2D;
import java.util.List;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/** Draws ways of light over a picture: a line with a ring where it is reflected and an arrow where it arrives. */
final class PathLines {
    private static final Color RIM = new Color(0xff000000, true);
    private static final Color LINE = new Color(0xff66e0ff, true);
    private static final int STEPS = 400;

    private PathLines() {}

    static void paint(Graphics2D graphics, Subject subject, Sight sight, SeenSurfaces seen, double scale) {
        for (List<Vector3D> path : subject.paths()) {
            Path2D line = new Path2D.Double();
            double[] place = new double[2];
            boolean pen = false;
            for (int leg = 1; leg < path.size(); leg++) {
                for (int i = 0; i <= STEPS; i++) {
                    boolean there = seen.place(sight, path.get(leg - 1).lerp(path.get(leg), (double) i / STEPS), place);
                    if (there && pen) {
                        line.lineTo(place[0], place[1]);
                    } else if (there) {
                        line.moveTo(place[0], place[1]);
                    }
                    pen = there;
                }
            }
            stroke(graphics, line, scale);
            for (int i = 1; i < path.size(); i++) {
                if (seen.place(sight, path.get(i), place)) {
                    boolean last = i == path.size() - 1;
                    double radius = (last ? 3 : 5) * scale;
                    Ellipse2D dot = new Ellipse2D.Double(place[0] - radius, place[1] - radius, 2 * radius, 2 * radius);
                    graphics.setColor(last ? LINE : RIM);
                    graphics.fill(dot);
                    graphics.setColor(last ? RIM : LINE);
                    graphics.setStroke(new BasicStroke((float) (1.6 * scale)));
                    graphics.draw(dot);
                }
            }
        }
    }

    private static void stroke(Graphics2D graphics, Path2D line, double scale) {
        graphics.setColor(RIM);
        graphics.setStroke(new BasicStroke((float) (3.6 * scale), BasicStroke.CAP_ROUND, BasicStroke.JOIN_ROUND));
        graphics.draw(line);
        graphics.setColor(LINE);
        graphics.setStroke(new BasicStroke((float) (1.8 * scale), BasicStroke.CAP_ROUND, BasicStroke.JOIN_ROUND));
        graphics.draw(line);
    }
}
