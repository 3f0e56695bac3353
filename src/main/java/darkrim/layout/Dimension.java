package darkrim.layout;

import darkrim.diagnostic.Place;
import java.util.Optional;

/**
 * A named dimension.
 *
 * @param name its name
 * @param value its value, in mm for a length, in degrees for an angle
 * @param kind what it measures
 * @param text what the designer wrote: a number, a number with a unit, or a formula
 * @param tolerance how far what is built may be from the value; absent where none is stated
 * @param place where it stands
 */
public record Dimension(
        String name, double value, Quantity kind, String text, Optional<Tolerance> tolerance, Place place) {}
