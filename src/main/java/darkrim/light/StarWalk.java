package darkrim.light;

import darkrim.reflection.Reflection;
import darkrim.scene.Scene;
import darkrim.scene.Surface;
import darkrim.trace.FacetTree;
import darkrim.trace.Ray;
import darkrim.trace.StartPoints;
import java.util.Arrays;
import java.util.List;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.apache.commons.rng.UniformRandomProvider;

/** Follows the light of one star, ray by ray, as {@link StarLight} says, and sums where it goes. Mutable, one for each batch. */
final class StarWalk {
    private final Scene scene;
    private final FacetTree tree;
    private final PupilSource pupil;
    private final StartPoints starts;
    private final List<Surface> receivers;
    private final int[] receiverOf;
    private final PointSampler[] points;
    private final Accumulator[] direct;
    private final Accumulator[] once;
    private final Accumulator total = new Accumulator();
    private final ReflectorSums by;
    private final double[] arrived;
    private final double[] place = new double[2];
    private final double[] hit = new double[3];
    private final Directions directions = new Directions();
    private final LobeDirection lobeDirection = new LobeDirection();
    private final Ray ray = new Ray();

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

    /**
     * @param receivers surfaces on which light is counted
     * @param receiverOf by surface number: which receiver it is, or -1
     */
    StarWalk(
            Scene scene,
            FacetTree tree,
            PupilSource pupil,
            StartPoints starts,
            List<Surface> receivers,
            int[] receiverOf) {
        this.scene = scene;
        this.tree = tree;
        this.pupil = pupil;
        this.starts = starts;
        this.receivers = receivers;
        this.receiverOf = receiverOf;
        points = receivers.stream()
                .map(surface -> new PointSampler(scene, starts, new Receiver.OnSurface(surface)))
                .toArray(PointSampler[]::new);
        direct = Accumulator.many(receivers.size());
        once = Accumulator.many(receivers.size());
        by = new ReflectorSums(scene.surfaces().size());
        arrived = new double[receivers.size()];
    }

    /**
     * Follows one ray.
     *
     * @param focus where the light comes together, mm
     * @param s where on the pupil the ray starts, as {@link darkrim.geom.Outline#place} has it; t likewise
     */
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
        if (!reflection.lobes().isEmpty() && lobeDirection.draw(random, reflection, in, dx, dy, dz, nx, ny, nz)) {
            along(lobeDirection.x, lobeDirection.y, lobeDirection.z, false);
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

    /**
     * Where the light went.
     *
     * @param samples how many rays were followed
     * @param bound no sample can be larger
     */
    StarTally tally(long samples, double bound) {
        return new StarTally(
                Accumulator.estimates(direct, 1),
                Accumulator.estimates(once, bound),
                total.estimate(bound),
                by.estimates(samples, bound));
    }
}
