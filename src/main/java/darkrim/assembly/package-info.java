/**
 * Parts of a layout turned into placed, named surfaces of triangles. No light. Lengths in mm, angles in degrees.
 *
 * <p>In: a layout, warm or cold. Out: an {@code Assembly}, whose faces share their corners to the last bit, and
 * findings about how parts stand to one another. Main types: {@code PartPieces} turns each kind of part into a
 * {@code Piece}, {@code PartPlacer} puts it in place, {@code Feasibility} compares openings with the room on a
 * die, {@code Selection} finds surfaces by pattern.
 *
 * <p>It must not know: rays, light and verdicts. Begin to read: {@code PartPlacer}, then {@code SimplePieces}.
 */
package darkrim.assembly;
