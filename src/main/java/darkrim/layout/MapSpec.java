package darkrim.layout;

import darkrim.diagnostic.Place;

/**
 * Where maps are wanted.
 *
 * @param surfaces pattern that selects rectangular surfaces
 * @param columns cells along the first side
 * @param rows cells along the second side
 * @param place where this stands in the file
 */
public record MapSpec(String surfaces, int columns, int rows, Place place) {
    /** What holds where nothing is stated: 16 by 16 cells on every active area. */
    public static final MapSpec DEFAULT = new MapSpec("**/active", 16, 16, Place.IN_CODE);
    /** Stands in a partial layout for maps that could not be read; nothing is said of surfaces that lack one then. */
    public static final MapSpec UNREAD = new MapSpec("", 0, 0, Place.IN_CODE);
}
