/**
 * Finishes, beam sampling, direct and reflected transport, tallies. Every number comes with its standard error and
 * sample count.
 *
 * <p>In: a scene, its tree and a random stream. Out: sums with their standard errors and sample counts. Main
 * types: {@code Transport} is what verdicts rest on, {@code DirectLight} and {@code ReflectedLight} are its two
 * halves, {@code Tally} holds what arrived, {@code ManyReflections} follows every order of reflection and decides
 * nothing.
 *
 * <p>It must not know: limits, requirements, and the package shadow, which must stay an independent check of it.
 * Begin to read: {@code DirectLight}.
 */
package darkrim.light;
