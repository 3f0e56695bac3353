package darkrim.study.rejection;

import darkrim.diagnostic.Finding;
import darkrim.layout.Layout;
import darkrim.scene.Surface;
import java.util.List;

/**
 * A rejection curve.
 *
 * @param layout the layout
 * @param settings what was asked for
 * @param seed seed of the random numbers
 * @param confidence confidence of all bounds of a direction together
 * @param receivers surfaces on which light is counted
 * @param points the directions that were looked at: by azimuth, then by angle
 * @param shiny whether a finish has a mirror or a lobe, so that no bound is known for light after two reflections or more
 * @param stopped whether the work was stopped before its end
 * @param warnings what deserves attention
 */
public record RejectionResult(
        Layout layout,
        RejectionSettings settings,
        long seed,
        double confidence,
        List<Surface> receivers,
        List<RejectionPoint> points,
        boolean shiny,
        boolean stopped,
        List<Finding> warnings) {
    /** Copies the lists. */
    public RejectionResult {
        receivers = List.copyOf(receivers);
        points = List.copyOf(points);
        warnings = List.copyOf(warnings);
    }
}
