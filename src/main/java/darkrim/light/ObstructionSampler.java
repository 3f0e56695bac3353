package darkrim.light;

import darkrim.light.Obstruction.Blocker;
import darkrim.sampling.Streams;
import darkrim.scene.Scene;
import darkrim.trace.FacetTree;
import darkrim.trace.Ray;
import java.util.TreeMap;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.apache.commons.rng.UniformRandomProvider;

/**
 * Finds what hides the pupil from a point: lines from the point to places spread evenly over the pupil, followed to the first facet.
 * Immutable; safe for use by many threads.
 */
public final class ObstructionSampler {
    private final Scene scene;
    private final FacetTree tree;
    private final PupilSource pupil;
    private final Streams streams;

    /**
     * @param scene the scene
     * @param tree the tree over its facets
     * @param seed seed of all random streams
     */
    public ObstructionSampler(Scene scene, FacetTree tree, long seed) {
        this.scene = scene;
        this.tree = tree;
        this.pupil = PupilSource.withoutWindow(scene.beam());
        this.streams = new Streams(seed);
    }

    /**
     * Follows one batch of lines; the same bits on any thread.
     *
     * @param at where from
     * @param batch number of the batch
     * @param samples how many lines
     */
    public Obstruction batch(Receiver.AtPoint at, long batch, int samples) {
        UniformRandomProvider random = streams.stream(at.name() + " obstruction", batch);
        Vector3D from = at.position();
        if (!(pupil.height(from.getX(), from.getY(), from.getZ()) > 0)) {
            return new Obstruction(samples, 0, samples, 0, new TreeMap<>());
        }
        Ray ray = new Ray();
        double[] inPupil = new double[2];
        long seen = 0;
        long behind = 0;
        long beyondField = 0;
        TreeMap<Blocker, Long> by = new TreeMap<>();
        for (int i = 0; i < samples; i++) {
            pupil.outline.place(random.nextDouble(), random.nextDouble(), inPupil);
            double dx = pupil.cx + inPupil[0] * pupil.ux + inPupil[1] * pupil.vx - from.getX();
            double dy = pupil.cy + inPupil[0] * pupil.uy + inPupil[1] * pupil.vy - from.getY();
            double dz = pupil.cz + inPupil[0] * pupil.uz + inPupil[1] * pupil.vz - from.getZ();
            double facing = at.normal().getX() * dx
                    + at.normal().getY() * dy
                    + at.normal().getZ() * dz;
            if (!(facing > 0)) {
                behind++;
            } else if (!pupil.passes(from.getX(), from.getY(), from.getZ(), dx, dy, dz)) {
                beyondField++;
            } else {
                ray.set(from.getX(), from.getY(), from.getZ(), dx, dy, dz, 1, Ray.NO_PLANE);
                int facet = tree.nearest(ray);
                if (facet < 0) {
                    seen++;
                } else {
                    by.merge(blocker(facet, dx, dy, dz), 1L, Long::sum);
                }
            }
        }
        return new Obstruction(samples, seen, behind, beyondField, by);
    }

    private Blocker blocker(int facet, double dx, double dy, double dz) {
        int met = scene.surfaceMet(facet, dx, dy, dz);
        return met == Scene.INSIDE ? new Blocker(scene.frontSurface(facet), true) : new Blocker(met, false);
    }
}
