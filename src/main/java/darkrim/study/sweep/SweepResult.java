package darkrim.study.sweep;

import darkrim.diagnostic.Finding;
import darkrim.layout.Layout;
import java.util.List;

/**
 * What a sweep has found.
 *
 * @param layout the layout as written
 * @param settings what was asked
 * @param seed the seed that was used
 * @param points the points, in the order of the design; along one dimension by its value, those that refining has added among them
 * @param planned number of points of the design
 * @param stopped whether the work was stopped before it was done
 * @param turns where requirements change sides along the last dimension, in grids
 * @param idle dimensions on which no result depends, in grids
 * @param warnings what deserves attention in the layout as written
 */
public record SweepResult(
        Layout layout,
        SweepSettings settings,
        long seed,
        List<SweepPoint> points,
        int planned,
        boolean stopped,
        List<Turn> turns,
        List<String> idle,
        List<Finding> warnings) {
    /** Copies the lists. */
    public SweepResult {
        points = List.copyOf(points);
        turns = List.copyOf(turns);
        idle = List.copyOf(idle);
        warnings = List.copyOf(warnings);
    }

    /** What is varied. */
    public List<Variation> variations() {
        return settings.design().variations();
    }
}
