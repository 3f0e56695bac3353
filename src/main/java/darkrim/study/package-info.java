/**
 * Checks: one, and many.
 *
 * <p>In: a layout file and how hard to work. Out: a {@code CheckResult}; studies of many checks live in the
 * packages below. Main types: {@code Check} is the whole way from file to verdict on one page. {@code PlacedScene}
 * is a layout made ready for light, {@code PointCheck} looks from one point, {@code Effort} bounds the work.
 *
 * <p>It must not know: tables, pictures, options of commands, standard streams. Begin to read: {@code Check}.
 */
package darkrim.study;
