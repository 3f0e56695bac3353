/**
 * How far parts keep apart, warm, cold, and while they are put together.
 *
 * <p>In: an assembly, warm and cold, and requirements about clearances. Out: a verdict for each, with the two
 * surfaces and the least distance between them. Main types: {@code Clearances} decides, {@code Nesting} sees
 * whether one part stands inside another, which is no distance at all.
 *
 * <p>It must not know: light, samples, confidence: a distance is exact but for rounding. Begin to read: {@code
 * Clearances}.
 */
package darkrim.study.clearance;
