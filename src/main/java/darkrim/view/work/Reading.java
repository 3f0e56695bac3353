package darkrim.view.work;

import darkrim.light.Estimate;
import darkrim.present.Figures;
import darkrim.present.picture.LightChoice;
import darkrim.scene.Scene;

/**
 * A relative irradiance.
 *
 * @param value the value; NaN where it is not known
 * @param error its standard error; 0 where it is exact, infinite where it is unknown
 */
public record Reading(double value, double error) {
    /** Not known. */
    public static final Reading UNKNOWN = new Reading(Double.NaN, Double.POSITIVE_INFINITY);
    /** None, by proof or because nothing can carry light there. */
    public static final Reading NONE = new Reading(0, 0);

    /** A sampled mean. Where no sample met light its error is that of a single largest sample: no proof that there is none. */
    public static Reading of(Estimate estimate) {
        if (estimate.largest() == 0) {
            return NONE;
        }
        if (estimate.samples() < 2) {
            return UNKNOWN;
        }
        return estimate.mean() == 0
                ? new Reading(0, estimate.largest() / estimate.samples())
                : new Reading(estimate.mean(), estimate.standardError());
    }

    /** Both lights together; their errors are independent. */
    public Reading and(Reading other) {
        return new Reading(value + other.value, Math.sqrt(error * error + other.error * other.error));
    }

    /**
     * In letters, in W/m2 as well where the radiance of the beam is known, such as {@code 0.708 +- 0.003, 1.42 +- 0.01 W/m2}.
     *
     * @param scene what the light is in
     */
    public String words(Scene scene) {
        if (scene.beam().radiance().isEmpty() || !(value > 0)) {
            return words();
        }
        double unit = LightChoice.perRelative(scene);
        return words() + ", " + new Reading(value * unit, error * unit).words() + " W/m2";
    }

    /** In letters, such as {@code 0.708 +- 0.003}. */
    public String words() {
        if (Double.isNaN(value)) {
            return "not measured";
        }
        if (value == 0 && error > 0) {
            return "none found";
        }
        return error == 0 ? Figures.three(value) : Figures.withError(value, error);
    }
}
