package darkrim.light;

import darkrim.geom.UnitCircle;
import org.apache.commons.rng.UniformRandomProvider;

/** Random directions about a normal; the last one stands in the fields, unit length. Mutable, one for each thread. */
final class Directions {
    double x;
    double y;
    double z;

    /** A direction with density cos(theta) / pi about a unit normal (Malley's method: a uniform disc lifted to the hemisphere). */
    void cosine(UniformRandomProvider random, double nx, double ny, double nz) {
        double radius2 = random.nextDouble();
        cosine(radius2, random.nextDouble(), nx, ny, nz);
    }

    /**
     * The direction that two numbers from 0 to 1 stand for, of the same density: so that strata of both can be drawn from.
     *
     * @param radius2 square of the sine of the angle to the normal
     * @param turn about the normal, in turns
     */
    void cosine(double radius2, double turn, double nx, double ny, double nz) {
        double radius = Math.sqrt(radius2);
        turn(nx, ny, nz, radius * UnitCircle.cosine(turn), radius * UnitCircle.sine(turn), Math.sqrt(1 - radius2));
    }

    /** A direction uniform over the cone about a unit axis whose half angle has this cosine. */
    void cone(UniformRandomProvider random, double nx, double ny, double nz, double cosine) {
        double c = 1 - random.nextDouble() * (1 - cosine);
        double s = Math.sqrt(Math.max(0, 1 - c * c));
        double turn = random.nextDouble();
        turn(nx, ny, nz, s * UnitCircle.cosine(turn), s * UnitCircle.sine(turn), c);
    }

    /**
     * From the frame about the normal to the layout. The frame is that of Duff et al., "Building an Orthonormal Basis, Revisited", Journal
     * of Computer Graphics Techniques 6(1), 2017: no branch, no singularity.
     */
    private void turn(double nx, double ny, double nz, double a, double b, double c) {
        double sign = Math.copySign(1, nz);
        double p = -1 / (sign + nz);
        double q = nx * ny * p;
        x = a * (1 + sign * nx * nx * p) + b * q + c * nx;
        y = a * sign * q + b * (sign + ny * ny * p) + c * ny;
        z = -a * sign * nx - b * ny + c * nz;
    }
}
