package darkrim.study.irradiance;

import darkrim.layout.Requirement;
import darkrim.light.Estimate;
import darkrim.scene.Scene;
import darkrim.scene.Surface;
import darkrim.study.CheckResult;
import darkrim.verdict.Evidence;
import darkrim.verdict.Outcome;
import darkrim.verdict.RequirementResult;
import darkrim.verdict.SurfaceResult;
import darkrim.verdict.Verdict;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** What a check found of whole surfaces, for pictures. */
public final class CheckedSurfaces {
    private CheckedSurfaces() {}

    /** The mean irradiance of every surface, one cell each, in the order of the scene. */
    public static List<SurfaceMap> means(CheckResult result) {
        List<SurfaceMap> means = new ArrayList<>();
        for (SurfaceResult found : result.judgement().surfaces()) {
            SurfaceCells whole = SurfaceCells.whole(result.scene(), found.surface());
            Estimate direct = found.direct().irradiance();
            Estimate reflected = found.onceReflected().irradiance();
            means.add(new SurfaceMap(whole, isProvedDark(found), List.of(direct), List.of(reflected), 1));
        }
        return means;
    }

    /** The surfaces that are proved to get no direct light. */
    public static List<Surface> provedDark(CheckResult result) {
        return result.judgement().surfaces().stream()
                .filter(CheckedSurfaces::isProvedDark)
                .map(SurfaceResult::surface)
                .toList();
    }

    /**
     * The verdict on every surface of which light is kept away by a requirement, by number: all such requirements and cells together. Whether
     * a surface sees enough of the pupil is no part of it.
     */
    public static Map<Integer, Verdict> keptDark(CheckResult result) {
        Map<Integer, Verdict> verdicts = new HashMap<>();
        for (RequirementResult requirement : result.judgement().requirements()) {
            if (!(requirement.requirement().condition() instanceof Requirement.PupilSeen)) {
                for (Outcome outcome : requirement.outcomes()) {
                    verdicts.merge(outcome.surface().index(), outcome.verdict(), Verdict::and);
                }
            }
        }
        return verdicts;
    }

    /** The mean of every surface of a scene with nothing sampled yet. */
    public static List<SurfaceMap> unsampled(Scene scene, MapSampling sampling) {
        return scene.surfaces().stream()
                .map(surface -> sampling.unsampled(SurfaceCells.whole(scene, surface)))
                .toList();
    }

    private static boolean isProvedDark(SurfaceResult found) {
        return found.darkness().map(Evidence.ProvedDark.class::isInstance).orElse(false);
    }
}
