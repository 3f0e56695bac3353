package darkrim.light;

import darkrim.reflection.Reflection;
import darkrim.scene.Scene;
import darkrim.scene.Warmth;
import darkrim.trace.FacetTree;
import darkrim.trace.Ray;
import darkrim.trace.StartPoints;
import org.apache.commons.rng.UniformRandomProvider;

/**
 * One-sample estimates of the warm light that a surface reflects one way, of all orders: the path is followed back from reflection to reflection to
 * where the light was emitted (Kajiya, "The rendering equation", SIGGRAPH 1986). The first reflection weighs its reflectance; at each later one
 * the path goes on with a probability that is the reflectance there, and otherwise ends in what is emitted there. Among surfaces of one temperature
 * that emit all they do not reflect, every Lambertian or mirror path brings the radiance of a black body exactly.
 *
 * <p>A path that does not end counts as if it ended at the warmest: never too little.
 *
 * <p>Mutable, one for each thread. The values of the last path stand in the fields.
 */
final class WarmPath {
    /** Of reflections off a surface that reflects 0.99 at every angle, one path in 6e8 goes on for so long. */
    private static final int MOST_REFLECTIONS = 2000;

    private final Scene scene;
    private final FacetTree tree;
    private final StartPoints starts;
    private final Warmth warmth;
    private final Reflectances reflectances;
    private final DirectLight direct;
    private final Directions directions = new Directions();
    private final Ray ray = new Ray();
    private final double[] placed = new double[3];
    private final LobeDirection lobeDirection = new LobeDirection();
    private double x;
    private double y;
    private double z;
    private double dx;
    private double dy;
    private double dz;
    private double nx;
    private double ny;
    private double nz;

    /** Photon radiance that the path brings, photons/(s m2 sr). */
    double photons;

    /** Radiance that it brings, W/(m2 sr). */
    double watts;

    WarmPath(
            Scene scene,
            FacetTree tree,
            StartPoints starts,
            Warmth warmth,
            Reflectances reflectances,
            DirectLight direct) {
        this.scene = scene;
        this.tree = tree;
        this.starts = starts;
        this.warmth = warmth;
        this.reflectances = reflectances;
        this.direct = direct;
    }

    /**
     * Follows what a surface reflects toward where a ray came from.
     *
     * @param met number of the surface that the ray met
     * @param facet the facet that it met
     * @param hit the ray
     * @param fromX its unit direction
     */
    void follow(UniformRandomProvider random, int met, int facet, Ray hit, double fromX, double fromY, double fromZ) {
        photons = 0;
        watts = 0;
        dx = fromX;
        dy = fromY;
        dz = fromZ;
        int surface = met;
        int at = facet;
        turnTo(surface, at, hit);
        double cosine = cosine();
        double weight = reflectances.total(surface, cosine);
        for (int i = 0; i < MOST_REFLECTIONS && weight > 0; i++) {
            weight *= reflect(random, surface, cosine);
            if (!(weight > 0)) {
                return;
            }
            int plane = scene.plane(at);
            ray.set(x, y, z, dx, dy, dz, Double.POSITIVE_INFINITY, plane);
            at = tree.nearest(ray);
            if (at < 0) {
                boolean pupil = direct.along(x, y, z, dx, dy, dz, plane);
                end(
                        weight,
                        pupil ? warmth.pupilPhotons() : warmth.surroundingsPhotons(),
                        pupil ? warmth.pupilWatts() : warmth.surroundingsWatts());
                return;
            }
            surface = scene.surfaceMet(at, dx, dy, dz);
            if (surface == Scene.INSIDE) {
                break;
            }
            turnTo(surface, at, ray);
            cosine = cosine();
            double reflected = reflectances.total(surface, cosine);
            if (random.nextDouble() >= reflected) {
                double emitted = warmth.emissivity(surface, reflected) / (1 - reflected);
                end(weight * emitted, warmth.photons(surface), warmth.watts(surface));
                return;
            }
        }
        end(weight, warmth.mostPhotons(), warmth.mostWatts());
    }

    private void end(double weight, double photonRadiance, double radiance) {
        photons = weight * photonRadiance;
        watts = weight * radiance;
    }

    /** Places the point that a ray met and its normal, on the side from which it came. */
    private void turnTo(int surface, int facet, Ray hit) {
        boolean front = !scene.surfaces().get(surface).back();
        double side = front ? 1 : -1;
        nx = side * scene.normal(facet, 0);
        ny = side * scene.normal(facet, 1);
        nz = side * scene.normal(facet, 2);
        starts.place(facet, hit.weightA(), hit.weightB(), front, placed);
        x = placed[0];
        y = placed[1];
        z = placed[2];
    }

    private double cosine() {
        return Math.min(1, Math.max(0, -(dx * nx + dy * ny + dz * nz)));
    }

    /** Draws the way from which the light came; gives its BRDF times the cosine over the density, in units of the reflectance. */
    private double reflect(UniformRandomProvider random, int surface, double out) {
        Reflection reflection = reflectances.of(surface);
        double broad = reflection.broadReflectance(out);
        double mirror = reflection.mirror(out);
        double lobe = reflectances.ofLobes(surface, out);
        double pick = random.nextDouble() * (broad + mirror + lobe);
        if (pick < broad) {
            directions.cosine(random, nx, ny, nz);
            dx = directions.x;
            dy = directions.y;
            dz = directions.z;
            return reflection.isPlain() ? 1 : reflection.broad(-cosineAway(), out) / broad;
        }
        if (pick < broad + mirror || reflection.lobes().isEmpty()) {
            dx += 2 * out * nx;
            dy += 2 * out * ny;
            dz += 2 * out * nz;
            return 1;
        }
        return byLobe(random, reflection, out) / lobe;
    }

    private double cosineAway() {
        return Math.max(-1, Math.min(0, -(dx * nx + dy * ny + dz * nz)));
    }

    private double byLobe(UniformRandomProvider random, Reflection reflection, double out) {
        if (!lobeDirection.draw(random, reflection, out, dx, dy, dz, nx, ny, nz)) {
            return 0;
        }
        dx = lobeDirection.x;
        dy = lobeDirection.y;
        dz = lobeDirection.z;
        double in = lobeDirection.in;
        double between = lobeDirection.between;
        return reflection.lobe(in, out, between) / reflection.lobeDensity(out, in, between);
    }
}
