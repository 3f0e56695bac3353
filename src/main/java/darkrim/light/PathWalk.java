package darkrim.light;

import darkrim.reflection.Reflection;
import darkrim.scene.Scene;
import darkrim.scene.Surface;
import darkrim.trace.FacetTree;
import darkrim.trace.Ray;
import darkrim.trace.StartPoints;
import java.util.Arrays;
import org.apache.commons.rng.UniformRandomProvider;

/**
 * Walks back from a receiver, from surface to surface, and takes at each a sample of the light that the pupil sends by it: unbiased one-sample
 * estimates of the irradiance after 0, 1, 2 ... reflections, in units of the reference irradiance.
 *
 * <p>The law is the integral equation of light transport, one term of its series for each order (Kajiya, "The rendering equation",
 * SIGGRAPH 1986). At each surface met, what scatters takes a point of the pupil, lobes a direction of their own besides ({@link LobeLight}), and
 * mirrors the direction in which they look. Then the walk goes on, or ends, as {@link NextDirection} draws.
 *
 * <p>The receiver and whatever scatters broadly also look at the image of the pupil in a flat mirror ({@link ImageLight}). A walk that came
 * from there and meets that mirror leaves out what the image shows, so no way is counted twice.
 *
 * <p>Mutable, one for each thread. Allocates nothing for a sample.
 */
final class PathWalk {
    private final Scene scene;
    private final FacetTree tree;
    private final PupilSource pupil;
    private final StartPoints starts;
    private final LitMirrors mirrors;
    private final int most;
    private final PathSums sums;
    private final PathListener listener;
    private final DirectLight direct;
    private final LobeLight lobes;
    private final ImageLight image;
    private final NextDirection next = new NextDirection();
    private final Directions directions = new Directions();
    private final Ray ray = new Ray();
    private final double[] placed = new double[3];
    private final int[] choices;
    private final TracedPath path;
    private final double perReference;

    /** What the last sample found of each order. */
    final double[] found;

    private UniformRandomProvider random;
    private double x;
    private double y;
    private double z;
    private double nx;
    private double ny;
    private double nz;
    private int plane;
    /** Unit direction of the walk. */
    private double dx;

    private double dy;
    private double dz;
    private double weight;
    /** The node of the surfaces met before the one that the walk has reached. */
    private int node;
    /** Whether the walk set out from the receiver or by broad scatter, which look at images too. */
    private boolean lookedAtImages;

    /**
     * @param most how many reflections are followed, at least 1
     * @param sums takes what came by each path
     * @param listener is told of every way found
     */
    PathWalk(
            Scene scene,
            FacetTree tree,
            PupilSource pupil,
            StartPoints starts,
            LitMirrors mirrors,
            int most,
            PathSums sums,
            PathListener listener) {
        this.scene = scene;
        this.tree = tree;
        this.pupil = pupil;
        this.starts = starts;
        this.mirrors = mirrors;
        this.most = most;
        this.sums = sums;
        this.listener = listener;
        this.direct = new DirectLight(scene, tree, pupil);
        this.lobes = new LobeLight(scene, pupil, direct);
        this.image = new ImageLight(scene, tree, pupil, starts, Transport.allLit(scene));
        this.choices = new int[mirrors.images().count()];
        this.path = new TracedPath(most);
        this.perReference = 1 / scene.referenceIrradiance();
        this.found = new double[most + 1];
    }

    /** Takes a sample at a drawn point. */
    void sample(UniformRandomProvider stream, PointSampler point) {
        random = stream;
        sums.next();
        Arrays.fill(found, 0);
        x = point.x;
        y = point.y;
        z = point.z;
        nx = point.nx;
        ny = point.ny;
        nz = point.nz;
        plane = point.plane;
        path.place(0, point.facet, -1, x, y, z);
        weight = 1;
        node = sums.root();
        found[0] = direct.sample(random, x, y, z, nx, ny, nz, plane);
        lookAtImages(0, node);
        lookedAtImages = true;
        directions.cosine(random, nx, ny, nz);
        dx = directions.x;
        dy = directions.y;
        dz = directions.z;
        int order = 1;
        while (order <= most && step(order)) {
            order++;
        }
    }

    /** Goes on to the next surface and takes what it sends; whether the walk goes on from there. */
    private boolean step(int order) {
        ray.set(x, y, z, dx, dy, dz, Double.POSITIVE_INFINITY, plane);
        int facet = tree.nearest(ray);
        if (facet < 0 && pupil.window != null && dz > 0) {
            return turnAtWindow(order);
        }
        int met = facet < 0 ? Scene.INSIDE : scene.surfaceMet(facet, dx, dy, dz);
        if (met == Scene.INSIDE) {
            return false;
        }
        Surface surface = scene.surfaces().get(met);
        Reflection reflection = surface.finish().reflection();
        if (!reflection.reflects()) {
            return false;
        }
        double side = surface.back() ? -1 : 1;
        nx = side * scene.normal(facet, 0);
        ny = side * scene.normal(facet, 1);
        nz = side * scene.normal(facet, 2);
        starts.place(facet, ray.weightA(), ray.weightB(), !surface.back(), placed);
        x = placed[0];
        y = placed[1];
        z = placed[2];
        plane = scene.plane(facet);
        path.place(order, facet, met, x, y, z);
        double out = Math.min(1, -(dx * nx + dy * ny + dz * nz));
        if (!(out > 0)) {
            return false;
        }
        gather(order, met, reflection, out);
        if (order == most) {
            return false;
        }
        if (reflection.isBroad()) {
            path.part(order, Reflector.Part.DIFFUSE);
            lookAtImages(order, sums.child(node, met, Reflector.Part.DIFFUSE), reflection, out);
        }
        return turn(order, met, reflection, out);
    }

    /**
     * Goes back down from the window, with the chance of the square root of what it throws back. It scatters nothing, and no light of the beam
     * comes down from it but what is counted as passing: nothing is taken here.
     */
    private boolean turnAtWindow(int order) {
        double reflectance = pupil.window.reflectance(dz);
        double goesOn = Math.sqrt(reflectance);
        if (!(order < most && random.nextDouble() < goesOn)) {
            return false;
        }
        weight *= reflectance / goesOn;
        double level = Math.sqrt(dx * dx + dy * dy);
        double way = (pupil.window.bottom() - z) / dz;
        if (level > 0) {
            int trips = pupil.window.roundTrips(dz, random.nextDouble(), random.nextDouble());
            way += trips * pupil.window.roundTrip(level / dz) / level;
        }
        x += way * dx;
        y += way * dy;
        z = pupil.window.bottom();
        dz = -dz;
        plane = Ray.NO_PLANE;
        lookedAtImages = false;
        int window = scene.surfaces().size();
        path.place(order, -1, window, x, y, z);
        path.part(order, Reflector.Part.MIRROR);
        node = sums.child(node, window, Reflector.Part.MIRROR);
        return true;
    }

    /** Takes what the pupil sends by the surface reached, without another reflection. */
    private void gather(int order, int met, Reflection reflection, double out) {
        if (reflection.scatters()) {
            double sample = direct.sample(random, x, y, z, nx, ny, nz, plane);
            double toX = direct.toX;
            double toY = direct.toY;
            double toZ = direct.toZ;
            if (reflection.isPlain()) {
                add(order, met, Reflector.Part.DIFFUSE, reflection.lambertian() * sample, toX, toY, toZ);
            } else {
                lobes.gather(random, reflection, sample, x, y, z, nx, ny, nz, dx, dy, dz, plane);
                double byPoint = lobes.lobeValue - lobes.byDirection;
                add(order, met, Reflector.Part.DIFFUSE, lobes.broadValue, toX, toY, toZ);
                add(order, met, Reflector.Part.LOBE, byPoint, toX, toY, toZ);
                add(order, met, Reflector.Part.LOBE, lobes.byDirection, direct.toX, direct.toY, direct.toZ);
            }
        }
        if (reflection.hasMirror()
                && !(lookedAtImages && image.finds(mirrors.images(), plane, pupil.height(x, y, z)))
                && direct.along(x, y, z, dx + 2 * out * nx, dy + 2 * out * ny, dz + 2 * out * nz, plane)) {
            double value = reflection.mirror(out) * Math.PI * direct.transmitted * perReference;
            add(order, met, Reflector.Part.MIRROR, value, direct.toX, direct.toY, direct.toZ);
        }
    }

    /** Goes on in a direction that one part of the finish draws; false where the walk ends. */
    private boolean turn(int order, int met, Reflection reflection, double out) {
        if (!next.draw(random, reflection, out, dx, dy, dz, nx, ny, nz, weight)) {
            return false;
        }
        dx = next.x;
        dy = next.y;
        dz = next.z;
        weight = next.weight;
        lookedAtImages = next.part == Reflector.Part.DIFFUSE;
        path.part(order, next.part);
        node = sums.child(node, met, next.part);
        return weight > 0;
    }

    private void lookAtImages(int order, int from) {
        lookAtImages(order, from, null, 0);
    }

    /**
     * Takes what one flat mirror throws on the point that the walk has reached.
     *
     * @param from the node of that point
     * @param reflection the finish there; null on the receiver
     */
    private void lookAtImages(int order, int from, Reflection reflection, double out) {
        int count = mirrors.before(x, y, z, choices);
        if (count == 0) {
            return;
        }
        int pick = choices[count == 1 ? 0 : (int) (random.nextDouble() * count)];
        image.sample(random, mirrors.images(), pick, count, x, y, z, nx, ny, nz, plane);
        if (image.value > 0) {
            double broad = reflection == null ? 1 : reflection.broad(image.facing, out);
            path.place(order + 1, image.facet, image.via, image.x, image.y, image.z);
            path.part(order + 1, Reflector.Part.MIRROR);
            int reached = sums.child(from, image.via, Reflector.Part.MIRROR);
            double value = weight * broad * image.value;
            if (value > 0) {
                path.end(order + 1, image.onPupilX, image.onPupilY, image.onPupilZ);
                found(order + 1, reached, value);
            }
        }
    }

    private void add(int order, int met, Reflector.Part part, double sample, double toX, double toY, double toZ) {
        if (!(sample > 0)) {
            return;
        }
        path.part(order, part);
        path.end(order, x + toX, y + toY, z + toZ);
        found(order, sums.child(node, met, part), weight * sample);
    }

    private void found(int order, int reached, double value) {
        found[order] += value;
        sums.add(reached, value);
        listener.found(path, reached, value);
    }
}
