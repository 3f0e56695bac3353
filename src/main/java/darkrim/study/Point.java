package darkrim.study;

import java.io.Serializable;
import java.util.Collections;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;

/**
 * One layout of a family that is to be looked at.
 *
 * @param chosen values of dimensions by name, in mm, degrees or plain
 * @param moved how far parts are from their place, by name of the part
 * @param marginOf name of the one requirement that is judged and whose margin is measured; empty: all are judged
 */
public record Point(SortedMap<String, Double> chosen, SortedMap<String, PartOffset> moved, String marginOf)
        implements Serializable {
    /** Copies the maps. */
    public Point {
        chosen = Collections.unmodifiableSortedMap(new TreeMap<>(chosen));
        moved = Collections.unmodifiableSortedMap(new TreeMap<>(moved));
    }

    /** All parts in their place, and all requirements judged. */
    public static Point of(Map<String, Double> chosen) {
        return new Point(new TreeMap<>(chosen), new TreeMap<>(), "");
    }
}
