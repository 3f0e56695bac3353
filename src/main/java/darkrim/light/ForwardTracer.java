package darkrim.light;

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
 * that cone meets nothing and is not followed. At a hit the packet is tallied, the absorbed share stays, and one direction is drawn for
 * the rest: Lambertian or mirror in proportion to their reflectances.
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
        this.pupil = new PupilSource(scene.beam());
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
            double reflected = p.flux * surface.finish().reflectance();
            tally.absorb(p.flux - reflected);
            if (!(reflected > 0)) {
                return;
            }
            reflect(random, p, facet, surface, reflected);
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

    private void reflect(UniformRandomProvider random, Packet p, int facet, Surface surface, double flux) {
        double side = surface.back() ? -1 : 1;
        double nx = side * scene.normal(facet, 0);
        double ny = side * scene.normal(facet, 1);
        double nz = side * scene.normal(facet, 2);
        starts.place(facet, p.ray.weightA(), p.ray.weightB(), !surface.back(), p.placed);
        p.x = p.placed[0];
        p.y = p.placed[1];
        p.z = p.placed[2];
        p.plane = scene.plane(facet);
        p.flux = flux;
        double mirror = surface.finish().mirror();
        if (mirror > 0 && random.nextDouble() * surface.finish().reflectance() < mirror) {
            double twice = 2 * (p.dx * nx + p.dy * ny + p.dz * nz);
            p.dx -= twice * nx;
            p.dy -= twice * ny;
            p.dz -= twice * nz;
        } else {
            p.directions.cosine(random, nx, ny, nz);
            p.dx = p.directions.x;
            p.dy = p.directions.y;
            p.dz = p.directions.z;
        }
    }
}
