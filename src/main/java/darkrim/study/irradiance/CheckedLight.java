package darkrim.study.irradiance;

import darkrim.diagnostic.Finding;
import darkrim.layout.Layout;
import darkrim.layout.Requirement;
import darkrim.light.Estimate;
import darkrim.light.Reflector;
import darkrim.light.Tally;
import darkrim.scene.Scene;
import darkrim.study.CheckResult;
import darkrim.verdict.Evidence;
import darkrim.verdict.Outcome;
import darkrim.verdict.RequirementResult;
import darkrim.verdict.SurfaceResult;
import darkrim.verdict.Verdict;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/**
 * What a check found of the light on each surface, as far as pictures show it.
 *
 * @param layout what the designer wrote
 * @param seed seed of the sampled numbers
 * @param scene the scene
 * @param surfaces what was found, by number of the surface
 * @param verdicts on the surfaces of which light is kept away, by number
 * @param warnings what deserves attention in the layout
 * @param stopped whether the check was stopped before its end
 */
public record CheckedLight(
        Layout layout,
        long seed,
        Scene scene,
        List<OnSurface> surfaces,
        Map<Integer, Verdict> verdicts,
        List<Finding> warnings,
        boolean stopped) {
    /** Copies the collections. */
    public CheckedLight {
        surfaces = List.copyOf(surfaces);
        verdicts = Map.copyOf(verdicts);
        warnings = List.copyOf(warnings);
    }

    /**
     * What was found of one surface.
     *
     * @param proof whether it is proved to get no direct light
     * @param direct mean direct light
     * @param reflected mean once-reflected light
     * @param ray a ray straight from the pupil: its ends, mm; empty where none is known
     * @param strongest what reflects most of its once-reflected light; empty where there is none
     */
    public record OnSurface(
            DarkProof proof, Estimate direct, Estimate reflected, List<Vector3D> ray, Optional<Reflector> strongest) {
        /** Copies the list. */
        public OnSurface {
            ray = List.copyOf(ray);
        }
    }

    /** From a check of this run. */
    public static CheckedLight of(CheckResult result) {
        List<OnSurface> surfaces = new ArrayList<>();
        for (SurfaceResult found : result.judgement().surfaces()) {
            surfaces.add(new OnSurface(
                    DarkProof.of(found.darkness()),
                    found.direct().irradiance(),
                    found.onceReflected().irradiance(),
                    ray(found.darkness().orElse(null), found.direct()),
                    strongest(found.onceReflected())));
        }
        return new CheckedLight(
                result.layout(),
                result.effort().seed(),
                result.scene(),
                surfaces,
                keptDark(result),
                result.warnings(),
                result.judgement().stopped());
    }

    /** All requirements and cells together. Whether a surface sees enough of the pupil, or keeps clear of others, is no part of it. */
    private static Map<Integer, Verdict> keptDark(CheckResult result) {
        Map<Integer, Verdict> verdicts = new HashMap<>();
        for (RequirementResult requirement : result.judgement().requirements()) {
            Requirement.Condition condition = requirement.requirement().condition();
            if (!(condition instanceof Requirement.PupilSeen || condition instanceof Requirement.Clearance)) {
                for (Outcome outcome : requirement.outcomes()) {
                    verdicts.merge(outcome.surface().index(), outcome.verdict(), Verdict::and);
                }
            }
        }
        return verdicts;
    }

    private static List<Vector3D> ray(Evidence evidence, Tally direct) {
        if (evidence instanceof Evidence.WitnessRay witness) {
            return List.of(witness.onPupil(), witness.onSurface());
        }
        return direct.example()
                .map(example -> List.of(example.onPupil(), example.onReceiver()))
                .orElse(List.of());
    }

    /** What reflects most of some light; empty where there is none. */
    static Optional<Reflector> strongest(Tally reflected) {
        return reflected.by().entrySet().stream()
                .filter(entry -> entry.getValue().mean() > 0)
                .max(Comparator.comparingDouble(entry -> entry.getValue().mean()))
                .map(Map.Entry::getKey);
    }

    /** The mean irradiance of every surface, one cell each, by number. */
    public List<SurfaceMap> means() {
        List<SurfaceMap> means = new ArrayList<>();
        for (int i = 0; i < surfaces.size(); i++) {
            SurfaceCells whole = SurfaceCells.whole(scene, scene.surfaces().get(i));
            OnSurface found = surfaces.get(i);
            means.add(new SurfaceMap(whole, found.proof(), List.of(found.direct()), List.of(found.reflected()), 1));
        }
        return means;
    }
}
