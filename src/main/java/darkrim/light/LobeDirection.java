package darkrim.light;

import darkrim.reflection.Reflection;
import org.apache.commons.rng.UniformRandomProvider;

/** Directions drawn by the lobes of a finish; the last one stands in the fields, unit length. Mutable, one for each thread. */
final class LobeDirection {
    private final double[] drawn = new double[2];

    double x;
    double y;
    double z;

    /** Cosine of its angle to the normal. */
    double in;

    /** Cosine of its angle to the way back along the ray. */
    double between;

    /**
     * Draws a direction for a ray that comes to a point.
     *
     * @param out cosine of the angle between the ray and the normal
     * @param dx unit direction of the ray
     * @param nx the unit normal on its side
     * @return whether there is one; otherwise nothing is reflected
     */
    boolean draw(
            UniformRandomProvider random,
            Reflection reflection,
            double out,
            double dx,
            double dy,
            double dz,
            double nx,
            double ny,
            double nz) {
        if (!reflection.sampleLobe(out, random.nextDouble(), random.nextDouble(), drawn)) {
            return false;
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
        x = drawn[0] * tx + drawn[1] * (ny * tz - nz * ty) + up * nx;
        y = drawn[0] * ty + drawn[1] * (nz * tx - nx * tz) + up * ny;
        z = drawn[0] * tz + drawn[1] * (nx * ty - ny * tx) + up * nz;
        if (!(up > 0)) {
            return false;
        }
        in = Math.min(1, up);
        between = -(x * dx + y * dy + z * dz);
        return true;
    }
}
