package darkrim.present;

import darkrim.light.Estimate;
import darkrim.light.Reflector;
import darkrim.scene.Surface;
import darkrim.verdict.SurfaceResult;
import java.util.Comparator;
import java.util.List;
import java.util.Map;

/**
 * Light that comes from the pupil by one surface to a receiver.
 *
 * @param receiver where it arrives
 * @param via the surface that reflects it
 * @param reflector the part of its finish
 * @param irradiance relative irradiance that it gives the receiver
 * @param incidence angle at which light strikes the surface, deg: that of the mean cosine, weighted by what comes
 * @param share that over all once-reflected light of the receiver, 0 to 1
 */
public record LightPath(
        Surface receiver, Surface via, Reflector.Part reflector, Estimate irradiance, double incidence, double share) {
    /** The paths to a receiver that carry light, strongest first. */
    public static List<LightPath> to(SurfaceResult receiver, List<Surface> surfaces) {
        double whole = receiver.onceReflected().irradiance().mean();
        return receiver.onceReflected().by().entrySet().stream()
                .filter(entry -> entry.getValue().mean() > 0)
                .map(entry -> of(receiver, surfaces, entry, whole))
                .sorted(Comparator.comparingDouble((LightPath path) -> path.irradiance.mean())
                        .reversed()
                        .thenComparing(path -> path.via.index())
                        .thenComparing(LightPath::reflector))
                .toList();
    }

    private static LightPath of(
            SurfaceResult receiver, List<Surface> surfaces, Map.Entry<Reflector, Estimate> entry, double whole) {
        Reflector reflector = entry.getKey();
        Estimate irradiance = entry.getValue();
        double cosine = receiver.onceReflected().incidences().get(reflector);
        return new LightPath(
                receiver.surface(),
                surfaces.get(reflector.surface()),
                reflector.part(),
                irradiance,
                Math.toDegrees(StrictMath.acos(Math.min(1, cosine))),
                irradiance.mean() / whole);
    }

    /** The part of the finish in a word. */
    public String part() {
        return reflector.word();
    }
}
