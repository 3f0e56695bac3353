/**
 * What to change so that a layout passes.
 *
 * <p>In: a layout file, dimensions that may change and their ranges ({@code AdviceSettings}). Out: an {@code
 * Advice}: for each requirement the smallest change of one dimension, for all the smallest change together, a
 * {@code Proposal} with a full check of it, or an {@code Exclusion}: requirements that nothing fulfils
 * together. Main types: {@code AdviceStudy} is the way from first check to proposal, {@code AxisSearch} moves one
 * dimension until a requirement changes sides, {@code JointSearch} moves all by linear programmes
 * (docs/decisions/0014), {@code Blackness} asks the same of a finish.
 *
 * <p>It must not know: how an advice is worded, and single rays: it only sees whole checks. Begin to read: {@code
 * AdviceStudy}.
 */
package darkrim.study.advice;
