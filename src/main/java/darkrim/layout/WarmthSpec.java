package darkrim.layout;

import darkrim.diagnostic.Place;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * What is warm, and the band in which detectors take notice of it.
 *
 * @param kelvin temperature of all that states none, K
 * @param from shortest wavelength to which the detectors respond, um
 * @param to longest wavelength, the cut-off, um
 * @param quantumEfficiency share of the photons that are counted, 0 to 1
 * @param pixelPitch pixel pitch on surfaces that belong to no detector, mm; absent where not stated
 * @param surroundings temperature of all that is met where no part stands and no light of the beam comes from, black, K; absent: it emits nothing
 * @param pupil what the pupil emits; absent: nothing
 * @param parts temperatures of parts by name, K
 * @param rules temperatures of chosen surfaces, in the order of the file; a later rule wins over an earlier one and over the part
 * @param place where it stands
 */
public record WarmthSpec(
        double kelvin,
        double from,
        double to,
        double quantumEfficiency,
        Optional<Double> pixelPitch,
        Optional<Double> surroundings,
        Optional<WarmPupil> pupil,
        Map<String, Double> parts,
        List<TemperatureRule> rules,
        Place place) {
    /** Copies the collections. */
    public WarmthSpec {
        parts = Map.copyOf(parts);
        rules = List.copyOf(rules);
    }

    /**
     * The optics as seen through the pupil.
     *
     * @param kelvin temperature, K
     * @param emissivity of all of them together, 0 to 1
     */
    public record WarmPupil(double kelvin, double emissivity) {}
}
