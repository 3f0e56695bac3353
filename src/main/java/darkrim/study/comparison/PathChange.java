package darkrim.study.comparison;

import darkrim.light.Reflector;

/**
 * A light path, from the pupil by one surface to a receiver, before and after.
 *
 * @param receiver name of the receiver
 * @param via name of the surface that reflects
 * @param part the part of its finish
 * @param before relative irradiance that it gives in the first layout; 0 where no sample found it
 * @param after likewise in the second
 * @param errorBefore standard error
 * @param errorAfter standard error
 * @param difference after less before, the mean of the pairs
 * @param error standard error of the difference: from the pairs where both layouts have the receiver
 * @param chance probability that chance alone makes a difference as large in any of the paths that were compared
 * @param kind what happened to it
 */
public record PathChange(
        String receiver,
        String via,
        Reflector.Part part,
        double before,
        double after,
        double errorBefore,
        double errorAfter,
        double difference,
        double error,
        double chance,
        Kind kind) {
    /** What happened to a path. */
    public enum Kind {
        /** No sample found it in the first layout, and chance does not explain it in the second. */
        NEW,
        /** The other way round. */
        GONE,
        /** Its receiver gets more by it. */
        STRONGER,
        /** Its receiver gets less by it. */
        WEAKER,
        /** Chance may explain the difference. */
        ALIKE
    }
}
