package darkrim.verdict;

import darkrim.light.Tally;
import darkrim.scene.Surface;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.BiPredicate;

/**
 * What was found for a surface.
 *
 * @param surface the surface
 * @param direct sampled direct light
 * @param onceReflected sampled once-reflected light
 * @param darkness what the proof of darkness says, for surfaces of which a requirement asks it
 * @param mostReflected proved upper bound of the mean once-reflected irradiance, relative, for surfaces of which a requirement asks it
 */
public record SurfaceResult(
        Surface surface, Tally direct, Tally onceReflected, Optional<Evidence> darkness, OptionalDouble mostReflected) {
    /** The same with the margin of the surface put into the evidence, where there is one. */
    SurfaceResult with(Map<Surface, LightMargin> margins) {
        Optional<Evidence> known =
                darkness.map(evidence -> margins.containsKey(surface) ? evidence.with(margins.get(surface)) : evidence);
        return new SurfaceResult(surface, direct, onceReflected, known, mostReflected);
    }

    /** The same with its proof of darkness taken back to the facets where it is in doubt. */
    SurfaceResult doubting(BiPredicate<Surface, Evidence.ProvedDark> doubtful) {
        Optional<Evidence> known =
                darkness.map(evidence -> evidence instanceof Evidence.ProvedDark dark && doubtful.test(surface, dark)
                        ? dark.behindFacets()
                        : evidence);
        return new SurfaceResult(surface, direct, onceReflected, known, mostReflected);
    }
}
