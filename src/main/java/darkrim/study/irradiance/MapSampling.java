package darkrim.study.irradiance;

import darkrim.layout.Requirement.LightClass;
import darkrim.light.Estimate;
import darkrim.light.Transport;
import darkrim.scene.Scene;
import darkrim.scene.Surface;
import darkrim.trace.FacetTree;
import darkrim.verdict.Watch;
import darkrim.verdict.Workers;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Callable;
import java.util.stream.IntStream;

/**
 * Samples maps in rounds, each of which makes them finer. A cell holds the mean over its area, not the value at its middle, so that a narrow
 * strip of light is not stepped over: direct light by points spread evenly over cell and pupil, once-reflected light gathered back from the
 * cell. The same bits for any number of threads. Immutable; safe for use by many threads.
 */
public final class MapSampling {
    /** Cells that one task works through. */
    private static final int CELLS = 32;

    private final Scene scene;
    private final Transport transport;
    private final Map<Surface, DarkProof> dark;

    /**
     * How many samples a round adds to each cell.
     *
     * @param direct of direct light; 0 for none
     * @param reflected of once-reflected light; 0 for none
     */
    public record Round(int direct, int reflected) {}

    /**
     * @param scene the scene
     * @param tree the tree over its facets
     * @param seed seed of all random streams
     * @param dark surfaces whose facets are proved to get no direct light: it is not looked for there, nor what they might reflect
     */
    public MapSampling(Scene scene, FacetTree tree, long seed, Map<Surface, DarkProof> dark) {
        this.scene = scene;
        this.transport = new Transport(scene, tree, seed).knowingDark(dark.keySet());
        this.dark = Map.copyOf(dark);
    }

    /** The map of some cells with nothing sampled yet. */
    public SurfaceMap unsampled(SurfaceCells cells) {
        return SurfaceMap.unsampled(cells, dark.getOrDefault(cells.surface(), DarkProof.NONE));
    }

    /**
     * The same maps with one more round of samples. Asked to stop, it leaves maps as they were that are not finished.
     *
     * @param maps the maps, all of surfaces of the scene
     * @param round how many samples
     * @param workers who does the work
     * @param watch hears how far it is, in maps, and may stop it
     * @throws IllegalArgumentException if a map is of another scene: samples of two would be mixed
     */
    public List<SurfaceMap> refined(List<SurfaceMap> maps, Round round, Workers workers, Watch watch) {
        if (!maps.stream().allMatch(map -> map.cells().isOf(scene))) {
            throw new IllegalArgumentException("a map is of another scene");
        }
        List<SurfaceMap> finer = new ArrayList<>();
        for (SurfaceMap map : maps) {
            watch.progress("mapping", finer.size(), maps.size());
            finer.add(watch.stop() ? map : refined(map, round, workers, watch));
        }
        return finer;
    }

    private SurfaceMap refined(SurfaceMap map, Round round, Workers workers, Watch watch) {
        int[] cells = map.cells().filled();
        List<Callable<List<Sampled>>> tasks = new ArrayList<>();
        for (int first = 0; first < cells.length; first += CELLS) {
            int[] some = Arrays.copyOfRange(cells, first, Math.min(cells.length, first + CELLS));
            tasks.add(() -> IntStream.of(some)
                    .takeWhile(cell -> !watch.stop())
                    .mapToObj(cell -> sampled(map, cell, round))
                    .toList());
        }
        List<Sampled> all =
                workers.all(tasks.stream()).stream().flatMap(List::stream).toList();
        if (all.size() < cells.length) {
            return map;
        }
        List<Estimate> direct = new ArrayList<>(map.direct());
        List<Estimate> reflected = new ArrayList<>(map.reflected());
        for (Sampled each : all) {
            direct.set(each.cell(), direct.get(each.cell()).and(each.direct()));
            reflected.set(each.cell(), reflected.get(each.cell()).and(each.reflected()));
        }
        return new SurfaceMap(map.cells(), map.proof(), direct, reflected, map.rounds() + 1);
    }

    private record Sampled(int cell, Estimate direct, Estimate reflected) {}

    private Sampled sampled(SurfaceMap map, int cell, Round round) {
        return new Sampled(
                cell,
                map.isDark()
                        ? Estimate.none(Double.POSITIVE_INFINITY)
                        : batch(map, cell, LightClass.DIRECT, round.direct()),
                batch(map, cell, LightClass.ONCE_REFLECTED, round.reflected()));
    }

    private Estimate batch(SurfaceMap map, int cell, LightClass light, int samples) {
        return samples == 0
                ? Estimate.none(Double.POSITIVE_INFINITY)
                : transport.batch(map.cells().patch(cell), light, map.rounds(), samples);
    }
}
