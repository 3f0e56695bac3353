/**
 * Exact visible pupil, proofs of darkness and margins. No random numbers; independent of the sampled light.
 *
 * <p>In: a scene. Out: the visible pupil of a point, a proof that a surface is dark, margins in mm. Main types:
 * {@code VisiblePupil} is exact at one point, {@code DarknessProof} covers a whole surface, {@code Margins} says
 * by how much it holds, {@code WitnessRay} is a line that anyone can draw.
 *
 * <p>It must not know: random numbers, reflected energy, and the package light. Begin to read: {@code
 * VisiblePupil}.
 */
package darkrim.shadow;
