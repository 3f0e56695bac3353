package darkrim.scene;

import darkrim.geom.Frame;
import darkrim.geom.MitredOffset;
import darkrim.geom.Outline;
import darkrim.geom.Polygon;
import darkrim.geom.Ring;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.apache.commons.geometry.euclidean.twod.Vector2D;

/**
 * Where the pupil seems to be through a window: nearer by the window's shift, and wider by as much as the straight line of any way can miss
 * the paraxial image of the point from which it comes.
 */
final class ApparentPupil {
    /** Covers rounding, as a share. */
    private static final double ROUNDING = 1e-9;

    /** Surfaces that margins are sought for may be moved aside by this before steeper lines could miss the pupil that covers, mm. */
    private static final double MOVED = 2;

    private ApparentPupil() {}

    /**
     * The beam of straight lines that holds every line which light takes to a point of the facets or of a surface that is moved aside by no
     * more than 2 mm.
     *
     * @param corners nine coordinates a facet, mm
     * @throws IllegalArgumentException if a facet reaches above the lower face of the window
     */
    static Beam covering(Beam beam, double[] corners) {
        if (beam.window().isEmpty()) {
            return beam;
        }
        Window window = beam.window().get();
        Frame frame = beam.pupil().frame();
        double growth = window.excess(steepest(beam, window, corners));
        growth += ROUNDING * (growth + beam.pupil().outline().reach());
        Vector3D seems = frame.origin().subtract(Vector3D.of(0, 0, window.shift()));
        Pupil grown = new Pupil(
                grown(beam.pupil().outline(), growth), new Frame(seems, frame.u(), frame.v(), frame.normal()));
        return new Beam(grown, beam.fieldLimit(), beam.radiance());
    }

    /**
     * Slope of the steepest way. The points that see all of a circle around the pupil under less than a slope make up a cone, which is convex: so
     * corners decide for facets.
     */
    private static double steepest(Beam beam, Window window, double[] corners) {
        Vector3D centre = beam.pupil().frame().origin();
        double reach = beam.pupil().outline().reach();
        double steepest = 0;
        for (int at = 0; at < corners.length; at += 3) {
            if (corners[at + 2] > window.bottom()) {
                throw new IllegalArgumentException("a facet reaches above the lower face of the window");
            }
            double distance = Math.hypot(corners[at] - centre.getX(), corners[at + 1] - centre.getY()) + reach + MOVED;
            steepest = Math.max(steepest, window.slope(centre.getZ() - corners[at + 2], distance));
        }
        return steepest;
    }

    private static Outline grown(Outline outline, double growth) {
        if (outline instanceof Ring ring) {
            return new Ring(ring.radius() + growth, Math.max(0, ring.hole() - growth));
        }
        List<Vector2D> hull = hull(((Polygon) outline).corners());
        return Polygon.of(MitredOffset.outward(hull, growth));
    }

    /** The convex polygon around points, counter-clockwise (Andrew's monotone chain, any text on computational geometry). */
    private static List<Vector2D> hull(List<Vector2D> points) {
        List<Vector2D> sorted = points.stream()
                .sorted(Comparator.comparingDouble(Vector2D::getX).thenComparingDouble(Vector2D::getY))
                .toList();
        List<Vector2D> hull = new ArrayList<>();
        for (int pass = 0; pass < 2; pass++) {
            int start = hull.size();
            for (int i = 0; i < sorted.size(); i++) {
                Vector2D next = sorted.get(pass == 0 ? i : sorted.size() - 1 - i);
                while (hull.size() >= start + 2 && !turnsLeft(hull, next)) {
                    hull.remove(hull.size() - 1);
                }
                hull.add(next);
            }
            hull.remove(hull.size() - 1);
        }
        return hull;
    }

    private static boolean turnsLeft(List<Vector2D> chain, Vector2D next) {
        Vector2D last = chain.get(chain.size() - 1);
        Vector2D before = chain.get(chain.size() - 2);
        return last.subtract(before).signedArea(next.subtract(last)) > 0;
    }
}
