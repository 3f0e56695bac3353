package darkrim.light;

import darkrim.reflection.Reflection;
import org.apache.commons.rng.UniformRandomProvider;

/**
 * Draws whether a walk goes on from a surface, by which part of its finish and in what direction; the last draw stands in the fields. Mutable, one
 * for each thread.
 *
 * <p>A part is drawn in proportion to what it reflects, and one direction of it; the weight of the walk is multiplied by what that part throws
 * there over the chance of drawing it. The walk goes on with a chance of the square root of what the surface reflects, its weight divided by that
 * chance (Russian roulette: Arvo and Kirk, "Particle transport and image synthesis", SIGGRAPH 1990): with the reflectance itself, dark parts would
 * hardly ever show a second reflection.
 */
final class NextDirection {
    private final LobeDirection lobeDirection = new LobeDirection();
    private final Directions directions = new Directions();

    /** The part of the finish by which the walk goes on. */
    Reflector.Part part;

    /** Unit direction in which it goes on. */
    double x;

    double y;
    double z;
    /** Its weight from there. */
    double weight;

    /**
     * A draw multiplies the weight of a walk by no more than this, where all is scattered broadly: broad / sqrt(R), R the reflectance at the angle
     * at which the ray came, and broad is at most its peak times R.
     */
    static double greatestFactor(Reflection reflection) {
        return reflection.peakOfBroad() * Math.sqrt(reflection.greatestBroadReflectance());
    }

    /**
     * Draws.
     *
     * @param out cosine of the angle between the ray that came and the normal, above 0
     * @param dx unit direction of the ray that came
     * @param nx the unit normal on its side
     * @param before weight of the walk so far
     * @return whether it goes on
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
            double nz,
            double before) {
        double mirror = reflection.mirror(out);
        double broad = reflection.broadReflectance(out);
        double thrown = reflection.lobes().isEmpty() ? 0 : reflection.greatestLobeReflectance();
        double all = mirror + broad + thrown;
        if (!(all > 0)) {
            return false;
        }
        double goesOn = Math.min(1, Math.sqrt(all));
        if (goesOn < 1 && random.nextDouble() >= goesOn) {
            return false;
        }
        weight = before * (all / goesOn);
        double pick = mirror == all || broad == all ? 0 : random.nextDouble() * all;
        if (pick < mirror) {
            part = Reflector.Part.MIRROR;
            x = dx + 2 * out * nx;
            y = dy + 2 * out * ny;
            z = dz + 2 * out * nz;
        } else if (pick < mirror + broad) {
            part = Reflector.Part.DIFFUSE;
            directions.cosine(random, nx, ny, nz);
            x = directions.x;
            y = directions.y;
            z = directions.z;
            double in = Math.min(1, Math.max(0, x * nx + y * ny + z * nz));
            weight *= reflection.broad(in, out) / broad;
        } else {
            part = Reflector.Part.LOBE;
            if (!lobeDirection.draw(random, reflection, out, dx, dy, dz, nx, ny, nz)) {
                return false;
            }
            x = lobeDirection.x;
            y = lobeDirection.y;
            z = lobeDirection.z;
            double in = lobeDirection.in;
            double between = lobeDirection.between;
            weight *= reflection.lobe(in, out, between) / (thrown * reflection.lobeDensity(out, in, between));
        }
        return true;
    }
}
