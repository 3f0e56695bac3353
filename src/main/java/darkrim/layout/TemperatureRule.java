package darkrim.layout;

import darkrim.diagnostic.Place;

/**
 * Gives a temperature to the surfaces that a pattern selects.
 *
 * @param surfaces the pattern
 * @param kelvin temperature, K
 * @param place where it stands
 */
public record TemperatureRule(String surfaces, double kelvin, Place place) {}
