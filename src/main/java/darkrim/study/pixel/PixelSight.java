package darkrim.study.pixel;

import darkrim.light.Estimate;
import darkrim.study.SurfacePoint;
import java.util.List;

/**
 * What one point sees.
 *
 * @param place where it is and why
 * @param at the point in space
 * @param area area of the pixel, mm2; 1 mm2 where no pixel pitch is known
 * @param hasPixel whether a pixel pitch is known
 * @param rays how many rays were spread over the hemisphere
 * @param exactPupil projected solid angle of the pupil, sr, without random numbers
 * @param things all that was seen, the largest first
 * @param lit projected solid angle of all surfaces, counted by the share of the pupil that shines on them, sr
 * @param onceReflected relative irradiance by light of the beam after one reflection
 * @param warm all warm light, however often reflected; nothing where nothing is said of temperatures
 * @param mostPhotons no pixel of this size can get more warm light than this, photons/s: all black and as warm as the warmest; proved
 */
public record PixelSight(
        PixelPlace place,
        SurfacePoint at,
        double area,
        boolean hasPixel,
        long rays,
        double exactPupil,
        List<SeenThing> things,
        Estimate lit,
        Estimate onceReflected,
        WarmLight warm,
        double mostPhotons) {
    /** Copies the list. */
    public PixelSight {
        things = List.copyOf(things);
    }

    /** Projected solid angle of all things of a kind, sr. */
    public double seen(SeenThing.Kind kind) {
        return things.stream()
                .filter(thing -> thing.kind() == kind)
                .mapToDouble(thing -> thing.seen().mean())
                .sum();
    }
}
