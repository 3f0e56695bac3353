package darkrim.layout;

import darkrim.diagnostic.Place;

/**
 * Gives a finish to the surfaces that a pattern selects.
 *
 * @param surfaces the pattern
 * @param finish name of the finish
 * @param place where it stands
 */
public record FinishRule(String surfaces, String finish, Place place) {}
