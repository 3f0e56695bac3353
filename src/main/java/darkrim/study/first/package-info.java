/**
 * A first layout from what a designer knows on the first day: the detectors, the pupil and where the opening's
 * edge may stand.
 *
 * <p>In: {@code FirstWishes}: a few numbers. Out: the text of a layout file that can be checked at once. Main
 * types: {@code FirstBaffle} has the similar triangles, {@code FirstLayout} the text.
 *
 * <p>It must not know: checks: what it writes is judged like any other file. Begin to read: {@code FirstBaffle}.
 */
package darkrim.study.first;
