package darkrim.light;

import darkrim.scene.Scene;
import darkrim.trace.FacetTree;
import darkrim.trace.Ray;
import org.apache.commons.rng.UniformRandomProvider;

/**
 * One-sample estimates of the direct irradiance at a point, for radiance 1 and in units of the reference irradiance.
 *
 * <p>E = integral over the pupil of V cos(theta) cos(theta_p) / d^2 dA (any radiometry text, e.g. Boyd, Radiometry and the Detection of
 * Optical Radiation). Sampled uniformly over the pupil's area; close to the pupil, where a sample could weigh more than 2 pi, by
 * cosine-distributed directions instead. Which of the two depends on the point only, so both are unbiased and no sample is unbounded.
 *
 * <p>Mutable, one for each thread.
 */
final class DirectLight {
    private final PupilSource pupil;
    private final FacetTree tree;
    private final double perReference;
    private final double[] inPupil = new double[2];
    private final Directions directions = new Directions();
    private final Ray ray = new Ray();

    /** Whether the last sample was a point of the pupil; one over the hemisphere says nothing of the share of the pupil that is seen. */
    boolean overPupil;

    /** Whether the pupil was seen at the last sample. */
    boolean seen;

    /**
     * From the receiver to where the last sample met the pupil; through a window, to where its straight line meets the pupil brought nearer
     * by the window's shift. Meaningful while {@link #seen}.
     */
    double toX;

    double toY;
    double toZ;

    /** Share of the light that a window let pass at the last sample; 1 without a window. */
    double transmitted = 1;

    /** Solid angle that an element of the pupil fills at the last sample through a window, over its area, 1/mm2. */
    double solidAngle;

    DirectLight(Scene scene, FacetTree tree, PupilSource pupil) {
        this.pupil = pupil;
        this.tree = tree;
        this.perReference = 1 / scene.referenceIrradiance();
    }

    /**
     * A sample of the relative irradiance.
     *
     * @param x the point, mm
     * @param nx the direction it faces, unit length
     * @param plane the plane in which the point lies
     */
    double sample(
            UniformRandomProvider random, double x, double y, double z, double nx, double ny, double nz, int plane) {
        seen = false;
        overPupil = true;
        double height = pupil.height(x, y, z);
        if (!(height > 0)) {
            return 0;
        }
        if (pupil.fillsTheSky(height)) {
            return sampleHemisphere(random, x, y, z, nx, ny, nz, plane);
        }
        pupil.outline.place(random.nextDouble(), random.nextDouble(), inPupil);
        if (pupil.window != null) {
            return sampleThroughWindow(x, y, z, nx, ny, nz, plane, height);
        }
        double dx = pupil.cx + inPupil[0] * pupil.ux + inPupil[1] * pupil.vx - x;
        double dy = pupil.cy + inPupil[0] * pupil.uy + inPupil[1] * pupil.vy - y;
        double dz = pupil.cz + inPupil[0] * pupil.uz + inPupil[1] * pupil.vz - z;
        double facing = nx * dx + ny * dy + nz * dz;
        if (!(facing > 0) || !pupil.passes(x, y, z, dx, dy, dz)) {
            return 0;
        }
        ray.set(x, y, z, dx, dy, dz, 1, plane);
        if (tree.blocked(ray)) {
            return 0;
        }
        seen = true;
        toX = dx;
        toY = dy;
        toZ = dz;
        double squared = dx * dx + dy * dy + dz * dz;
        return pupil.area * facing * height / (squared * squared) * perReference;
    }

    /** The pupil's point is drawn already; the way to it is found, not drawn, so that each point of the pupil counts alike. */
    private double sampleThroughWindow(
            double x, double y, double z, double nx, double ny, double nz, int plane, double height) {
        double ax = pupil.cx + inPupil[0] * pupil.ux + inPupil[1] * pupil.vx - x;
        double ay = pupil.cy + inPupil[0] * pupil.uy + inPupil[1] * pupil.vy - y;
        double aside = Math.sqrt(ax * ax + ay * ay);
        double slope = pupil.window.slope(height, aside);
        double dz = height - pupil.window.shift();
        double scale = aside > 0 ? slope * dz / aside : 0;
        double dx = ax * scale;
        double dy = ay * scale;
        double facing = nx * dx + ny * dy + nz * dz;
        if (!(facing > 0) || !pupil.passes(x, y, z, dx, dy, dz)) {
            return 0;
        }
        ray.set(x, y, z, dx, dy, dz, 1, plane);
        if (tree.blocked(ray)) {
            return 0;
        }
        seen = true;
        toX = dx;
        toY = dy;
        toZ = dz;
        double cosine = 1 / Math.sqrt(1 + slope * slope);
        transmitted = pupil.window.transmittance(cosine);
        solidAngle = pupil.window.solidAngle(height, slope);
        return pupil.area * facing * cosine / dz * solidAngle * transmitted * perReference;
    }

    private double sampleHemisphere(
            UniformRandomProvider random, double x, double y, double z, double nx, double ny, double nz, int plane) {
        overPupil = false;
        directions.cosine(random, nx, ny, nz);
        return along(x, y, z, directions.x, directions.y, directions.z, plane)
                ? Math.PI * transmitted * perReference
                : 0;
    }

    /** Whether the pupil is seen from a point in a direction. */
    boolean along(double x, double y, double z, double dx, double dy, double dz, int plane) {
        double height = pupil.height(x, y, z);
        double toward = -(pupil.nx * dx + pupil.ny * dy + pupil.nz * dz);
        if (!(height > 0 && toward > 0)) {
            return false;
        }
        if (pupil.window != null) {
            return alongThroughWindow(x, y, z, dx, dy, dz, plane, height);
        }
        double t = height / toward;
        double qx = x + t * dx - pupil.cx;
        double qy = y + t * dy - pupil.cy;
        double qz = z + t * dz - pupil.cz;
        double u = qx * pupil.ux + qy * pupil.uy + qz * pupil.uz;
        double v = qx * pupil.vx + qy * pupil.vy + qz * pupil.vz;
        if (!pupil.outline.contains(u, v) || !pupil.passes(x, y, z, dx, dy, dz)) {
            return false;
        }
        ray.set(x, y, z, dx, dy, dz, t, plane);
        seen = !tree.blocked(ray);
        toX = t * dx;
        toY = t * dy;
        toZ = t * dz;
        return seen;
    }

    private boolean alongThroughWindow(
            double x, double y, double z, double dx, double dy, double dz, int plane, double height) {
        double level = Math.sqrt(dx * dx + dy * dy);
        double slope = level / dz;
        double scale = level > 0 ? pupil.window.aside(height, slope) / level : 0;
        double qx = x + scale * dx - pupil.cx;
        double qy = y + scale * dy - pupil.cy;
        double u = qx * pupil.ux + qy * pupil.uy;
        double v = qx * pupil.vx + qy * pupil.vy;
        if (!pupil.outline.contains(u, v) || !pupil.passes(x, y, z, dx, dy, dz)) {
            return false;
        }
        double t = (height - pupil.window.shift()) / dz;
        ray.set(x, y, z, dx, dy, dz, t, plane);
        seen = !tree.blocked(ray);
        toX = t * dx;
        toY = t * dy;
        toZ = t * dz;
        transmitted = pupil.window.transmittance(1 / Math.sqrt(1 + slope * slope));
        solidAngle = pupil.window.solidAngle(height, slope);
        return seen;
    }

    /** Cosine of the angle between a normal and where the last sample met the pupil; meaningful while {@link #seen}. */
    double incidence(double nx, double ny, double nz) {
        double squared = toX * toX + toY * toY + toZ * toZ;
        return squared > 0 ? Math.min(1, (nx * toX + ny * toY + nz * toZ) / Math.sqrt(squared)) : 0;
    }
}
