package darkrim.layout;

import darkrim.diagnostic.Place;

/**
 * A named dimension.
 *
 * @param name its name
 * @param value its value, in mm for a length, in degrees for an angle
 * @param kind what it measures
 * @param text what the designer wrote: a number, a number with a unit, or a formula
 * @param place where it stands
 */
public record Dimension(String name, double value, Quantity kind, String text, Place place) {}
