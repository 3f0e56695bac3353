package darkrim.light;

import darkrim.sampling.Streams;
import darkrim.scene.Scene;
import darkrim.scene.Surface;
import darkrim.trace.FacetTree;
import darkrim.trace.StartPoints;
import java.util.Arrays;
import java.util.List;
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
        StarWalk walk = new StarWalk(scene, tree, pupil, starts, receivers, receiverOf);
        for (int row = 0; row < across; row++) {
            for (int column = 0; column < across; column++) {
                walk.sample(
                        random, focus, (column + random.nextDouble()) / across, (row + random.nextDouble()) / across);
            }
        }
        return walk.tally((long) across * across, bound);
    }
}
