package darkrim.scene;

import darkrim.emission.Planck;
import java.util.Arrays;
import java.util.HashMap;
import java.util.Map;
import java.util.function.ToDoubleFunction;

/**
 * What surfaces, the pupil and the surroundings would emit within a band if they were black, and how far they are. Immutable.
 *
 * <p>What no reflection throws back is emitted (Kirchhoff's law: emissivity is 1 less the reflectance at each angle), unless an emissivity
 * is stated: it then holds wherever that much is left by the reflection.
 */
public final class Warmth {
    private final double[] kelvins;
    private final double[] photons;
    private final double[] watts;
    private final double[] mostEmissive;
    private final Beyond surroundings;
    private final Beyond pupil;
    private final double from;
    private final double to;

    /**
     * What emits and is no surface.
     *
     * @param kelvin temperature, K
     * @param emissivity 0 to 1
     */
    public record Emitter(double kelvin, double emissivity) {
        /** Emits nothing. */
        public static final Emitter NONE = new Emitter(0, 0);
    }

    private record Beyond(double kelvin, double photons, double watts) {}

    /**
     * @param scene the scene
     * @param kelvin temperature of a surface, K
     * @param emissivity stated emissivity of a surface; infinite where none is stated
     * @param surroundings what is met where no part stands
     * @param pupil what is met where the beam comes from
     * @param from shortest wavelength of the band, um
     * @param to longest wavelength, um
     */
    public Warmth(
            Scene scene,
            ToDoubleFunction<Surface> kelvin,
            ToDoubleFunction<Surface> emissivity,
            Emitter surroundings,
            Emitter pupil,
            double from,
            double to) {
        this.from = from;
        this.to = to;
        kelvins = scene.surfaces().stream().mapToDouble(kelvin).toArray();
        mostEmissive = scene.surfaces().stream().mapToDouble(emissivity).toArray();
        Map<Double, Beyond> black = new HashMap<>();
        photons = new double[kelvins.length];
        watts = new double[kelvins.length];
        for (int i = 0; i < kelvins.length; i++) {
            Beyond found = black.computeIfAbsent(kelvins[i], any -> beyond(new Emitter(any, 1)));
            photons[i] = found.photons;
            watts[i] = found.watts;
        }
        this.surroundings = beyond(surroundings);
        this.pupil = beyond(pupil);
    }

    private Beyond beyond(Emitter emitter) {
        return new Beyond(
                emitter.kelvin(),
                emitter.emissivity() * Planck.photonRadiance(emitter.kelvin(), from, to),
                emitter.emissivity() * Planck.radiance(emitter.kelvin(), from, to));
    }

    /** Shortest wavelength of the band, um. */
    public double from() {
        return from;
    }

    /** Longest wavelength of the band, um. */
    public double to() {
        return to;
    }

    /** Temperature of a surface by its number, K. */
    public double kelvin(int surface) {
        return kelvins[surface];
    }

    /** Temperature of the surroundings, K. */
    public double surroundingsKelvin() {
        return surroundings.kelvin;
    }

    /** Temperature of what is seen through the pupil, K. */
    public double pupilKelvin() {
        return pupil.kelvin;
    }

    /** Photon radiance of a black body as warm as a surface, photons/(s m2 sr). */
    public double photons(int surface) {
        return photons[surface];
    }

    /** Radiance of a black body as warm as a surface, W/(m2 sr). */
    public double watts(int surface) {
        return watts[surface];
    }

    /** Photon radiance of the surroundings, photons/(s m2 sr). */
    public double surroundingsPhotons() {
        return surroundings.photons;
    }

    /** Radiance of the surroundings, W/(m2 sr). */
    public double surroundingsWatts() {
        return surroundings.watts;
    }

    /** Photon radiance of what is seen through the pupil, photons/(s m2 sr). */
    public double pupilPhotons() {
        return pupil.photons;
    }

    /** Radiance of what is seen through the pupil, W/(m2 sr). */
    public double pupilWatts() {
        return pupil.watts;
    }

    /** The emissivity of a surface that reflects this much at the angle in question. */
    public double emissivity(int surface, double reflectance) {
        return Math.min(mostEmissive[surface], Math.max(0, 1 - reflectance));
    }

    /**
     * No photon radiance in the scene is larger, photons/(s m2 sr): that of the warmest, were it black. Reflection adds nothing, for no surface
     * emits and reflects more than a black one emits.
     */
    public double mostPhotons() {
        return Math.max(Arrays.stream(photons).max().orElse(0), Math.max(surroundings.photons, pupil.photons));
    }

    /** No radiance in the scene is larger, W/(m2 sr). */
    public double mostWatts() {
        return Math.max(Arrays.stream(watts).max().orElse(0), Math.max(surroundings.watts, pupil.watts));
    }
}
