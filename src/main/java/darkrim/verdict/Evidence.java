package darkrim.verdict;

import darkrim.light.Estimate;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/** Why a verdict is what it is. */
public sealed interface Evidence {
    /**
     * No straight line from the pupil reaches the surface: proved by geometry, without a sample.
     *
     * @param gapWidth gaps narrower than this between touching parts counted as closed, mm
     */
    record ProvedDark(double gapWidth) implements Evidence {}

    /**
     * A straight line that carries light; anyone can draw it.
     *
     * @param onPupil where it leaves the pupil, mm
     * @param onSurface where it arrives, mm
     */
    record WitnessRay(Vector3D onPupil, Vector3D onSurface) implements Evidence {
        /** Its length, mm. */
        public double length() {
            return onPupil.distance(onSurface);
        }
    }

    /**
     * Neither proved dark nor found lit.
     *
     * @param area area that was left open, mm2
     * @param fraction that area over the area of the surface
     */
    record OpenArea(double area, double fraction) implements Evidence {}

    /**
     * A sampled mean and bounds that hold at every look.
     *
     * @param estimate the mean with its error
     * @param lower lower bound
     * @param upper upper bound
     * @param risk probability that the mean is ever, at any look, outside the bounds
     * @param looks how often it was looked at
     */
    record Sampled(Estimate estimate, double lower, double upper, double risk, int looks) implements Evidence {}
}
