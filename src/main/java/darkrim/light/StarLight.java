package darkrim.light;

import darkrim.geom.UnitCircle;
import darkrim.reflection.Reflection;
import darkrim.sampling.Streams;
import darkrim.scene.Scene;
import darkrim.scene.Surface;
import darkrim.trace.FacetTree;
import darkrim.trace.Ray;
import darkrim.trace.StartPoints;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.apache.commons.rng.UniformRandomProvider;

/**
 * Follows the light of a star from the pupil. A star fills the pupil evenly, dPhi = (Phi / A) dA, and sends from each of its points one ray toward
 * its focus; so the light is followed forward, since nothing that is gathered from a receiver would find the focus.
 *
 * <p>A sample is a point of the pupil, one from each of equal cells of it, and the first thing that its ray meets. What that reflects to a receiver
 * is sampled twice, by an even point of the receiver and by a direction that the finish draws, weighted by the balance heuristic over
 * projected solid angle (Veach and Guibas, "Optimally combining sampling techniques for Monte Carlo rendering", SIGGRAPH 1995): no sample
 * grows without bound where receiver and reflecting surface meet. The mirror part has one direction and is followed in it, in full.
 *
 * <p>The cells of the pupil make the true error smaller than the standard error that is stated, never larger (stratified sampling in
 * proportion, any text on sampling). Immutable; safe for use by many threads.
 */
public final class StarLight {
    private final Scene scene;
    private final FacetTree tree;
    private final PupilSource pupil;
    private final StartPoints starts;
    private final Streams streams;
    private final List<Surface> receivers;
    /** By surface number: which receiver it is, or -1. */
    private final int[] receiverOf;

    private final double bound;

    /**
     * @param scene the scene; the star comes through the pupil of its beam
     * @param tree the tree over its facets
     * @param receivers surfaces on which light is counted
     * @param seed seed of all random streams
     */
    public StarLight(Scene scene, FacetTree tree, List<Surface> receivers, long seed) {
        this.scene = scene;
        this.tree = tree;
        this.pupil = PupilSource.withoutWindow(scene.beam());
        this.starts = new StartPoints(scene.corners(), tree);
        this.streams = new Streams(seed);
        this.receivers = List.copyOf(receivers);
        receiverOf = new int[scene.surfaces().size()];
        Arrays.fill(receiverOf, -1);
        for (int i = 0; i < receivers.size(); i++) {
            receiverOf[receivers.get(i).index()] = i;
        }
        bound = scene.surfaces().stream()
                .map(surface -> surface.finish().reflection())
                .mapToDouble(each -> (receivers.size() + 1) * (each.greatestBroad() + each.greatestLobeWeight())
                        + each.greatestMirror(0, 1))
                .max()
                .orElse(0);
    }

    /** The surfaces on which light is counted. */
    public List<Surface> receivers() {
        return receivers;
    }

    /**
     * Follows one batch of a star's light; the same bits on any thread.
     *
     * @param focus where the light comes together, mm; in front of all of the pupil
     * @param batch number of the batch
     * @param across cells of the pupil along each of its two coordinates; a sample each
     * @throws IllegalArgumentException if the focus does not lie in front of the pupil
     */
    public StarTally batch(Vector3D focus, long batch, int across) {
        if (!(pupil.height(focus.getX(), focus.getY(), focus.getZ()) > 0)) {
            throw new IllegalArgumentException("the focus " + focus + " mm does not lie in front of the pupil");
        }
        UniformRandomProvider random =
                streams.stream("star " + focus.getX() + " " + focus.getY() + " " + focus.getZ(), batch);
        Walk walk = new Walk();
        for (int row = 0; row < across; row++) {
            for (int column = 0; column < across; column++) {
                walk.sample(
                        random, focus, (column + random.nextDouble()) / across, (row + random.nextDouble()) / across);
            }
        }
        return walk.tally((long) across * across);
    }

    /** Mutable, one for each batch. */
    private final class Walk {
        private final PointSampler[] points = receivers.stream()
                .map(surface -> new PointSampler(scene, starts, new Receiver.OnSurface(surface)))
                .toArray(PointSampler[]::new);
        private final Accumulator[] direct = accumulators();
        private final Accumulator[] once = accumulators();
        private final Accumulator total = new Accumulator();
        private final ReflectorSums by = new ReflectorSums(scene.surfaces().size());
        private final double[] arrived = new double[receivers.size()];
        private final double[] place = new double[2];
        private final double[] hit = new double[3];
        private final Directions directions = new Directions();
        private final Ray ray = new Ray();
        private double largest;

        // The ray that came, unit length, and the surface that it met.
        private double dx;
        private double dy;
        private double dz;
        private double nx;
        private double ny;
        private double nz;
        private double in;
        private int plane;
        private Reflection reflection;
        private double broad;
        private double lobes;
        private double mirror;

        private Accumulator[] accumulators() {
            return IntStream.range(0, receivers.size())
                    .mapToObj(i -> new Accumulator())
                    .toArray(Accumulator[]::new);
        }

        void sample(UniformRandomProvider random, Vector3D focus, double s, double t) {
            Arrays.fill(arrived, 0);
            broad = 0;
            lobes = 0;
            mirror = 0;
            int met = meet(focus, s, t);
            int straight = met < 0 ? -1 : receiverOf[met];
            if (met >= 0 && reflection.reflects()) {
                reflect(random);
                by.add(met, Reflector.Part.DIFFUSE, broad, in);
                by.add(met, Reflector.Part.LOBE, lobes, in);
                by.add(met, Reflector.Part.MIRROR, mirror, in);
            }
            double sum = broad + lobes + mirror;
            largest = Math.max(largest, sum);
            total.add(sum);
            for (int i = 0; i < arrived.length; i++) {
                once[i].add(arrived[i]);
                direct[i].add(i == straight ? 1 : 0);
            }
        }

        /** Sends a ray from a point of the pupil toward the focus and beyond; the surface that it meets, or -1. */
        private int meet(Vector3D focus, double s, double t) {
            pupil.outline.place(s, t, place);
            double x = pupil.cx + place[0] * pupil.ux + place[1] * pupil.vx;
            double y = pupil.cy + place[0] * pupil.uy + place[1] * pupil.vy;
            double z = pupil.cz + place[0] * pupil.uz + place[1] * pupil.vz;
            dx = focus.getX() - x;
            dy = focus.getY() - y;
            dz = focus.getZ() - z;
            double length = Math.sqrt(dx * dx + dy * dy + dz * dz);
            dx /= length;
            dy /= length;
            dz /= length;
            if (!pupil.passes(x, y, z, dx, dy, dz)) {
                return -1;
            }
            ray.set(x, y, z, dx, dy, dz, Double.POSITIVE_INFINITY, Ray.NO_PLANE);
            int facet = tree.nearest(ray);
            int met = facet < 0 ? Scene.INSIDE : scene.surfaceMet(facet, dx, dy, dz);
            if (met == Scene.INSIDE) {
                return -1;
            }
            Surface surface = scene.surfaces().get(met);
            reflection = surface.finish().reflection();
            double side = surface.back() ? -1 : 1;
            nx = side * scene.normal(facet, 0);
            ny = side * scene.normal(facet, 1);
            nz = side * scene.normal(facet, 2);
            in = Math.min(1, -(dx * nx + dy * ny + dz * nz));
            plane = scene.plane(facet);
            starts.place(facet, ray.weightA(), ray.weightB(), !surface.back(), hit);
            return met;
        }

        private void reflect(UniformRandomProvider random) {
            if (reflection.scatters()) {
                for (int i = 0; i < points.length; i++) {
                    points[i].next(random);
                    toward(i);
                }
            }
            if (reflection.isBroad()) {
                directions.cosine(random, nx, ny, nz);
                along(directions.x, directions.y, directions.z, true);
            }
            if (!reflection.lobes().isEmpty()) {
                drawLobe(random);
            }
            if (reflection.hasMirror()) {
                int receiver = receiverAlong(dx + 2 * in * nx, dy + 2 * in * ny, dz + 2 * in * nz);
                if (receiver >= 0) {
                    mirror = reflection.mirror(in);
                    arrived[receiver] += mirror;
                }
            }
        }

        /** Looks from the point met to the point that was drawn on a receiver. */
        private void toward(int receiver) {
            PointSampler point = points[receiver];
            double tx = point.x - hit[0];
            double ty = point.y - hit[1];
            double tz = point.z - hit[2];
            double squared = tx * tx + ty * ty + tz * tz;
            double length = Math.sqrt(squared);
            double out = (tx * nx + ty * ny + tz * nz) / length;
            double facing = -(tx * point.nx + ty * point.ny + tz * point.nz) / length;
            if (!(out > 0 && facing > 0)) {
                return;
            }
            ray.set(hit[0], hit[1], hit[2], tx, ty, tz, 1, plane);
            if (tree.blocked(ray)) {
                return;
            }
            double drawn = squared / (receivers.get(receiver).area() * out * facing);
            double between = -(tx * dx + ty * dy + tz * dz) / length;
            add(receiver, Math.min(1, out), between, drawn, true, true);
        }

        /** Looks from the point met in a direction that one of its two parts drew. */
        private void along(double tx, double ty, double tz, boolean byBroad) {
            int receiver = receiverAlong(tx, ty, tz);
            if (receiver < 0) {
                return;
            }
            double out = tx * nx + ty * ny + tz * nz;
            int facet = ray.facet();
            double facing =
                    Math.abs(tx * scene.normal(facet, 0) + ty * scene.normal(facet, 1) + tz * scene.normal(facet, 2));
            double distance = ray.distance();
            double drawn = distance * distance / (receivers.get(receiver).area() * out * facing);
            add(receiver, Math.min(1, out), -(tx * dx + ty * dy + tz * dz), drawn, byBroad, !byBroad);
        }

        /**
         * Adds what a direction brings to a receiver.
         *
         * @param drawn density with which the receiver's point draws it, over projected solid angle
         * @param withBroad whether what scatters broadly counts
         * @param withLobes whether lobes count
         */
        private void add(int receiver, double out, double between, double drawn, boolean withBroad, boolean withLobes) {
            if (withBroad && reflection.isBroad()) {
                double value = reflection.broad(in, out) / (Math.PI * drawn + 1);
                broad += value;
                arrived[receiver] += value;
            }
            if (withLobes && !reflection.lobes().isEmpty()) {
                double lobe = reflection.lobe(in, out, between);
                if (lobe > 0) {
                    double value = lobe / (drawn + reflection.lobeDensity(in, out, between));
                    lobes += value;
                    arrived[receiver] += value;
                }
            }
        }

        /** The receiver that a ray from the point met strikes first, or -1. */
        private int receiverAlong(double tx, double ty, double tz) {
            ray.set(hit[0], hit[1], hit[2], tx, ty, tz, Double.POSITIVE_INFINITY, plane);
            int facet = tree.nearest(ray);
            int met = facet < 0 ? Scene.INSIDE : scene.surfaceMet(facet, tx, ty, tz);
            return met == Scene.INSIDE ? -1 : receiverOf[met];
        }

        private void drawLobe(UniformRandomProvider random) {
            if (!reflection.sampleLobe(in, random.nextDouble(), random.nextDouble(), place)) {
                return;
            }
            double up = Math.sqrt(Math.max(0, 1 - place[0] * place[0] - place[1] * place[1]));
            // Along the surface: t the way on of the ray that came, or any way where it came straight down.
            double tx = dx + in * nx;
            double ty = dy + in * ny;
            double tz = dz + in * nz;
            double size = Math.sqrt(tx * tx + ty * ty + tz * tz);
            if (!(size > 1e-9)) {
                double turn = random.nextDouble();
                double sign = Math.copySign(1, nz);
                double p = -1 / (sign + nz);
                double c = UnitCircle.cosine(turn);
                double b = UnitCircle.sine(turn);
                tx = c * (1 + sign * nx * nx * p) + b * nx * ny * p;
                ty = c * sign * nx * ny * p + b * (sign + ny * ny * p);
                tz = -c * sign * nx - b * ny;
                size = 1;
            }
            tx /= size;
            ty /= size;
            tz /= size;
            if (up > 0) {
                along(
                        place[0] * tx + place[1] * (ny * tz - nz * ty) + up * nx,
                        place[0] * ty + place[1] * (nz * tx - nx * tz) + up * ny,
                        place[0] * tz + place[1] * (nx * ty - ny * tx) + up * nz,
                        false);
            }
        }

        StarTally tally(long samples) {
            return new StarTally(
                    Arrays.stream(direct).map(each -> each.estimate(1)).toList(),
                    Arrays.stream(once).map(each -> each.estimate(bound)).toList(),
                    total.estimate(bound),
                    by.estimates(samples, bound),
                    largest);
        }
    }
}
