package darkrim.study.comparison;

import darkrim.assembly.PartName;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * A part that is in both layouts and has surfaces that differ.
 *
 * @param name its name
 * @param changed how many surfaces moved, are turned, or have another shape, size or finish
 * @param added how many are new
 * @param gone how many are gone
 */
public record PartChange(String name, int changed, int added, int gone) {
    /** Of the surfaces that differ, by part; in the order of the surfaces. */
    static List<PartChange> of(List<SurfaceChange> surfaces, List<String> onlyInOne) {
        Map<String, PartChange> parts = new LinkedHashMap<>();
        for (SurfaceChange each : surfaces) {
            String name = PartName.of(each.name());
            if (!onlyInOne.contains(name)) {
                PartChange one = new PartChange(
                        name, each.added() || each.gone() ? 0 : 1, each.added() ? 1 : 0, each.gone() ? 1 : 0);
                parts.merge(name, one, PartChange::and);
            }
        }
        return new ArrayList<>(parts.values());
    }

    private PartChange and(PartChange other) {
        return new PartChange(name, changed + other.changed, added + other.added, gone + other.gone);
    }
}
