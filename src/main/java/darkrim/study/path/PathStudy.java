package darkrim.study.path;

import darkrim.diagnostic.Finding;
import darkrim.diagnostic.Findings;
import darkrim.diagnostic.UnusableInput;
import darkrim.layout.Layout;
import darkrim.layout.Requirement.LightClass;
import darkrim.light.Estimate;
import darkrim.light.ManyReflections;
import darkrim.light.PathTally;
import darkrim.light.Receiver;
import darkrim.light.ReflectionPath;
import darkrim.scene.Scene;
import darkrim.scene.Surface;
import darkrim.study.Check;
import darkrim.study.Effort;
import darkrim.study.PlacedScene;
import darkrim.study.irradiance.SurfaceCells;
import darkrim.verdict.Watch;
import darkrim.verdict.Workers;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.LongStream;

/**
 * Finds by which surfaces light comes to receivers, reflected up to some times. Each receiver is measured; then some of the same batches are taken
 * again, to see where the ways of the strongest paths run. Nothing is judged here.
 */
public final class PathStudy {
    private static final int BATCH = 8192;
    /** Batches that are handed out before a stop is heard. */
    private static final int SLICE = 16;
    /** Cells along the longer side of a flat surface in which the brightest spot is looked for. */
    private static final int CELLS = 16;
    /** Ways of a path from which its spots and angles are found. */
    private static final long WAYS = 1000;

    private final PlacedScene placed;
    private final List<Finding> warnings;

    private PathStudy(PlacedScene placed, List<Finding> warnings) {
        this.placed = placed;
        this.warnings = List.copyOf(warnings);
    }

    /**
     * Reads a layout file.
     *
     * @param file the file
     * @param effort in which shape, cold or warm
     * @param watch hears how far it is
     * @throws UnusableInput with everything that is wrong with the file
     */
    public static PathStudy of(Path file, Effort effort, Watch watch) throws UnusableInput {
        Findings findings = new Findings();
        return of(effort.shaped(Check.readable(file, findings)), findings, watch);
    }

    /**
     * Places the parts of a layout.
     *
     * @param layout the layout
     * @param findings what is known to be wrong with it; what its parts show is added
     * @param watch hears how far it is
     * @throws UnusableInput with everything that is wrong with the layout
     */
    public static PathStudy of(Layout layout, Findings findings, Watch watch) throws UnusableInput {
        PlacedScene placed = PlacedScene.of(layout, findings, watch);
        return new PathStudy(placed, findings.sorted());
    }

    /** The scene. */
    public Scene scene() {
        return placed.scene();
    }

    /** The surfaces on which the layout limits once-reflected light, in its order. */
    public List<Surface> limited() {
        Set<Integer> named = placed.demands().stream()
                .filter(demand -> demand.requirement().limits(LightClass.ONCE_REFLECTED))
                .flatMap(demand -> demand.surfaces().stream())
                .map(Surface::index)
                .collect(Collectors.toSet());
        return scene().surfaces().stream()
                .filter(surface -> named.contains(surface.index()))
                .toList();
    }

    /**
     * Finds the paths.
     *
     * @param receivers where light arrives
     * @param settings what is asked for
     * @param effort how hard to work; {@link PathSettings#SAMPLES} for each receiver where it states no number
     * @param watch hears how far it is
     */
    public PathResult run(List<Surface> receivers, PathSettings settings, Effort effort, Watch watch) {
        long seed = effort.over(placed.layout().sampling()).seed();
        long samples = effort.mostSamples().orElse(PathSettings.SAMPLES);
        List<ReceiverPaths> found = new ArrayList<>();
        try (Workers workers = new Workers(effort.threads())) {
            Work work = new Work(new ManyReflections(scene(), placed.tree(), seed), settings, samples, workers, watch);
            for (Surface receiver : receivers) {
                watch.progress("following light paths", found.size(), receivers.size());
                if (watch.stop()) {
                    break;
                }
                ReceiverPaths paths = work.to(receiver);
                if (paths.tally().samples() > 0) {
                    found.add(paths);
                }
            }
        }
        return new PathResult(placed.layout(), scene(), seed, settings, found, watch.stop(), warnings);
    }

    private final class Work {
        private final ManyReflections light;
        private final PathSettings settings;
        private final long samples;
        private final long batches;
        private final Workers workers;
        private final Watch watch;
        private final Map<Integer, SurfaceCells> cells = new HashMap<>();

        Work(ManyReflections light, PathSettings settings, long samples, Workers workers, Watch watch) {
            this.light = light;
            this.settings = settings;
            this.samples = samples;
            this.batches = samples / BATCH + (samples % BATCH == 0 ? 0 : 1);
            this.workers = workers;
            this.watch = watch;
        }

        ReceiverPaths to(Surface receiver) {
            Receiver at = new Receiver.OnSurface(receiver);
            // One order more, to know what is left out.
            int most = settings.most() + 1;
            PathTally tally = PathTally.none(most);
            for (long first = 0; first < batches && !watch.stop(); first += SLICE) {
                List<PathTally> done = slice(first, batch -> light.batch(at, most, batch, size(batch)));
                // One after the other in the order of the batches: the same bits for any number of threads.
                for (PathTally each : done) {
                    tally = tally.and(each);
                }
            }
            List<ReflectionPath> wanted = strongest(tally);
            WayCollector ways = collector(receiver, wanted);
            long measured = tally.samples() / BATCH + (tally.samples() % BATCH == 0 ? 0 : 1);
            for (long first = 0; isWanted(first, measured) && !ways.hasOfEach(WAYS); first += SLICE) {
                List<WayCollector> done = slice(first, batch -> {
                    WayCollector own = collector(receiver, wanted);
                    light.batch(at, most, batch, size(batch), own);
                    return own;
                });
                done.forEach(ways::add);
            }
            double reflected = tally.upTo().get(settings.most()).mean();
            PathTally all = tally;
            return new ReceiverPaths(
                    receiver,
                    tally,
                    wanted.stream()
                            .filter(path -> ways.of(path).ways() > 0)
                            .map(path -> ways.of(path).described(all.of(path), reflected))
                            .toList());
        }

        /** Whether more batches are taken again: all that were measured, or after a stop the first, which has the ways of what is strong. */
        private boolean isWanted(long first, long measured) {
            return first < measured && (first == 0 || !watch.stop());
        }

        private interface Batch<T> {
            T take(long batch);
        }

        private <T> List<T> slice(long first, Batch<T> work) {
            long end = Math.min(batches, first + SLICE);
            return workers.all(LongStream.range(first, end).mapToObj(batch -> (Callable<T>) () -> work.take(batch)));
        }

        private int size(long batch) {
            return (int) Math.min(BATCH, samples - batch * BATCH);
        }

        /** The strongest of each order up to that asked for. */
        private List<ReflectionPath> strongest(PathTally tally) {
            Comparator<Map.Entry<ReflectionPath, Estimate>> byStrength =
                    Comparator.comparingDouble(entry -> -entry.getValue().mean());
            return IntStream.rangeClosed(1, settings.most())
                    .boxed()
                    .flatMap(order -> tally.by().entrySet().stream()
                            .filter(entry -> entry.getKey().order() == order)
                            .sorted(byStrength.thenComparing(Map.Entry.comparingByKey()))
                            .limit(settings.top()))
                    .map(Map.Entry::getKey)
                    .toList();
        }

        private WayCollector collector(Surface receiver, List<ReflectionPath> wanted) {
            return new WayCollector(wanted, path -> {
                Surface last = scene().reflecting().get(path.last().surface());
                return new WaySums(scene(), path, new CellSums(cells(receiver)), new CellSums(cells(last)));
            });
        }

        private synchronized SurfaceCells cells(Surface surface) {
            return cells.computeIfAbsent(
                    surface.index(),
                    each -> surface.facetCount() > 0
                            ? SurfaceCells.of(scene(), surface, CELLS)
                            : SurfaceCells.whole(scene(), surface));
        }
    }
}
