package darkrim.present.picture;

import darkrim.scene.Scene;
import darkrim.trace.FacetTree;
import darkrim.trace.Ray;

/** What is seen along one line of sight. Mutable, one for each thread. */
final class Glance {
    /** Nothing is seen. */
    static final int NOTHING = -1;
    /** The cut face of a solid is seen. */
    static final int CUT = -2;

    private final Scene scene;
    private final FacetTree tree;
    /** The facet of the scene for each facet of the tree. */
    private final int[] facets;

    private final double reach;
    private final Section section;
    private final Ray ray = new Ray();

    /** The surface that is seen, or {@link #NOTHING} or {@link #CUT}. */
    int surface;
    /** The facet that is seen, or -1. */
    int facet;
    /** Distance from where the look entered, mm; for comparing neighbours. */
    double distance;
    /** Where it is seen, mm. */
    double x;

    double y;
    double z;

    /**
     * @param tree the tree over the facets that are drawn
     * @param facets the facet of the scene for each of them
     * @param reach all that is drawn lies within this distance of the start of a line of sight
     * @param section where parts are cut, or null
     */
    Glance(Scene scene, FacetTree tree, int[] facets, double reach, Section section) {
        this.scene = scene;
        this.tree = tree;
        this.facets = facets;
        this.reach = reach;
        this.section = section;
    }

    /**
     * Looks.
     *
     * @param line the line of sight
     * @param behind whether what lies behind the start is seen too
     */
    void along(SightLine line, boolean behind) {
        double from = behind ? -reach : 0;
        double to = Double.POSITIVE_INFINITY;
        boolean entersCut = false;
        if (section != null) {
            double along = section.axis() == 0 ? line.dx : section.axis() == 1 ? line.dy : line.dz;
            double start = section.axis() == 0 ? line.x : section.axis() == 1 ? line.y : line.z;
            double beyond = section.keepsLess() ? start - section.place() : section.place() - start;
            double rising = section.keepsLess() ? along : -along;
            if (rising < 0) {
                entersCut = -beyond / rising > from;
                from = Math.max(from, -beyond / rising);
            } else if (rising > 0) {
                to = -beyond / rising;
            } else if (beyond > 0) {
                to = from;
            }
        }
        if (!(to > from)) {
            none();
            return;
        }
        x = line.x + from * line.dx;
        y = line.y + from * line.dy;
        z = line.z + from * line.dz;
        ray.set(x, y, z, line.dx, line.dy, line.dz, to - from, Ray.NO_PLANE);
        int met = tree.nearest(ray);
        if (met < 0) {
            none();
            return;
        }
        facet = facets[met];
        surface = scene.surfaceMet(facet, line.dx, line.dy, line.dz);
        if (surface == Scene.INSIDE) {
            // The line leaves a solid that it did not enter: the section cut it open, or the eye is inside.
            surface = entersCut ? CUT : scene.frontSurface(facet);
            distance = entersCut ? 0 : ray.distance();
            facet = entersCut ? -1 : facet;
            return;
        }
        distance = ray.distance();
        x += distance * line.dx;
        y += distance * line.dy;
        z += distance * line.dz;
    }

    private void none() {
        surface = NOTHING;
        facet = -1;
        distance = Double.POSITIVE_INFINITY;
    }
}
