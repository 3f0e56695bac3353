package darkrim.verdict;

import darkrim.scene.Surface;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * What was proved, without a sample.
 *
 * @param dark of surfaces, whether they are dark
 * @param seen of surfaces, what share of the pupil every point sees
 * @param mostReflected of surfaces, an upper bound of the mean once-reflected irradiance, relative
 */
public record Proofs(
        Map<Surface, Evidence> dark, Map<ShareQuestion, Evidence.ExactShare> seen, Map<Surface, Double> mostReflected) {
    /** Copies the maps. */
    public Proofs {
        dark = new LinkedHashMap<>(dark);
        seen = Map.copyOf(seen);
        mostReflected = Map.copyOf(mostReflected);
    }

    /**
     * Whether every point of a surface sees at least a share of the pupil.
     *
     * @param surface the surface
     * @param share the share, 0 to 1
     */
    record ShareQuestion(Surface surface, double share) {}

    /** What the proof of darkness says of a surface, if it was asked. */
    Optional<Evidence> darkness(Surface surface) {
        return Optional.ofNullable(dark.get(surface));
    }

    /** What share of the pupil every point of a surface sees. */
    Evidence.ExactShare share(Surface surface, double asked) {
        return seen.getOrDefault(new ShareQuestion(surface, asked), Evidence.ExactShare.UNKNOWN);
    }

    /** No mean once-reflected irradiance of the surface is above this, if a bound was asked for. */
    OptionalDouble bound(Surface surface) {
        Double known = mostReflected.get(surface);
        return known == null ? OptionalDouble.empty() : OptionalDouble.of(known);
    }

    /** The surfaces that are proved dark. */
    Set<Surface> provedDark() {
        return provedDark(dark);
    }

    static Set<Surface> provedDark(Map<Surface, Evidence> dark) {
        return dark.entrySet().stream()
                .filter(entry -> entry.getValue() instanceof Evidence.ProvedDark)
                .map(Map.Entry::getKey)
                .collect(Collectors.toSet());
    }
}
