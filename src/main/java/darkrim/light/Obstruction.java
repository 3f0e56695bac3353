package darkrim.light;

import java.util.Collections;
import java.util.SortedMap;
import java.util.TreeMap;

/**
 * What became of lines from a point to places spread evenly over the pupil: each counts once, for the first thing that stops it.
 *
 * @param samples number of lines
 * @param seen lines that nothing stops
 * @param behind lines that leave to the back of the element, or to a pupil that does not shine on the point
 * @param beyondField lines on which the field limit lets no light come; asked before parts
 * @param by lines that a surface stops, the first one met on the way from the point
 */
public record Obstruction(long samples, long seen, long behind, long beyondField, SortedMap<Blocker, Long> by) {
    /** Copies the map. */
    public Obstruction {
        by = Collections.unmodifiableSortedMap(new TreeMap<>(by));
    }

    /**
     * What stops a line.
     *
     * @param surface number of the surface
     * @param fromInside whether the line meets it from inside the solid that it bounds
     */
    public record Blocker(int surface, boolean fromInside) implements Comparable<Blocker> {
        @Override
        public int compareTo(Blocker other) {
            int bySurface = Integer.compare(surface, other.surface);
            return bySurface != 0 ? bySurface : Boolean.compare(fromInside, other.fromInside);
        }
    }

    /** No lines yet. */
    public static Obstruction none() {
        return new Obstruction(0, 0, 0, 0, new TreeMap<>());
    }

    /** Both together; independent lines from the same point. */
    public Obstruction and(Obstruction other) {
        TreeMap<Blocker, Long> both = new TreeMap<>(by);
        other.by.forEach((blocker, count) -> both.merge(blocker, count, Long::sum));
        return new Obstruction(
                samples + other.samples,
                seen + other.seen,
                behind + other.behind,
                beyondField + other.beyondField,
                both);
    }

    /**
     * A count as a share of the pupil's area.
     *
     * @param count one of the counts
     */
    public Estimate share(long count) {
        if (samples == 0) {
            return Estimate.none(1);
        }
        double mean = (double) count / samples;
        return new Estimate(samples, mean, samples < 2 ? 0 : mean * (samples - count) / (samples - 1), 1);
    }
}
