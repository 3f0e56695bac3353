package darkrim.light;

import darkrim.reflection.Reflection;
import darkrim.scene.Scene;
import darkrim.scene.Surface;
import darkrim.trace.FacetTree;
import darkrim.trace.Ray;
import darkrim.trace.StartPoints;
import org.apache.commons.rng.UniformRandomProvider;

/**
 * One-sample estimates of the once-reflected irradiance at a point, in units of the reference irradiance, traced back from the receiver so
 * that a narrow strip is sampled as well as a wide plate.
 *
 * <p>A cosine-distributed ray looks for the reflecting point. There, what scatters with a BRDF f sends f E from a small source that gives the
 * irradiance E, so the sample is pi f times a sample of the direct irradiance (next-event estimation, Kajiya, "The rendering equation", SIGGRAPH
 * 1986). Lobes are sampled twice, by a point of the pupil and by a direction of the lobe, each weighted by its share of both densities (balance
 * heuristic, Veach and Guibas, "Optimally combining sampling techniques for Monte Carlo rendering", SIGGRAPH 1995). Flat mirrors are
 * sampled through the image of the pupil behind them (image method, any optics text); other mirrors by following the ray on.
 *
 * <p>A surface that is known to be dark sends nothing and costs no second ray.
 *
 * <p>Mutable, one for each thread. The parts of the last sample stand in the fields.
 */
final class ReflectedLight {
    /** No link: whatever is met counts. */
    private static final int ANY = -1;

    private final Scene scene;
    private final FacetTree tree;
    private final PupilSource pupil;
    private final StartPoints starts;
    private final Reflectors reflectors;
    private final boolean[] lit;
    private final DirectLight direct;
    private final Directions directions = new Directions();
    private final Ray ray = new Ray();
    private final double[] placed = new double[3];
    private final LobeLight lobes;
    private final ImageLight image;
    private final double perReference;
    /** Cosine of the angle at which the light that was gathered left its surface. */
    private double leaving;

    /** The cell at which the last mean was gathered, where points are drawn by links; what came by an image came where the point is now. */
    int gatheredCell;

    /** The surface that the gathered ray met, or -1, and what came by what scatters broadly, by its lobes and by its mirror part. */
    int gatheredVia;

    double diffuseValue;
    double lobeValue;
    double followedValue;

    /** Cosines of the angle at which light struck the surface, each meaningful where something came. */
    double diffuseIncidence;

    double lobeIncidence;
    double followedIncidence;

    /** The surface that showed the image of the pupil, or -1, and what came by it. */
    int imageVia;

    double imageValue;
    double imageIncidence;

    ReflectedLight(
            Scene scene, FacetTree tree, PupilSource pupil, StartPoints starts, Reflectors reflectors, boolean[] lit) {
        this.scene = scene;
        this.tree = tree;
        this.pupil = pupil;
        this.starts = starts;
        this.reflectors = reflectors;
        this.lit = lit;
        this.direct = new DirectLight(scene, tree, pupil);
        this.lobes = new LobeLight(scene, pupil, direct);
        this.image = new ImageLight(scene, tree, pupil, starts, lit);
        this.perReference = 1 / scene.referenceIrradiance();
    }

    /** A sample of the mean relative once-reflected irradiance over the receiver that a sampler draws points of. */
    double sampleMean(UniformRandomProvider random, PointSampler point) {
        if (reflectors.links().isEmpty()) {
            point.next(random);
            return sample(random, point);
        }
        gatherByLink(random, point, reflectors.links().get());
        gatheredCell = point.cell;
        if (reflectors.images().count() > 0) {
            point.next(random);
        }
        return withImage(random, point);
    }

    /** A sample of the relative once-reflected irradiance at a drawn point. */
    double sample(UniformRandomProvider random, PointSampler point) {
        directions.cosine(random, point.nx, point.ny, point.nz);
        gather(random, point, directions.x, directions.y, directions.z, ANY);
        return withImage(random, point);
    }

    private double withImage(UniformRandomProvider random, PointSampler point) {
        imageVia = -1;
        imageValue = 0;
        if (reflectors.images().count() > 0) {
            sampleImage(random, point);
        }
        return diffuseValue + lobeValue + followedValue + imageValue;
    }

    /** Draws a link, a point of its receiving piece, and the way to look from there. */
    private void gatherByLink(UniformRandomProvider random, PointSampler point, LightLinks links) {
        int link = links.at(random.nextDouble());
        point.next(random, links, link);
        double share;
        if (links.isWide(link)) {
            directions.cosine(random, point.nx, point.ny, point.nz);
            gather(random, point, directions.x, directions.y, directions.z, link);
            share = links.factor(link);
        } else {
            share = links.factor(link) * gatherToward(random, point, links, link);
        }
        diffuseValue *= share;
        lobeValue *= share;
    }

    /** Looks at a point of the sending piece; the cosines there and here over pi and the square of the distance, 1/mm2. */
    private double gatherToward(UniformRandomProvider random, PointSampler point, LightLinks links, int link) {
        links.placeFrom(link, random.nextDouble(), random.nextDouble(), placed);
        double dx = placed[0] - point.x;
        double dy = placed[1] - point.y;
        double dz = placed[2] - point.z;
        double squared = dx * dx + dy * dy + dz * dz;
        double length = Math.sqrt(squared);
        double here = (point.nx * dx + point.ny * dy + point.nz * dz) / length;
        if (!(here > 0)) {
            nothing();
            return 0;
        }
        gather(random, point, dx / length, dy / length, dz / length, link);
        return here * leaving / (Math.PI * squared);
    }

    private void nothing() {
        gatheredVia = -1;
        diffuseValue = 0;
        lobeValue = 0;
        followedValue = 0;
        leaving = 0;
    }

    /** Gathers from one direction; by a link only what its piece sends. */
    private void gather(UniformRandomProvider random, PointSampler point, double dx, double dy, double dz, int link) {
        nothing();
        ray.set(point.x, point.y, point.z, dx, dy, dz, Double.POSITIVE_INFINITY, point.plane);
        int facet = tree.nearest(ray);
        if (facet < 0) {
            return;
        }
        int met = scene.surfaceMet(facet, dx, dy, dz);
        if (met == Scene.INSIDE || !lit[met]) {
            return;
        }
        Surface surface = scene.surfaces().get(met);
        Reflection reflection = surface.finish().reflection();
        if (!reflection.reflects() || (link != ANY && !isBy(link, facet, met))) {
            return;
        }
        gatheredVia = met;
        double side = surface.back() ? -1 : 1;
        double nx = side * scene.normal(facet, 0);
        double ny = side * scene.normal(facet, 1);
        double nz = side * scene.normal(facet, 2);
        placeHit(facet, !surface.back());
        double x = placed[0];
        double y = placed[1];
        double z = placed[2];
        int plane = scene.plane(facet);
        double back = -(dx * nx + dy * ny + dz * nz);
        if (reflection.scatters()) {
            double sample = direct.sample(random, x, y, z, nx, ny, nz, plane);
            if (reflection.isPlain()) {
                diffuseValue = reflection.lambertian() * sample;
                diffuseIncidence = direct.incidence(nx, ny, nz);
            } else {
                lobes.gather(random, reflection, sample, x, y, z, nx, ny, nz, dx, dy, dz, plane);
                diffuseValue = lobes.broadValue;
                lobeValue = lobes.lobeValue;
                diffuseIncidence = lobes.broadIncidence;
                lobeIncidence = lobes.lobeIncidence;
            }
        }
        leaving = back;
        if (link == ANY && reflection.hasMirror() && !image.finds(reflectors.images(), plane, pupil.height(x, y, z))) {
            if (direct.along(x, y, z, dx + 2 * back * nx, dy + 2 * back * ny, dz + 2 * back * nz, plane)) {
                followedValue = reflection.mirror(back) * Math.PI * direct.transmitted * perReference;
                followedIncidence = back;
            }
        }
    }

    private boolean isBy(int link, int facet, int met) {
        LightLinks links = reflectors.links().orElseThrow();
        return met == links.surface(link)
                && facet == links.pieces().facet(links.from(link))
                && (!links.isWide(link) || links.isFrom(link, ray.weightA(), ray.weightB()));
    }

    private void sampleImage(UniformRandomProvider random, PointSampler point) {
        ImagePlanes planes = reflectors.images();
        int pick = planes.count() == 1 ? 0 : reflectors.pickImage(random.nextDouble());
        image.sample(
                random,
                planes,
                pick,
                reflectors.perChance(pick),
                point.x,
                point.y,
                point.z,
                point.nx,
                point.ny,
                point.nz,
                point.plane);
        imageVia = image.via;
        imageValue = image.value;
        imageIncidence = image.incidence;
    }

    /** Places the point that the ray met, from the corners of the facet: its error does not grow with the ray's length. */
    private void placeHit(int facet, boolean front) {
        starts.place(facet, ray.weightA(), ray.weightB(), front, placed);
    }
}
