/**
 * Random streams that depend on names and numbers, never on threads. A leaf: it imports nothing else of Darkrim.
 *
 * <p>In: a seed and names of what is sampled. Out: numbers that are the same for any number of threads. Main
 * types: {@code Streams} names streams, {@code SamplePoints} are points of one.
 *
 * <p>It must not know: what the numbers are used for. Begin to read: {@code Streams}.
 */
package darkrim.sampling;
