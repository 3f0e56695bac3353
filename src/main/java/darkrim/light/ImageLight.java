package darkrim.light;

import darkrim.scene.Scene;
import darkrim.trace.FacetTree;
import darkrim.trace.Ray;
import darkrim.trace.StartPoints;
import org.apache.commons.rng.UniformRandomProvider;

/**
 * One-sample estimates of the irradiance that flat mirrors throw on a point, through the image of the pupil behind them (image method, any
 * optics text). Mutable, one for each thread; what the last sample met stands in the fields.
 */
final class ImageLight {
    private final Scene scene;
    private final FacetTree tree;
    private final PupilSource pupil;
    private final StartPoints starts;
    private final boolean[] lit;
    private final double perReference;
    private final Ray ray = new Ray();
    private final double[] inPupil = new double[2];
    private final double[] placed = new double[3];

    /** The mirror that showed the image, or -1. */
    int via;

    /** Its facet. */
    int facet;

    /** Relative irradiance that came by it. */
    double value;

    /** Cosine of the angle at which it reached the point. */
    double facing;

    /** Cosine of the angle of incidence on the mirror. */
    double incidence;

    /** Where it was reflected, mm. */
    double x;

    double y;
    double z;

    /** Where it left the pupil, mm. */
    double onPupilX;

    double onPupilY;
    double onPupilZ;

    /**
     * @param lit by surface number, whether direct light may reach it
     */
    ImageLight(Scene scene, FacetTree tree, PupilSource pupil, StartPoints starts, boolean[] lit) {
        this.scene = scene;
        this.tree = tree;
        this.pupil = pupil;
        this.starts = starts;
        this.lit = lit;
        this.perReference = 1 / scene.referenceIrradiance();
    }

    /**
     * Whether light by a point of a mirror is found through its image. That depends on the mirror's point only, so that this and following the
     * ray on count it once together.
     *
     * @param plane the mirror's plane
     * @param height height of the point in front of the pupil, mm
     */
    boolean finds(ImagePlanes planes, int plane, double height) {
        return planes.has(plane) && isFarEnough(height);
    }

    /** Where the pupil fills the sky, a sample over its area could weigh too much. */
    private boolean isFarEnough(double height) {
        return height > 0 && !pupil.fillsTheSky(height);
    }

    /**
     * Takes a sample through one image.
     *
     * @param pick which of the planes
     * @param choices one over the chance that it is picked
     * @param px the point, mm
     * @param nx the direction it faces, unit length
     * @param plane the plane in which the point lies
     */
    void sample(
            UniformRandomProvider random,
            ImagePlanes planes,
            int pick,
            double choices,
            double px,
            double py,
            double pz,
            double nx,
            double ny,
            double nz,
            int plane) {
        via = -1;
        value = 0;
        pupil.outline.place(random.nextDouble(), random.nextDouble(), inPupil);
        double qx = pupil.cx + inPupil[0] * pupil.ux + inPupil[1] * pupil.vx;
        double qy = pupil.cy + inPupil[0] * pupil.uy + inPupil[1] * pupil.vy;
        double qz = pupil.cz + inPupil[0] * pupil.uz + inPupil[1] * pupil.vz;
        double mx = planes.plane(pick, 0);
        double my = planes.plane(pick, 1);
        double mz = planes.plane(pick, 2);
        double behind = planes.height(pick, qx, qy, qz);
        double before = planes.height(pick, px, py, pz);
        if (!(behind * before > 0)) {
            return;
        }
        double dx = qx - 2 * behind * mx - px;
        double dy = qy - 2 * behind * my - py;
        double dz = qz - 2 * behind * mz - pz;
        double toward = nx * dx + ny * dy + nz * dz;
        if (!(toward > 0)) {
            return;
        }
        ray.set(px, py, pz, dx, dy, dz, 1, plane);
        int met = tree.nearest(ray);
        if (met < 0 || scene.plane(met) != planes.number(pick)) {
            return;
        }
        int surface = scene.surfaceMet(met, dx, dy, dz);
        if (surface == Scene.INSIDE
                || !lit[surface]
                || !scene.surfaces().get(surface).finish().reflection().hasMirror()) {
            return;
        }
        boolean front = !scene.surfaces().get(surface).back();
        // From the corners of the facet: its error does not grow with the ray's length.
        starts.place(met, ray.weightA(), ray.weightB(), front, placed);
        double ex = qx - placed[0];
        double ey = qy - placed[1];
        double ez = qz - placed[2];
        // The reflected leg meets the pupil's front at the same angle as the straight line meets the image's.
        double leaving = -(pupil.nx * ex + pupil.ny * ey + pupil.nz * ez);
        if (!(leaving > 0) || !pupil.passes(placed[0], placed[1], placed[2], ex, ey, ez) || !isFarEnough(leaving)) {
            return;
        }
        double leg = Math.sqrt(ex * ex + ey * ey + ez * ez);
        ray.set(placed[0], placed[1], placed[2], ex, ey, ez, 1, scene.plane(met));
        if (tree.blocked(ray)) {
            return;
        }
        double squared = dx * dx + dy * dy + dz * dz;
        double length = Math.sqrt(squared);
        double cosines = toward / length * leaving / leg;
        facing = Math.min(1, toward / length);
        incidence = Math.min(1, Math.abs(mx * dx + my * dy + mz * dz) / length);
        via = surface;
        facet = met;
        x = placed[0];
        y = placed[1];
        z = placed[2];
        onPupilX = qx;
        onPupilY = qy;
        onPupilZ = qz;
        value = choices
                * scene.surfaces().get(surface).finish().reflection().mirror(incidence)
                * pupil.area
                * cosines
                / squared
                * perReference;
    }
}
