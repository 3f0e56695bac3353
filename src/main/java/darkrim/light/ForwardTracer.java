package darkrim.light;

import darkrim.reflection.Reflection;
import darkrim.sampling.Streams;
import darkrim.scene.Scene;
import darkrim.scene.Surface;
import darkrim.trace.FacetTree;
import darkrim.trace.Ray;
import darkrim.trace.StartPoints;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.apache.commons.rng.UniformRandomProvider;

/**
 * Brute force the other way round: light leaves the pupil and is followed from hit to hit. It shares no estimator with {@link Transport}
 * and is its cross-check; it also keeps the books on energy. Slow for narrow receivers, so no verdict rests on it.
 *
 * <p>Each packet leaves a uniform point of the pupil into the cone about the scene (Lambert's law gives its weight); what leaves outside
 * that cone meets nothing and is not followed. At a hit the packet is tallied, one part of the finish is drawn in proportion to what it reflects (for
 * lobes: to the most that they reflect at any angle) and one direction of it; the packet's flux is multiplied by what that part reflects there over
 * the chance of drawing it. The rest counts as absorbed; where a direction is drawn with another density than it is reflected, a packet may
 * gain, and the sum is right in the mean.
 */
public final class ForwardTracer {
    private final Scene scene;
    private final FacetTree tree;
    private final StartPoints starts;
    private final Streams streams;
    private final PupilSource pupil;
    private final Vector3D middle;
    private final double reach;

    /**
     * @param scene the scene
     * @param tree the tree over its facets
     * @param seed seed of the random streams
     */
    public ForwardTracer(Scene scene, FacetTree tree, long seed) {
        this.scene = scene;
        this.tree = tree;
        this.starts = new StartPoints(scene.corners(), tree);
        this.streams = new Streams(seed);
        this.pupil = PupilSource.withoutWindow(scene.beam());
        double[] low = {Double.POSITIVE_INFINITY, Double.POSITIVE_INFINITY, Double.POSITIVE_INFINITY};
        double[] high = {Double.NEGATIVE_INFINITY, Double.NEGATIVE_INFINITY, Double.NEGATIVE_INFINITY};
        for (int f = 0; f < scene.facetCount(); f++) {
            for (int corner = 0; corner < 3; corner++) {
                for (int k = 0; k < 3; k++) {
                    low[k] = Math.min(low[k], scene.corner(f, corner, k));
                    high[k] = Math.max(high[k], scene.corner(f, corner, k));
                }
            }
        }
        middle = Vector3D.of((low[0] + high[0]) / 2, (low[1] + high[1]) / 2, (low[2] + high[2]) / 2);
        reach = Vector3D.of(high[0] - low[0], high[1] - low[1], high[2] - low[2])
                        .norm()
                / 2
                * (1 + 1e-9);
    }

    /**
     * Follows packets through up to a number of hits.
     *
     * @param packets how many packets, at least 2
     * @param hits how many hits each is followed through, at least 1
     */
    public ForwardTally trace(long packets, int hits) {
        UniformRandomProvider random = streams.stream("forward from the pupil", 0);
        ForwardTally tally = new ForwardTally(scene.surfaces().size(), hits, packets);
        Packet packet = new Packet();
        for (long i = 0; i < packets; i++) {
            follow(random, packet, tally);
            tally.endPacket();
        }
        return tally;
    }

    private static final class Packet {
        private final Ray ray = new Ray();
        private final Directions directions = new Directions();
        private final double[] inPupil = new double[2];
        private final double[] placed = new double[3];
        private double x;
        private double y;
        private double z;
        private double dx;
        private double dy;
        private double dz;
        private double flux;
        private int plane;
    }

    private void follow(UniformRandomProvider random, Packet p, ForwardTally tally) {
        if (!leave(random, p)) {
            return;
        }
        tally.emit(p.flux);
        for (int order = 0; order < tally.hits(); order++) {
            p.ray.set(p.x, p.y, p.z, p.dx, p.dy, p.dz, Double.POSITIVE_INFINITY, p.plane);
            int facet = tree.nearest(p.ray);
            if (facet < 0) {
                tally.escape(p.flux);
                return;
            }
            int met = scene.surfaceMet(facet, p.dx, p.dy, p.dz);
            if (met == Scene.INSIDE) {
                tally.absorb(p.flux);
                return;
            }
            Surface surface = scene.surfaces().get(met);
            tally.arrive(met, order, p.flux);
            double arrived = p.flux;
            reflect(random, p, facet, surface);
            tally.absorb(arrived - p.flux);
            if (!(p.flux > 0)) {
                return;
            }
        }
        tally.goOn(p.flux);
    }

    /** Starts a packet; false where the cone about the scene lies behind the pupil's plane or the field limit stops the line. */
    private boolean leave(UniformRandomProvider random, Packet p) {
        pupil.outline.place(random.nextDouble(), random.nextDouble(), p.inPupil);
        p.x = pupil.cx + p.inPupil[0] * pupil.ux + p.inPupil[1] * pupil.vx;
        p.y = pupil.cy + p.inPupil[0] * pupil.uy + p.inPupil[1] * pupil.vy;
        p.z = pupil.cz + p.inPupil[0] * pupil.uz + p.inPupil[1] * pupil.vz;
        Vector3D axis = middle.subtract(Vector3D.of(p.x, p.y, p.z));
        double distance = axis.norm();
        double density;
        if (distance > reach) {
            double cosine = Math.sqrt((distance - reach) * (distance + reach)) / distance;
            p.directions.cone(random, axis.getX() / distance, axis.getY() / distance, axis.getZ() / distance, cosine);
            density = 1 / (2 * Math.PI * (1 - cosine));
        } else {
            p.directions.cone(random, pupil.nx, pupil.ny, pupil.nz, 0);
            density = 1 / (2 * Math.PI);
        }
        p.dx = p.directions.x;
        p.dy = p.directions.y;
        p.dz = p.directions.z;
        p.plane = Ray.NO_PLANE;
        double cosine = p.dx * pupil.nx + p.dy * pupil.ny + p.dz * pupil.nz;
        p.flux = pupil.area * cosine / density / scene.referenceIrradiance();
        return cosine > 0 && pupil.passes(p.x, p.y, p.z, p.dx, p.dy, p.dz);
    }

    private void reflect(UniformRandomProvider random, Packet p, int facet, Surface surface) {
        Reflection reflection = surface.finish().reflection();
        double side = surface.back() ? -1 : 1;
        double nx = side * scene.normal(facet, 0);
        double ny = side * scene.normal(facet, 1);
        double nz = side * scene.normal(facet, 2);
        double in = Math.min(1, -(p.dx * nx + p.dy * ny + p.dz * nz));
        double mirror = reflection.mirror(in);
        double broad = reflection.broadReflectance(in);
        double lobes = reflection.greatestLobeReflectance();
        double all = mirror + broad + lobes;
        if (!(all > 0)) {
            p.flux = 0;
            return;
        }
        starts.place(facet, p.ray.weightA(), p.ray.weightB(), !surface.back(), p.placed);
        p.x = p.placed[0];
        p.y = p.placed[1];
        p.z = p.placed[2];
        p.plane = scene.plane(facet);
        double pick = (mirror < all && mirror > 0) || lobes > 0 ? random.nextDouble() * all : 0;
        if (pick < mirror) {
            p.dx += 2 * in * nx;
            p.dy += 2 * in * ny;
            p.dz += 2 * in * nz;
            p.flux *= all;
        } else if (pick < mirror + broad) {
            p.directions.cosine(random, nx, ny, nz);
            double out = Math.min(1, p.directions.x * nx + p.directions.y * ny + p.directions.z * nz);
            p.dx = p.directions.x;
            p.dy = p.directions.y;
            p.dz = p.directions.z;
            p.flux *= reflection.isPlain() ? all : all * reflection.broad(in, out) / broad;
        } else {
            p.flux *= all / lobes * throwLobe(random, reflection, p, nx, ny, nz, in);
        }
    }

    /** Draws a direction of the lobes; the BRDF over its density, 0 where none is drawn. The frame is built from scratch, on purpose. */
    private static double throwLobe(
            UniformRandomProvider random, Reflection reflection, Packet p, double nx, double ny, double nz, double in) {
        double[] at = p.inPupil;
        if (!reflection.sampleLobe(in, random.nextDouble(), random.nextDouble(), at)) {
            return 0;
        }
        Vector3D normal = Vector3D.of(nx, ny, nz);
        Vector3D came = Vector3D.of(p.dx, p.dy, p.dz);
        Vector3D along = came.subtract(normal.multiply(came.dot(normal)));
        Vector3D on = along.norm() > 1e-9 ? along.normalize() : normal.orthogonal();
        double out = Math.sqrt(Math.max(0, 1 - at[0] * at[0] - at[1] * at[1]));
        Vector3D thrown =
                on.multiply(at[0]).add(normal.cross(on).multiply(at[1])).add(normal.multiply(out));
        double between = -thrown.dot(came);
        p.dx = thrown.getX();
        p.dy = thrown.getY();
        p.dz = thrown.getZ();
        return out > 0 ? reflection.lobe(in, out, between) / reflection.lobeDensity(in, out, between) : 0;
    }
}
