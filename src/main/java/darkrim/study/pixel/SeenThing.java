package darkrim.study.pixel;

import darkrim.light.Estimate;

/**
 * One thing that a point sees. Samples of the estimates are bundles of rays; their spread is what the standard errors come from.
 *
 * @param kind what it is
 * @param name full name of the surface; words for the rest
 * @param surface number of the surface; -1 for the rest
 * @param rays how many rays met it first
 * @param seen its projected solid angle, sr
 * @param lit the same, counted by the share of the pupil that shines on each point of it, sr
 * @param onceReflected relative irradiance at the point by light of the beam that it reflects once, by the estimate that a check uses
 * @param kelvin its temperature, K; not a number where nothing is said of it
 * @param emitted what it emits
 * @param reflected what it reflects of all warm light, after any number of reflections
 */
public record SeenThing(
        Kind kind,
        String name,
        int surface,
        long rays,
        Estimate seen,
        Estimate lit,
        Estimate onceReflected,
        double kelvin,
        WarmLight emitted,
        WarmLight reflected) {
    /** What kind of thing. */
    public enum Kind {
        /** A surface of a part. */
        SURFACE,
        /** Where the beam comes from. */
        PUPIL,
        /** No part is met, and the beam does not come from there. */
        OPEN,
        /** The point lies within a solid part. */
        INSIDE
    }

    /** What it emits and reflects together, photons/s. */
    public double photons() {
        return emitted.photons().mean() + reflected.photons().mean();
    }
}
