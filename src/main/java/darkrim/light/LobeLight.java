package darkrim.light;

import darkrim.reflection.Reflection;
import darkrim.scene.Scene;
import org.apache.commons.rng.UniformRandomProvider;

/**
 * What a point of a surface sends one way of the pupil's light, where its BRDF changes with direction. One sample of the pupil serves all that
 * scatters; lobes get a second one, drawn by their own density, and both are weighted by the balance heuristic. Mutable, one for each thread.
 *
 * <p>Densities are over projected solid angle: that of a uniform point of the pupil is one over a sample of the irradiance for radiance 1.
 */
final class LobeLight {
    private final PupilSource pupil;
    private final DirectLight direct;
    private final double reference;
    private final LobeDirection lobeDirection = new LobeDirection();

    /** What came by what scatters broadly, and by the lobes, for radiance 1 and in units of the reference irradiance. */
    double broadValue;

    double lobeValue;

    /** The part of {@link #lobeValue} that came by the direction of a lobe; the rest by the point of the pupil. */
    double byDirection;

    /** Cosine of the angle of incidence, for what scatters broadly and, in the mean of both samples, for the lobes. */
    double broadIncidence;

    double lobeIncidence;

    LobeLight(Scene scene, PupilSource pupil, DirectLight direct) {
        this.pupil = pupil;
        this.direct = direct;
        this.reference = scene.referenceIrradiance();
    }

    /**
     * Takes the sample of direct light that was drawn last, and draws another for the lobes.
     *
     * @param sample that sample, relative irradiance
     * @param x the point, mm
     * @param nx the unit normal there
     * @param dx unit direction of the ray that came to the point
     * @param plane the plane in which the point lies
     */
    void gather(
            UniformRandomProvider random,
            Reflection reflection,
            double sample,
            double x,
            double y,
            double z,
            double nx,
            double ny,
            double nz,
            double dx,
            double dy,
            double dz,
            int plane) {
        broadValue = 0;
        lobeValue = 0;
        byDirection = 0;
        double out = cosine(-(dx * nx + dy * ny + dz * nz));
        if (sample > 0) {
            double length = length();
            double in = cosine((direct.toX * nx + direct.toY * ny + direct.toZ * nz) / length);
            broadIncidence = in;
            lobeIncidence = in;
            broadValue = sample * reflection.broad(in, out);
            if (!reflection.lobes().isEmpty()) {
                double between = -(direct.toX * dx + direct.toY * dy + direct.toZ * dz) / length;
                lobeValue = direct.transmitted
                        * weighed(reflection, out, in, between, direct.transmitted / (sample * reference));
            }
        }
        if (reflection.lobes().isEmpty()) {
            return;
        }
        if (!lobeDirection.draw(random, reflection, out, dx, dy, dz, nx, ny, nz)) {
            return;
        }
        if (!direct.along(x, y, z, lobeDirection.x, lobeDirection.y, lobeDirection.z, plane)) {
            return;
        }
        double density = pupilDensity(x, y, z, nx, ny, nz);
        byDirection = direct.transmitted * weighed(reflection, out, lobeDirection.in, lobeDirection.between, density);
        lobeIncidence = byDirection > 0
                ? (lobeIncidence * lobeValue + lobeDirection.in * byDirection) / (lobeValue + byDirection)
                : lobeIncidence;
        lobeValue += byDirection;
    }

    /** Pi times the BRDF of the lobes over the sum of both densities. */
    private double weighed(Reflection reflection, double out, double in, double between, double pupilDensity) {
        double density = pupilDensity + reflection.lobeDensity(out, in, between);
        return Math.PI * reflection.lobe(in, out, between) / (density * reference);
    }

    /** The density with which the direction just looked in would have been drawn by the pupil. */
    private double pupilDensity(double x, double y, double z, double nx, double ny, double nz) {
        double height = pupil.height(x, y, z);
        if (pupil.fillsTheSky(height)) {
            return 1 / Math.PI;
        }
        double facing = nx * direct.toX + ny * direct.toY + nz * direct.toZ;
        double squared = direct.toX * direct.toX + direct.toY * direct.toY + direct.toZ * direct.toZ;
        if (pupil.window != null) {
            return Math.sqrt(squared) / (pupil.area * facing * direct.solidAngle);
        }
        return squared * squared / (pupil.area * facing * height);
    }

    private double length() {
        return Math.sqrt(direct.toX * direct.toX + direct.toY * direct.toY + direct.toZ * direct.toZ);
    }

    private static double cosine(double value) {
        return Math.min(1, Math.max(0, value));
    }
}
