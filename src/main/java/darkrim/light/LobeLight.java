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
    private final double[] drawn = new double[2];

    /** What came by what scatters broadly, and by the lobes, for radiance 1 and in units of the reference irradiance. */
    double broadValue;

    double lobeValue;

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
        double out = cosine(-(dx * nx + dy * ny + dz * nz));
        if (sample > 0) {
            double length = length();
            double in = cosine((direct.toX * nx + direct.toY * ny + direct.toZ * nz) / length);
            broadValue = sample * reflection.broad(in, out);
            if (!reflection.lobes().isEmpty()) {
                double between = -(direct.toX * dx + direct.toY * dy + direct.toZ * dz) / length;
                lobeValue = weighed(reflection, out, in, between, 1 / (sample * reference));
            }
        }
        if (reflection.lobes().isEmpty()) {
            return;
        }
        double u = random.nextDouble();
        double v = random.nextDouble();
        if (!reflection.sampleLobe(out, u, v, drawn)) {
            return;
        }
        // Along the surface: t the way on of the ray that came, b across it.
        double tx = dx + out * nx;
        double ty = dy + out * ny;
        double tz = dz + out * nz;
        double size = Math.sqrt(tx * tx + ty * ty + tz * tz);
        if (!(size > 1e-9)) {
            double sign = Math.copySign(1, nz);
            double p = -1 / (sign + nz);
            tx = 1 + sign * nx * nx * p;
            ty = sign * nx * ny * p;
            tz = -sign * nx;
            size = 1;
        }
        tx /= size;
        ty /= size;
        tz /= size;
        double up = Math.sqrt(Math.max(0, 1 - drawn[0] * drawn[0] - drawn[1] * drawn[1]));
        double ix = drawn[0] * tx + drawn[1] * (ny * tz - nz * ty) + up * nx;
        double iy = drawn[0] * ty + drawn[1] * (nz * tx - nx * tz) + up * ny;
        double iz = drawn[0] * tz + drawn[1] * (nx * ty - ny * tx) + up * nz;
        if (!(up > 0) || !direct.along(x, y, z, ix, iy, iz, plane)) {
            return;
        }
        double between = -(ix * dx + iy * dy + iz * dz);
        lobeValue += weighed(reflection, out, cosine(up), between, pupilDensity(x, y, z, nx, ny, nz));
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
        return squared * squared / (pupil.area * facing * height);
    }

    private double length() {
        return Math.sqrt(direct.toX * direct.toX + direct.toY * direct.toY + direct.toZ * direct.toZ);
    }

    private static double cosine(double value) {
        return Math.min(1, Math.max(0, value));
    }
}
