package darkrim.study.irradiance;

import darkrim.layout.Requirement.LightClass;
import darkrim.layout.SourceSpec;
import darkrim.light.Receiver;
import darkrim.light.Tally;
import darkrim.light.Transport;
import darkrim.scene.DistantBody;
import darkrim.scene.Scene;
import darkrim.scene.Surface;
import darkrim.study.Effort;
import darkrim.trace.FacetTree;
import darkrim.verdict.Watch;
import darkrim.verdict.Workers;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Callable;
import java.util.stream.IntStream;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/**
 * The light of a distant source of a layout on every surface, for pictures. It is sampled, not judged: no verdict and no proof comes with it. Its
 * values are relative to the unobstructed pupil that stands for the source; {@link DistantBody#facing} tells what to divide them by.
 */
public final class SourceLight {
    /** Batches of direct light on a surface. */
    private static final int DIRECT = 4;
    /** Batches of once-reflected light: most of its samples find nothing. */
    private static final int REFLECTED = 16;

    private static final int BATCH = 2048;

    private final Transport transport;

    private SourceLight(Transport transport) {
        this.transport = transport;
    }

    /**
     * Samples it.
     *
     * @param placed the layout with its surfaces
     * @param source a source of the layout
     * @param effort threads and seed; the number of samples is this class's own
     * @param watch hears how far it is, and may stop it: what is not sampled by then is unknown
     */
    public static CheckedLight of(PlacedLayout placed, SourceSpec.Distant source, Effort effort, Watch watch) {
        Scene lit = DistantBody.of(source).over(placed.scene());
        FacetTree tree = FacetTree.build(lit.corners(), lit.copyPlanes(), lit.bound());
        return of(placed, source.name(), lit, tree, effort, watch);
    }

    /**
     * Samples it in a scene that there is already.
     *
     * @param placed the layout with its surfaces
     * @param source name of the source
     * @param lit the scene in its light
     * @param tree the tree over its facets
     * @param effort threads and seed; the number of samples is this class's own
     * @param watch hears how far it is, and may stop it: what is not sampled by then is unknown
     */
    public static CheckedLight of(
            PlacedLayout placed, String source, Scene lit, FacetTree tree, Effort effort, Watch watch) {
        long seed = effort.over(placed.layout().sampling()).seed();
        SourceLight light = new SourceLight(new Transport(lit, tree, seed));
        List<CheckedLight.OnSurface> found = new ArrayList<>();
        List<Surface> surfaces = lit.surfaces();
        try (Workers workers = new Workers(effort.threads())) {
            for (Surface surface : surfaces) {
                watch.progress("light of " + source, found.size(), surfaces.size());
                found.add(light.on(surface, workers, watch));
            }
        }
        return new CheckedLight(placed.layout(), seed, lit, found, Map.of(), placed.warnings(), watch.stop());
    }

    private CheckedLight.OnSurface on(Surface surface, Workers workers, Watch watch) {
        Tally direct = sampled(surface, LightClass.DIRECT, watch.stop() ? 0 : DIRECT, workers);
        Tally reflected = sampled(surface, LightClass.ONCE_REFLECTED, watch.stop() ? 0 : REFLECTED, workers);
        List<Vector3D> ray = direct.example()
                .map(example -> List.of(example.onPupil(), example.onReceiver()))
                .orElse(List.of());
        return new CheckedLight.OnSurface(
                DarkProof.NONE, direct.irradiance(), reflected.irradiance(), ray, CheckedLight.strongest(reflected));
    }

    private Tally sampled(Surface surface, LightClass light, int batches, Workers workers) {
        Receiver on = new Receiver.OnSurface(surface);
        Tally sum = transport.unmeasured(on, light);
        List<Tally> each = workers.all(IntStream.range(0, batches)
                .mapToObj(batch -> (Callable<Tally>) () -> transport.batch(on, light, batch, BATCH)));
        for (Tally batch : each) {
            sum = sum.and(batch);
        }
        return sum;
    }
}
