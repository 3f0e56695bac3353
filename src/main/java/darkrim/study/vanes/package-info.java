/**
 * Where vanes must stand in a tube or cone, and the proof that they do their work there.
 *
 * <p>In: a tube or cone and what the vanes must hide ({@code VaneTask}, {@code VaneForm}). Out: heights and edges
 * of vanes, lines of a layout, and a {@code VaneProof} for these lines. Main types: {@code VaneConstruction} has
 * the lines of the textbook, {@code VaneProof} reads back what was written and proves it, {@code VaneText} writes
 * it.
 *
 * <p>It must not know: options of the command; and the proof knows nothing of the construction. Begin to read:
 * {@code VaneConstruction}.
 */
package darkrim.study.vanes;
