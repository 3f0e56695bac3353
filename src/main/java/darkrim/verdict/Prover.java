package darkrim.verdict;

import darkrim.scene.Surface;
import java.util.Set;

/** What geometry alone says of light, without a sample. The same question gets the same answer; safe for use by many threads. */
public interface Prover {
    /** Whether a surface is proved dark, lit by a witness, or open. */
    Evidence darkness(Surface surface);

    /**
     * What share of the pupil every point of a surface sees.
     *
     * @param surface the surface
     * @param share the share that is asked for, 0 to 1: the bounds come so near that they decide it, if they can
     */
    Evidence.ExactShare pupilSeen(Surface surface, double share);

    /**
     * An upper bound of the mean once-reflected irradiance of a surface, relative; 0 if none arrives at all.
     *
     * @param surface the surface
     * @param dark surfaces that are proved dark
     * @param limit a bound that is not above this is good enough
     */
    double mostReflected(Surface surface, Set<Surface> dark, double limit);
}
