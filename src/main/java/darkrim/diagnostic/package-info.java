/**
 * Findings about what the user wrote, each with its place. A leaf: it imports nothing else of Darkrim.
 *
 * <p>In: a place and a sentence. Out: all findings together, in the order of the file. Main types: {@code
 * Finding}, {@code Findings}, {@code Place}, {@code UnusableInput}.
 *
 * <p>It must not know: what is found wrong: others say it. Begin to read: {@code Findings}.
 */
package darkrim.diagnostic;
