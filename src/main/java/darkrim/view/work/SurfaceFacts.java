package darkrim.view.work;

import darkrim.scene.Scene;
import darkrim.scene.Surface;
import darkrim.study.irradiance.DarkProof;
import darkrim.verdict.Verdict;
import darkrim.view.look.Light;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * What is known of the light on a surface.
 *
 * @param direct straight from the pupil, mean over the surface
 * @param onceReflected after one reflection, likewise
 * @param judged what each requirement on it says
 * @param paths by which surfaces reflected light comes, strongest first
 * @param rays rays that bring it light straight from where the light comes from
 */
public record SurfaceFacts(
        Reading direct, Reading onceReflected, List<Judged> judged, List<PathFact> paths, List<Judged.Line> rays) {
    /** Copies the lists. */
    public SurfaceFacts {
        judged = List.copyOf(judged);
        paths = List.copyOf(paths);
        rays = List.copyOf(rays);
    }

    /** With the rays that verdicts rest on. */
    SurfaceFacts(Reading direct, Reading onceReflected, List<Judged> judged, List<PathFact> paths) {
        this(
                direct,
                onceReflected,
                judged,
                paths,
                judged.stream().flatMap(each -> each.ray().stream()).distinct().toList());
    }

    /** The light of a class. */
    public Reading of(Light light) {
        return switch (light) {
            case DIRECT -> direct;
            case ONCE_REFLECTED -> onceReflected;
            case TOTAL -> direct.and(onceReflected);
            case NONE -> Reading.UNKNOWN;
        };
    }

    /** Whether it is proved to get no direct light. */
    public DarkProof proof() {
        return direct.equals(Reading.NONE)
                ? DarkProof.PROVED
                : direct.behindFacets() ? DarkProof.BEHIND_FACETS : DarkProof.NONE;
    }

    /** What is proved of surfaces; those of which nothing is are left out. */
    static Map<Surface, DarkProof> proofs(Scene scene, Map<String, SurfaceFacts> known) {
        Map<Surface, DarkProof> proofs = new HashMap<>();
        for (Surface surface : scene.surfaces()) {
            SurfaceFacts facts = known.get(surface.name());
            if (facts != null && facts.proof() != DarkProof.NONE) {
                proofs.put(surface, facts.proof());
            }
        }
        return proofs;
    }

    /** What the requirements say of it together; empty where there are none. */
    public Optional<Verdict> verdict() {
        return judged.stream().map(Judged::verdict).reduce(Verdict::and);
    }

    /** What the requirements that keep light away from it say together; empty where there are none. */
    public Optional<Verdict> keptDark() {
        return judged.stream().filter(Judged::keepDark).map(Judged::verdict).reduce(Verdict::and);
    }
}
