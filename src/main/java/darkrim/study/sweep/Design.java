package darkrim.study.sweep;

import darkrim.study.UnusableStudy;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * Which points of a family are looked at: the full grid over all variations, the last one running fastest, or points spread evenly over their
 * ranges.
 *
 * @param variations what is varied
 * @param spread number of points to spread over the ranges; empty for a grid
 * @param refine width down to which changes of side are closed in, in mm, degrees or plain; empty where they are not
 */
public record Design(List<Variation> variations, Optional<Integer> spread, Optional<Double> refine) {
    /** More points than this must be asked for. */
    public static final int MANY = 10_000;
    /** More points than this are a mistake. */
    public static final int MOST = 1_000_000;
    /** A change of side is not closed in further than this share of the range. */
    private static final double FINEST = 1e-9;

    /** Copies the list. */
    public Design {
        variations = List.copyOf(variations);
    }

    /**
     * Refuses what cannot be done.
     *
     * @param many whether many points are wanted
     * @throws UnusableStudy saying what is wrong
     */
    public void check(boolean many) throws UnusableStudy {
        Set<String> names = new HashSet<>();
        for (Variation each : variations) {
            if (!names.add(each.dimension())) {
                throw new UnusableStudy("'" + each.dimension() + "' is varied twice");
            }
            if (spread.isPresent() && !each.isOpen()) {
                throw new UnusableStudy("with --spread, '" + each.dimension() + "' needs a range alone, expected '"
                        + each.dimension() + " = A to B'");
            }
            if (spread.isEmpty() && each.isOpen()) {
                throw new UnusableStudy("the range of '" + each.dimension() + "' has no step, expected '"
                        + each.dimension() + " = A to B step S', or --spread");
            }
        }
        if (refine.isPresent()) {
            if (variations.size() != 1 || spread.isPresent()) {
                throw new UnusableStudy("--refine needs one dimension, expected one --vary without --spread");
            }
            Variation only = variations.get(0);
            double range = only.to().subtract(only.from()).doubleValue();
            if (refine.get() < FINEST * range) {
                throw new UnusableStudy("--refine asks for less than a thousand-millionth of the range");
            }
        }
        BigDecimal count = count();
        if (count.compareTo(BigDecimal.valueOf(MOST)) > 0) {
            throw new UnusableStudy("these are " + grouped(count) + " points, expected at most 1,000,000");
        }
        if (!many && count.compareTo(BigDecimal.valueOf(MANY)) > 0) {
            throw new UnusableStudy(
                    "these are " + grouped(count) + " points; if you mean it, say so with --many-points");
        }
    }

    private static String grouped(BigDecimal count) {
        return String.format(Locale.ROOT, "%,.0f", count);
    }

    private BigDecimal count() {
        return spread.map(BigDecimal::valueOf)
                .orElseGet(
                        () -> variations.stream().map(Variation::count).reduce(BigDecimal.ONE, BigDecimal::multiply));
    }

    /**
     * The points, in their order; those that refining adds are not among them.
     *
     * @param seed seed of what is random in a spread
     */
    public List<Map<String, Double>> points(long seed) {
        if (spread.isPresent()) {
            return Spread.points(variations, spread.get(), seed);
        }
        List<Map<String, Double>> points = List.of(Map.of());
        for (Variation each : variations) {
            List<Map<String, Double>> more = new ArrayList<>();
            List<Double> values = each.values();
            for (Map<String, Double> point : points) {
                for (double value : values) {
                    Map<String, Double> next = new LinkedHashMap<>(point);
                    next.put(each.dimension(), value);
                    more.add(next);
                }
            }
            points = more;
        }
        return points;
    }

    /** Points that follow each other along the last dimension, the others staying as they are; 1 where points are spread. */
    public int row() {
        return spread.isPresent()
                ? 1
                : variations.get(variations.size() - 1).count().intValueExact();
    }

    /** Says the same in one form, whatever was typed. */
    public List<String> words() {
        List<String> words = new ArrayList<>();
        variations.forEach(each -> words.add("vary " + each));
        spread.ifPresent(count -> words.add("spread " + count));
        refine.ifPresent(width -> words.add("refine " + width));
        return words;
    }
}
