package darkrim.study.tolerance;

import darkrim.study.PartOffset;
import darkrim.study.Point;
import darkrim.study.PointCheck;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/**
 * A layout whose contributors deviate. Deviations are lists in the order of the contributors, in mm, degrees or plain. Immutable; safe for
 * use by many threads.
 *
 * @param check checks members of the family
 * @param contributors what deviates
 */
record DeviatingLayout(PointCheck check, List<Contributor> contributors) {
    /** The layout that a look is at. */
    Point point(Look look) {
        return new Point(chosen(look.deviations()), moved(look.deviations()), look.marginOf());
    }

    private SortedMap<String, Double> chosen(List<Double> deviations) {
        SortedMap<String, Double> chosen = new TreeMap<>();
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

    private SortedMap<String, PartOffset> moved(List<Double> deviations) {
        SortedMap<String, PartOffset> moved = new TreeMap<>();
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
