package darkrim.light;

import darkrim.sampling.Streams;
import darkrim.scene.Scene;
import darkrim.scene.Surface;
import darkrim.trace.FacetTree;
import darkrim.trace.Ray;
import darkrim.trace.StartPoints;
import java.util.SortedMap;
import java.util.TreeMap;
import org.apache.commons.rng.UniformRandomProvider;

/**
 * View factors from a receiver: the share of its hemisphere, weighted by the cosine, that each surface fills (times pi: the projected
 * solid angle of the surface, mean over the receiver). F = 1/pi integral of cos(theta) over the directions in which the surface is the
 * first thing met.
 */
public final class ViewFactors {
    private final Scene scene;
    private final FacetTree tree;
    private final StartPoints starts;
    private final Streams streams;

    /**
     * @param scene the scene
     * @param tree the tree over its facets
     * @param seed seed of the random streams
     */
    public ViewFactors(Scene scene, FacetTree tree, long seed) {
        this.scene = scene;
        this.tree = tree;
        this.starts = new StartPoints(scene.corners(), tree);
        this.streams = new Streams(seed);
    }

    /**
     * View factors from a receiver to every surface that it sees, by surface number. What is missing from 1 goes to the open or, from inside
     * solid material, to nowhere.
     *
     * @param receiver from where
     * @param samples number of rays, at least 2
     */
    public SortedMap<Integer, Estimate> from(Receiver receiver, int samples) {
        UniformRandomProvider random = streams.stream(receiver.name() + " view factors", 0);
        PointSampler point = new PointSampler(scene, starts, receiver);
        Directions directions = new Directions();
        Ray ray = new Ray();
        ReflectorSums sums = new ReflectorSums(scene.surfaces().size());
        for (int i = 0; i < samples; i++) {
            point.next(random);
            directions.cosine(random, point.nx, point.ny, point.nz);
            ray.set(
                    point.x,
                    point.y,
                    point.z,
                    directions.x,
                    directions.y,
                    directions.z,
                    Double.POSITIVE_INFINITY,
                    point.plane);
            int facet = tree.nearest(ray);
            if (facet >= 0) {
                int met = scene.surfaceMet(facet, directions.x, directions.y, directions.z);
                if (met != Scene.INSIDE) {
                    sums.add(
                            met,
                            Reflector.Part.DIFFUSE,
                            1,
                            Math.abs(directions.x * scene.normal(facet, 0)
                                    + directions.y * scene.normal(facet, 1)
                                    + directions.z * scene.normal(facet, 2)));
                }
            }
        }
        SortedMap<Integer, Estimate> factors = new TreeMap<>();
        sums.estimates(samples, 1).forEach((met, factor) -> factors.put(met.surface(), factor));
        return factors;
    }

    /** The view factor from a receiver to one surface. */
    public Estimate between(Receiver receiver, Surface surface, int samples) {
        Estimate found = from(receiver, samples).get(surface.index());
        return found != null ? found : new Estimate(samples, 0, 0, 1);
    }
}
