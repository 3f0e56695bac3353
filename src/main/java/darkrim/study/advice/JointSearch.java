package darkrim.study.advice;

import darkrim.verdict.Watch;
import darkrim.verdict.Workers;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;

/**
 * Looks for the smallest scaled change of all dimensions together that fulfils all requirements, by sequential linear programmes in a box that
 * shrinks where the straight-line model fails and grows where it holds.
 */
final class JointSearch {
    static final String STEP = "changing all dimensions together";

    private static final int STEPS = 12;
    /** Shorter boxes tried from one place. */
    private static final int BOXES = 4;
    /** First box: how far each dimension may go in one step, in its scales. */
    private static final double FIRST_BOX = 40;
    /** Room that a step aims for, mm. */
    static final double AIM = 0.01;
    /** What is lit all over is taken to be at least this share of the way from its plane. */
    private static final double SHIFT = 0.08;
    /** Less gain of a passing layout, in scales, ends the search. */
    private static final double GAIN = 0.3;

    private final List<FreeDimension> dimensions;
    private final Standings standings;
    private final Sides planes;
    private final Map<String, Double> allowed;
    private final PenaltyStep step;
    private final Workers workers;
    private final Watch watch;

    /**
     * @param dimensions what may change
     * @param standings measures
     * @param planes finds planes for what is lit all over
     * @param allowed by how much the room of a requirement may be below 0 since less than the whole pupil is asked for
     * @param workers do the work
     * @param watch hears how far it is
     */
    JointSearch(
            List<FreeDimension> dimensions,
            Standings standings,
            Sides planes,
            Map<String, Double> allowed,
            Workers workers,
            Watch watch) {
        this.dimensions = dimensions;
        this.standings = standings;
        this.planes = planes;
        this.allowed = allowed;
        this.step = new PenaltyStep(dimensions);
        this.workers = workers;
        this.watch = watch;
    }

    /** Finds planes for what is lit all over. */
    interface Sides {
        /** Planes from some values on. */
        Planes from(Map<String, Double> values, Set<String> requirements);

        /** No plane. */
        default Planes none(Map<String, Double> values) {
            return new Planes(List.of(), values, List.of());
        }
    }

    /**
     * What came of it.
     *
     * @param nearest the values that miss least or, where nothing is missed, change least
     * @param holds whether every requirement has room there
     * @param exclusion two requirements that exclude each other near there
     * @param measure says of values whether there is some room in every requirement
     */
    record Found(Standing nearest, boolean holds, Optional<Exclusion> exclusion, Measure measure) {}

    /** Looks at values. */
    interface Measure {
        /** Whether there is some room, 0.005 mm or what sampling needs, in every requirement. */
        boolean isRoomy(Map<String, Double> values);
    }

    /** Looks from a start. */
    Found from(Standing start) {
        Place place = place(start, 0);
        double box = FIRST_BOX;
        for (int i = 1; i <= STEPS && !watch.stop(); i++) {
            Optional<Standing> better = Optional.empty();
            for (int k = 0; k < BOXES && better.isEmpty() && !watch.stop(); k++) {
                Optional<Map<String, Double>> next = step.solve(place.at.values(), place.rules, box);
                if (next.isEmpty()) {
                    break;
                }
                Standing there = standings.at(next.get(), false);
                double way = way(place.at.values(), next.get());
                boolean usable = !there.stopped() && there.possible();
                if (usable && place.merit(there) < place.merit(place.at)) {
                    better = Optional.of(there);
                    box = Math.max(box, 2 * way);
                } else {
                    box = way / 3;
                }
            }
            if (better.isEmpty()) {
                break;
            }
            boolean done = missed(place.at) == 0 && place.merit(place.at) - place.merit(better.get()) < GAIN;
            place = place(better.get(), i);
            if (done) {
                break;
            }
        }
        boolean holds = missed(place.at) == 0;
        return new Found(place.at, holds, holds || watch.stop() ? Optional.empty() : exclusion(place), this::isRoomy);
    }

    private boolean isRoomy(Map<String, Double> values) {
        Standing there = standings.at(values, false);
        return there.possible()
                && !there.stopped()
                && there.room().keySet().stream()
                        .allMatch(each -> room(there, each) >= (there.error().containsKey(each) ? 0 : AIM / 2));
    }

    /** A place of the search with all that the next step needs. */
    private final class Place {
        private final Standing at;
        private final Set<String> still;
        private final Planes planes;
        private final List<Rule> rules = new ArrayList<>();

        private Place(Standing at, LocalModel model, Set<String> still, Planes planes) {
            this.at = at;
            this.still = still;
            this.planes = planes;
            for (String requirement : at.room().keySet()) {
                double[] plane = planes.of(requirement);
                boolean byPlane = still.contains(requirement) && !isZero(plane);
                double[] slopes = byPlane ? plane : model.of(requirement);
                double room = byPlane ? -1 - SHIFT : room(at, requirement) - AIM;
                if (!isZero(slopes) || room < -AIM) {
                    rules.add(Rule.of(requirement, room, slopes));
                }
            }
        }

        /** What a step from here is to make less. */
        private double merit(Standing there) {
            double missed = 0;
            for (String requirement : there.room().keySet()) {
                double room = room(there, requirement);
                missed += room >= 0
                        ? 0
                        : still.contains(requirement) ? 2 - planes.way(requirement, there.values()) : -room;
            }
            return step.change(there.values()) + PenaltyStep.MISSED * missed;
        }
    }

    private Place place(Standing at, int done) {
        watch.progress(STEP, done, STEPS);
        LocalModel model = LocalModel.of(at, dimensions, standings, workers);
        Set<String> still = new TreeSet<>();
        at.room().keySet().stream()
                .filter(each -> room(at, each) < 0 && model.standsStill(each, dimensions))
                .forEach(still::add);
        return new Place(
                at, model, still, still.isEmpty() ? planes.none(at.values()) : planes.from(at.values(), still));
    }

    private double missed(Standing at) {
        return at.room().keySet().stream()
                .mapToDouble(each -> Math.max(0, -room(at, each)))
                .sum();
    }

    private double room(Standing at, String requirement) {
        return at.room(requirement) + allowed.getOrDefault(requirement, 0.0);
    }

    private double way(Map<String, Double> one, Map<String, Double> two) {
        return dimensions.stream()
                .mapToDouble(each -> Math.abs(two.get(each.name()) - one.get(each.name())) / each.scale())
                .max()
                .orElse(0);
    }

    private static boolean isZero(double[] slopes) {
        for (double slope : slopes) {
            if (slope != 0) {
                return false;
            }
        }
        return true;
    }

    /** Two rules, or one twice, that leave nothing by themselves within the ranges: first those of what is missed. */
    private Optional<Exclusion> exclusion(Place place) {
        Standing at = place.at;
        List<Rule> rules = place.rules;
        List<Rule> failing =
                rules.stream().filter(rule -> room(at, rule.requirement()) < 0).toList();
        for (Rule rule : failing) {
            if (isMissed(at, List.of(rule))) {
                return Optional.of(new Exclusion(rule.requirement(), rule.requirement()));
            }
        }
        for (Rule rule : failing) {
            for (Rule other : rules) {
                if (!other.requirement().equals(rule.requirement()) && isMissed(at, List.of(rule, other))) {
                    return Optional.of(new Exclusion(rule.requirement(), other.requirement()));
                }
            }
        }
        return Optional.empty();
    }

    private boolean isMissed(Standing at, List<Rule> rules) {
        Optional<Map<String, Double>> best = step.solve(at.values(), rules, Double.POSITIVE_INFINITY);
        if (best.isEmpty()) {
            return false;
        }
        for (Rule rule : rules) {
            double room = rule.room();
            for (int i = 0; i < dimensions.size(); i++) {
                String name = dimensions.get(i).name();
                room += rule.slopes().get(i)
                        * (best.get().get(name) - at.values().get(name));
            }
            if (room < -AIM / 2) {
                return true;
            }
        }
        return false;
    }
}
