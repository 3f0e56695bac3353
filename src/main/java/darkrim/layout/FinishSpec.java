package darkrim.layout;

import darkrim.diagnostic.Place;
import darkrim.reflection.Reflection;
import java.util.Optional;

/**
 * A finish as the designer wrote it, for the layout's band of wavelengths.
 *
 * @param name its name
 * @param reflection how it reflects
 * @param source where the numbers come from, in the designer's words or those of the finish library; may be empty
 * @param place where it stands
 * @param emissivity emissivity at normal incidence, 0 to 1, not more than what is not reflected; absent: all that is not reflected
 */
public record FinishSpec(String name, Reflection reflection, String source, Place place, Optional<Double> emissivity) {
    /** A finish that emits as much as Kirchhoff's law says. */
    public FinishSpec(String name, Reflection reflection, String source, Place place) {
        this(name, reflection, source, place, Optional.empty());
    }

    /**
     * A finish that reflects the same at every angle.
     *
     * @param diffuse reflectance of the Lambertian part, 0 to 1
     * @param mirror reflectance of the mirror part, 0 to 1
     */
    public FinishSpec(String name, double diffuse, double mirror, String source, Place place) {
        this(name, Reflection.of(diffuse, mirror), source, place);
    }

    /** The same with an emissivity at normal incidence. */
    FinishSpec emitting(Optional<Double> other) {
        return new FinishSpec(name, reflection, source, place, other);
    }

    /** Total hemispherical reflectance of all but the mirror part at normal incidence, 0 to 1. */
    public double diffuse() {
        return reflection.broadReflectance(1) + reflection.lobeReflectance(1);
    }

    /** Reflectance of the mirror part at normal incidence, 0 to 1. */
    public double mirror() {
        return reflection.mirror(1);
    }
}
