package darkrim.study.comparison;

import darkrim.layout.Requirement;
import darkrim.layout.Requirement.LightClass;
import darkrim.light.Estimate;
import darkrim.light.Receiver;
import darkrim.light.Reflector;
import darkrim.light.Tally;
import darkrim.light.Transport;
import darkrim.scene.Scene;
import darkrim.scene.Surface;
import darkrim.study.Change;
import darkrim.study.SurfaceValue;
import darkrim.verdict.RequirementResult;
import darkrim.verdict.Watch;
import darkrim.verdict.Workers;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.Callable;
import java.util.stream.Stream;

/**
 * Compares light paths of two scenes. Each receiver gets independent batches of samples, in both scenes with the same random numbers; the
 * differences of the pairs of batches are judged by Student's t, two-sided, and the probability multiplied by the number of paths compared
 * (Bonferroni).
 */
final class PathLedger {
    private static final int PAIRS = 16;
    private static final int SAMPLES = 4096;

    /** Receivers that are worked out between two looks whether to stop. */
    private static final int SLICE = 16;

    private static final String STEP = "comparing light paths";

    private static final SurfaceValue NONE = SurfaceValue.exact(0);

    private final Transport before;
    private final Transport after;
    private final double risk;

    /**
     * @param before the first scene
     * @param after the second
     * @param seed seed of both
     * @param risk probability that chance alone makes any path count as changed
     */
    PathLedger(Scene before, Scene after, long seed, double risk) {
        this.before = Transport.of(before, seed);
        this.after = Transport.of(after, seed);
        this.risk = risk;
    }

    private record Path(String receiver, String via, Reflector.Part part) {}

    /** Means of the batches of one path in both scenes. */
    private static final class Batches {
        private final double[] before = new double[PAIRS];
        private final double[] after = new double[PAIRS];
    }

    /**
     * All paths to some receivers that any sample found: those that differ first, and the largest differences first.
     *
     * @param receivers names of the receivers
     * @param first receivers that come before all others
     */
    List<PathChange> of(Set<String> receivers, Set<String> first, Workers workers, Watch watch) {
        List<Callable<Map<Path, Batches>>> tasks = new ArrayList<>();
        receivers.forEach(receiver -> tasks.add(() -> to(receiver)));
        Map<Path, Batches> all = new LinkedHashMap<>();
        for (int from = 0; from < tasks.size() && !watch.stop(); from += SLICE) {
            watch.progress(STEP, from, tasks.size());
            workers.all(tasks.subList(from, Math.min(tasks.size(), from + SLICE)).stream())
                    .forEach(all::putAll);
        }
        watch.progress(STEP, tasks.size(), tasks.size());
        return all.entrySet().stream()
                .map(entry -> change(entry.getKey(), entry.getValue(), all.size()))
                .sorted(Comparator.comparing((PathChange change) -> change.kind() == PathChange.Kind.ALIKE)
                        .thenComparing(change -> !first.contains(change.receiver()))
                        .thenComparingDouble(change -> -Math.abs(change.difference())))
                .toList();
    }

    private Map<Path, Batches> to(String receiver) {
        Map<Path, Batches> found = new LinkedHashMap<>();
        for (int i = 0; i < PAIRS; i++) {
            for (boolean second : new boolean[] {false, true}) {
                Transport transport = second ? after : before;
                Scene scene = transport.scene();
                Surface surface = scene.surface(receiver).orElse(null);
                if (surface == null) {
                    continue;
                }
                Tally tally = transport.batch(new Receiver.OnSurface(surface), LightClass.ONCE_REFLECTED, i, SAMPLES);
                for (Map.Entry<Reflector, Estimate> by : tally.by().entrySet()) {
                    String via = scene.surfaces().get(by.getKey().surface()).name();
                    Batches batches = found.computeIfAbsent(
                            new Path(receiver, via, by.getKey().part()), path -> new Batches());
                    (second ? batches.after : batches.before)[i] = by.getValue().mean();
                }
            }
        }
        return found;
    }

    private PathChange change(Path path, Batches batches, int compared) {
        SurfaceValue one =
                SurfaceValue.mean(Arrays.stream(batches.before).boxed().toList());
        SurfaceValue two =
                SurfaceValue.mean(Arrays.stream(batches.after).boxed().toList());
        Change change = two.changeFrom(one);
        // Where a surface is not there at all, a path by it is new or gone for certain.
        boolean certain = !both(path.receiver) || !both(path.via);
        double chance = certain ? 0 : Math.min(1, compared * change.chance());
        PathChange.Kind kind = PathChange.Kind.ALIKE;
        if (chance <= risk) {
            kind = one.value() == 0
                    ? PathChange.Kind.NEW
                    : two.value() == 0
                            ? PathChange.Kind.GONE
                            : change.value() > 0 ? PathChange.Kind.STRONGER : PathChange.Kind.WEAKER;
        }
        return new PathChange(
                path.receiver,
                path.via,
                path.part,
                one.value(),
                two.value(),
                one.changeFrom(NONE).standardError(),
                two.changeFrom(NONE).standardError(),
                change.value(),
                change.standardError(),
                chance,
                kind);
    }

    private boolean both(String surface) {
        return before.scene().surface(surface).isPresent()
                && after.scene().surface(surface).isPresent();
    }

    /** Receivers that requirements name, in order. */
    static Set<String> receivers(Stream<RequirementResult> requirements) {
        Set<String> names = new LinkedHashSet<>();
        requirements
                .filter(each -> !(each.requirement().condition() instanceof Requirement.Clearance))
                .forEach(each -> each.outcomes()
                        .forEach(outcome -> names.add(outcome.surface().name())));
        return names;
    }
}
