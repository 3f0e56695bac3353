package darkrim.verdict;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * Whose turn it is to get more samples. What is decided gets none, nor does what else belongs to a demand that has failed. Of a demand that seems to fail, only
 * the number that will show it soonest is followed up. Where the budget does not reach for all, what needs least comes first; what seems out of reach gets what
 * is left.
 *
 * <p>An order always doubles the samples of a surface, so the sizes at which it is looked at are fixed before the first sample is drawn. Whose turn it is
 * may therefore depend on the samples: {@link ConfidenceSequence} holds at all these sizes together, whether they are reached or not.
 */
final class Steering {
    private final List<Target> targets;
    private final Map<Target, Outcome> outcomes;
    private final Measurements measured;

    /** An order that doubles what there is, and about how many batches there must be to decide. */
    private record Turn(Measurements.Order order, double batches) {
        /** Batches that will be spent on it: it is doubled until it has enough. */
        double more() {
            double now = order.batches();
            double then = 2 * now;
            while (then < batches && then < Long.MAX_VALUE) {
                then *= 2;
            }
            return then < batches ? Double.POSITIVE_INFINITY : then - now;
        }
    }

    /**
     * @param targets the numbers that sampling has to decide
     * @param outcomes what is known of each
     * @param measured what has been measured
     */
    Steering(List<Target> targets, Map<Target, Outcome> outcomes, Measurements measured) {
        this.targets = targets;
        this.outcomes = outcomes;
        this.measured = measured;
    }

    /**
     * What to measure next; nothing if all is decided or no more can be afforded.
     *
     * @param left batches that the budget still allows
     */
    List<Measurements.Order> next(long left) {
        List<Turn> turns = turns();
        turns.sort(Comparator.comparingDouble(Turn::more));
        List<Measurements.Order> inReach = new ArrayList<>();
        double kept = left;
        for (Turn turn : turns) {
            double more = turn.more();
            if (more <= kept) {
                kept -= more;
                inReach.add(turn.order());
            }
        }
        if (!inReach.isEmpty()) {
            return inReach;
        }
        return turns.stream()
                .map(Turn::order)
                .filter(order -> order.batches() <= left)
                .limit(1)
                .toList();
    }

    /** One for each surface and class of light that something undecided asks for, by the number that needs most. */
    private List<Turn> turns() {
        Set<Integer> failed = new HashSet<>();
        Map<Integer, Target> failing = new LinkedHashMap<>();
        for (Target target : targets) {
            Outcome known = outcomes.get(target);
            if (known.verdict() == Verdict.FAIL) {
                failed.add(target.demand());
            } else if (known.verdict() == Verdict.UNDECIDED && target.seemsToFail(known)) {
                failing.merge(target.demand(), target, (one, other) -> needed(other) < needed(one) ? other : one);
            }
        }
        Map<Measurements.Order, Double> needed = new LinkedHashMap<>();
        for (Target target : targets) {
            Target soonest = failing.getOrDefault(target.demand(), target);
            long batches = measured.batches(target.surface(), target.light());
            // Where nothing could be afforded at first, nothing can be doubled.
            if (outcomes.get(target).verdict() == Verdict.UNDECIDED
                    && !failed.contains(target.demand())
                    && soonest.equals(target)
                    && batches > 0) {
                needed.merge(
                        new Measurements.Order(target.surface(), target.light(), batches), needed(target), Math::max);
            }
        }
        List<Turn> turns = new ArrayList<>();
        needed.forEach((order, batches) -> turns.add(new Turn(order, batches)));
        return turns;
    }

    /** About how many batches decide a number, if its mean and variance are what they seem to be. */
    private double needed(Target target) {
        return target.samplesToDecide(outcomes.get(target)) / Measurements.BATCH;
    }
}
