package darkrim.view.work;

import darkrim.verdict.Verdict;
import java.util.Optional;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/**
 * What a requirement says of one surface.
 *
 * @param requirement name of the requirement
 * @param keepDark whether it keeps light away; otherwise it asks for light
 * @param verdict the verdict
 * @param evidence why, in words
 * @param margin margin of direct light in words, with its unit; empty where there is none
 * @param ray a ray that carries light there: from the pupil to the surface, where one was found
 */
public record Judged(
        String requirement, boolean keepDark, Verdict verdict, String evidence, String margin, Optional<Line> ray) {
    /**
     * A straight way of light.
     *
     * @param from where it leaves the pupil, mm
     * @param to where it arrives, mm
     */
    public record Line(Vector3D from, Vector3D to) {}
}
