package darkrim.study.path;

import darkrim.light.Estimate;
import darkrim.light.PathTally;
import darkrim.scene.Surface;
import java.util.List;
import java.util.OptionalDouble;

/**
 * Light on one receiver, by order and by path.
 *
 * @param receiver where it arrives
 * @param tally what was measured, to one reflection more than asked for
 * @param strongest the strongest paths of each order, the strongest of an order first; after a stop those of which a way was seen
 */
public record ReceiverPaths(Surface receiver, PathTally tally, List<TopPath> strongest) {
    /** Copies the list. */
    public ReceiverPaths {
        strongest = List.copyOf(strongest);
    }

    /** How many reflections were asked for. */
    public int most() {
        return tally.orders().size() - 2;
    }

    /** Light of an order; 0 is direct light. */
    public Estimate order(int order) {
        return tally.orders().get(order);
    }

    /** Reflected light up to the number of reflections asked for. */
    public Estimate reflected() {
        return tally.upTo().get(most());
    }

    /** Light that is reflected once more than asked for: the first that is left out. */
    public Estimate leftOut() {
        return order(most() + 1);
    }

    /**
     * About what all further orders bring together, if each is to the one before it as the first left out is to the last asked for; empty
     * where they do not fall. An outlook, not a bound.
     */
    public OptionalDouble further() {
        double ratio = leftOut().mean() / order(most()).mean();
        return ratio < 1 ? OptionalDouble.of(leftOut().mean() * ratio / (1 - ratio)) : OptionalDouble.empty();
    }

    /** How many paths of an order carry light. */
    public long paths(int order) {
        return tally.by().keySet().stream()
                .filter(path -> path.order() == order)
                .count();
    }

    /** Described paths of an order. */
    public List<TopPath> strongest(int order) {
        return strongest.stream().filter(each -> each.path().order() == order).toList();
    }

    /** What the paths of an order that are not described bring together, relative irradiance. */
    public double rest(int order) {
        double described = strongest(order).stream()
                .map(TopPath::path)
                .mapToDouble(path -> tally.of(path).mean())
                .sum();
        return Math.max(0, order(order).mean() - described);
    }
}
