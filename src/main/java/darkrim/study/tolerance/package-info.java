/**
 * How what is built differs from what is drawn, and what that does to the requirements.
 *
 * <p>In: a layout file with tolerances. Out: a {@code ToleranceResult}: worst case, root sum square and sampled
 * builds, with the yield and its interval. Main types: {@code ToleranceStudy} is the way, {@code DeviatingLayout}
 * a build, {@code Contributor} one thing that deviates, {@code WorstCase} the worst that was found, {@code
 * YieldInterval} the interval, {@code LoosestFactor} how much looser tolerances could be. docs/decisions/0012 says
 * why builds are independent.
 *
 * <p>It must not know: nominal sweeps, and how results are shown. Begin to read: {@code ToleranceStudy}.
 */
package darkrim.study.tolerance;
