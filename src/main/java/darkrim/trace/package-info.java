/**
 * Nearest hit and blocked-or-not through a bounding-volume tree. Hot code; knows only triangles.
 *
 * <p>In: facets as arrays of numbers. Out: the nearest facet on a ray, or whether anything stands in its way. Main
 * types: {@code FacetTree} promises, {@code TreeBuilder} builds, {@code StartPoints} puts the start of a ray that
 * leaves a facet. Nothing is allocated for a ray.
 *
 * <p>It must not know: surfaces, finishes, beams: it has triangles only. Begin to read: {@code FacetTree}.
 */
package darkrim.trace;
