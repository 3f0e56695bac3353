package darkrim.study.review;

import darkrim.layout.Requirement.LightClass;
import darkrim.light.Estimate;
import darkrim.light.Reflector;
import darkrim.scene.Scene;
import darkrim.scene.Surface;
import darkrim.study.CheckResult;
import darkrim.study.way.Way;
import darkrim.study.way.WaySearch;
import darkrim.trace.FacetTree;
import darkrim.verdict.Evidence;
import darkrim.verdict.Outcome;
import darkrim.verdict.RequirementResult;
import darkrim.verdict.SurfaceResult;
import darkrim.verdict.Verdict;
import darkrim.verdict.Watch;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/**
 * Chooses the ways of light that a review draws: of each requirement on direct light that fails the ray to its worst surface, and of each limit on
 * once-reflected light the strongest paths to its worst surface.
 */
final class PathChoice {
    private static final int OF_A_RECEIVER = 3;
    private static final int MOST = 8;
    private static final double LEAST_SHARE = 0.05;
    /** Ways that are tried until one is found. */
    private static final int TRIES = 300_000;

    private final CheckResult result;
    private final Scene scene;
    private final Watch watch;

    PathChoice(CheckResult result, Watch watch) {
        this.result = result;
        this.scene = result.scene();
        this.watch = watch;
    }

    List<DrawnPath> paths() {
        List<DrawnPath> paths = new ArrayList<>();
        Set<Integer> reached = new HashSet<>();
        WaySearch search = new WaySearch(scene, FacetTree.build(scene.corners(), scene.copyPlanes(), scene.bound()));
        for (RequirementResult each : result.judgement().requirements()) {
            if (paths.size() >= MOST || each.outcomes().isEmpty() || watch.stop()) {
                continue;
            }
            Outcome worst = each.worst();
            if (each.verdict() == Verdict.FAIL && worst.evidence() instanceof Evidence.WitnessRay ray) {
                paths.add(new DrawnPath(worst.surface(), Optional.empty(), Optional.empty(), 1, direct(ray)));
            } else if (each.requirement().limits(LightClass.ONCE_REFLECTED)
                    && reached.add(worst.surface().index())) {
                reflected(
                        search,
                        result.judgement().surfaces().get(worst.surface().index()),
                        paths);
            }
        }
        return paths.subList(0, Math.min(MOST, paths.size()));
    }

    /** The ray as it bends in a window, if there is one. */
    private List<Vector3D> direct(Evidence.WitnessRay ray) {
        Vector3D seems = scene.beam().seems(ray.onSurface(), ray.onPupil());
        List<Vector3D> points = bending(ray.onSurface(), seems);
        points.add(ray.onSurface());
        return points;
    }

    private List<Vector3D> points(Way way) {
        List<Vector3D> points = bending(way.reflected(), way.onPupil());
        points.add(way.reflected());
        points.add(way.arrives());
        return points;
    }

    private List<Vector3D> bending(Vector3D at, Vector3D seems) {
        return new ArrayList<>(
                scene.beam().window().isEmpty() ? List.of(seems) : scene.beam().course(at, seems.subtract(at)));
    }

    private void reflected(WaySearch search, SurfaceResult receiver, List<DrawnPath> paths) {
        double whole = receiver.onceReflected().irradiance().mean();
        List<Map.Entry<Reflector, Estimate>> strongest = receiver.onceReflected().by().entrySet().stream()
                .filter(entry -> entry.getValue().mean() > LEAST_SHARE * whole)
                .sorted(Comparator.comparingDouble((Map.Entry<Reflector, Estimate> entry) ->
                                -entry.getValue().mean())
                        .thenComparing(Map.Entry.comparingByKey()))
                .limit(OF_A_RECEIVER)
                .toList();
        for (Map.Entry<Reflector, Estimate> entry : strongest) {
            Surface via = scene.surfaces().get(entry.getKey().surface());
            Reflector.Part part = entry.getKey().part();
            for (Way way : search.find(receiver.surface(), via, part, 1, TRIES, watch::stop)) {
                paths.add(new DrawnPath(
                        receiver.surface(),
                        Optional.of(via),
                        Optional.of(part),
                        entry.getValue().mean() / whole,
                        points(way)));
            }
        }
    }
}
