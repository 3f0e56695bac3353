package darkrim.shadow;

import java.util.Optional;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/** What a {@link PairSearch} asks of every pair of pieces: it must hold for all lines between the two. One thread each. */
interface Question {
    /**
     * Whether it holds for all lines of a shaft, by the quick test.
     *
     * @param facets facets that may touch the shaft; all others are apart from it
     */
    boolean holds(Shaft shaft, Pair pair, int[] facets);

    /** The same by the thorough test, after the quick one has failed. */
    boolean holdsAfterAll(Shaft shaft, Pair pair, int[] facets);

    /** Edges that keep the last shaft open. */
    int openCount();

    /** One of them, by number from 0. */
    int open(int number);

    /**
     * Tries one line.
     *
     * @param pupilPoint start in the plane of the pupil, mm
     * @param face the face
     * @param end end of the line, mm
     * @return the line if it does not hold for it; empty also where it is not looked for
     */
    Optional<WitnessRay> counterexample(double[] pupilPoint, Face face, Vector3D end);

    /**
     * Directions in which to look for a counterexample at the field limit.
     *
     * @param pupil take the point of the pupil piece that lies farthest this way
     * @param face take the corner of the face piece that lies farthest this way
     */
    record Aim(Vector3D pupil, Vector3D face) {}

    /** Where a counterexample may pass the field limit; empty where there is no limit. */
    Optional<Aim> aim(Pair pair);
}
