package darkrim.study.tolerance;

import darkrim.study.PartOffset;
import darkrim.study.PointCheck;
import darkrim.study.PointResult;
import darkrim.study.RequirementMargin;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/**
 * A layout whose contributors deviate. Deviations are lists in the order of the contributors, in mm, degrees or plain. Immutable; safe for
 * use by many threads.
 *
 * @param check checks members of the family
 * @param contributors what deviates
 */
record DeviatingLayout(PointCheck check, List<Contributor> contributors) {
    /** Verdicts with these deviations. */
    PointResult check(List<Double> deviations) {
        return check.at(chosen(deviations), moved(deviations));
    }

    /** The margin of a requirement with these deviations. */
    RequirementMargin margin(List<Double> deviations, String requirement) {
        return check.margin(chosen(deviations), moved(deviations), requirement);
    }

    /** No deviation anywhere. */
    List<Double> asDrawn() {
        return contributors.stream().map(each -> 0.0).toList();
    }

    private Map<String, Double> chosen(List<Double> deviations) {
        Map<String, Double> chosen = new LinkedHashMap<>();
        for (int i = 0; i < contributors.size(); i++) {
            Contributor contributor = contributors.get(i);
            double deviation = deviations.get(i);
            if (contributor.acts() == Contributor.Acts.DIMENSION && deviation != 0) {
                double drawn =
                        check.family().dimension(contributor.of()).orElseThrow().value();
                chosen.put(contributor.of(), drawn + deviation);
            }
        }
        return chosen;
    }

    private Map<String, PartOffset> moved(List<Double> deviations) {
        Map<String, PartOffset> moved = new LinkedHashMap<>();
        for (int i = 0; i < contributors.size(); i++) {
            Contributor contributor = contributors.get(i);
            double deviation = deviations.get(i);
            if (contributor.acts() != Contributor.Acts.DIMENSION && deviation != 0) {
                PartOffset sofar = moved.getOrDefault(contributor.of(), PartOffset.NONE);
                Vector3D step = along(contributor.axis(), deviation);
                moved.put(
                        contributor.of(),
                        contributor.acts() == Contributor.Acts.SHIFT
                                ? new PartOffset(sofar.shift().add(step), sofar.tilt())
                                : new PartOffset(sofar.shift(), sofar.tilt().add(step)));
            }
        }
        return moved;
    }

    private static Vector3D along(int axis, double by) {
        return Vector3D.of(axis == 0 ? by : 0, axis == 1 ? by : 0, axis == 2 ? by : 0);
    }
}
