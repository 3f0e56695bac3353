package darkrim.layout;

/**
 * Where maps are wanted.
 *
 * @param surfaces pattern that selects rectangular surfaces
 * @param columns cells along the first side
 * @param rows cells along the second side
 */
public record MapSpec(String surfaces, int columns, int rows) {
    /** What holds where nothing is stated: 16 by 16 cells on every active area. */
    public static final MapSpec DEFAULT = new MapSpec("**/active", 16, 16);
}
