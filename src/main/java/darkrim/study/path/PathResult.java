package darkrim.study.path;

import darkrim.diagnostic.Finding;
import darkrim.layout.Layout;
import darkrim.scene.Scene;
import java.util.List;

/**
 * Light paths of a layout.
 *
 * @param layout what the designer wrote
 * @param scene the scene that was looked at
 * @param seed seed of the random numbers
 * @param settings what was asked for
 * @param receivers the receivers, in the order of the layout; where the work was stopped, those that were reached
 * @param stopped whether the work was stopped before its end
 * @param warnings what deserves attention in the layout
 */
public record PathResult(
        Layout layout,
        Scene scene,
        long seed,
        PathSettings settings,
        List<ReceiverPaths> receivers,
        boolean stopped,
        List<Finding> warnings) {
    /** Copies the lists. */
    public PathResult {
        receivers = List.copyOf(receivers);
        warnings = List.copyOf(warnings);
    }
}
