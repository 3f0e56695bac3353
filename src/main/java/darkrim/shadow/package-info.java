/** Exact visible pupil, proofs of darkness and margins. No random numbers; independent of the sampled light. */
package darkrim.shadow;
