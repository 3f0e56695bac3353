package darkrim.study.comparison;

import java.util.Optional;

/**
 * Something that differs between two layouts.
 *
 * @param name its name
 * @param before what it is in the first; empty where it is not there
 * @param after what it is in the second; empty where it is not there
 * @param <T> what it is
 */
public record Changed<T>(String name, Optional<T> before, Optional<T> after) {}
