package darkrim.shadow;

import java.util.List;
import java.util.Optional;

/**
 * The direction in which a distance grows, written as a sum of what stops push, with weights that are not negative, as nearly as can be: least
 * squares, by Hildreth's method (Hildreth, A quadratic programming procedure, 1957), one weight after the other.
 */
final class Balance {
    private static final int ROUNDS = 1000;
    /** Derivatives are taken over this step, mm. */
    private static final double STEP = 1e-5;

    /** Directions lead away from stops by no less than this share of the most. */
    private static final double LEAST_AWAY = 1e-4;
    /** A direction that leads away must keep this share of what the steepest gains. */
    private static final double WORTH = 0.1;

    private final List<LineOfSight.Stop> stops;
    private final double[][] pushes;
    private final double[] gradient;
    private final double[] weights;
    private final double[] rest;

    private Balance(List<LineOfSight.Stop> stops, double[][] pushes, double[] gradient) {
        this.stops = stops;
        this.pushes = pushes;
        weights = new double[stops.size()];
        this.gradient = gradient;
        rest = gradient.clone();
    }

    /**
     * The balance at a line.
     *
     * @param gradient derivatives of the distance by the numbers of the line
     * @param stops what the line touches
     * @param line the line
     */
    static Balance of(double[] gradient, List<LineOfSight.Stop> stops, double[] line) {
        double[][] pushes = new double[stops.size()][];
        for (int i = 0; i < pushes.length; i++) {
            pushes[i] = derivatives(stops.get(i), line);
        }
        Balance balance = new Balance(stops, pushes, gradient);
        balance.settle(0);
        return balance;
    }

    private static double[] derivatives(LineOfSight.Stop stop, double[] line) {
        double[] found = new double[line.length];
        for (int i = 0; i < line.length; i++) {
            double[] more = line.clone();
            double[] less = line.clone();
            more[i] += STEP;
            less[i] -= STEP;
            found[i] = (stop.room(more) - stop.room(less)) / (2 * STEP);
        }
        return found;
    }

    /** Finds the weights for which what is left pushes against no stop, and leads away from each by so much. */
    private void settle(double away) {
        double change = 1;
        for (int round = 0; round < ROUNDS && change > 1e-9; round++) {
            change = 0;
            for (int i = 0; i < weights.length; i++) {
                double square = dot(pushes[i], pushes[i]);
                double more = square > 0
                        ? Math.max(-weights[i], (dot(pushes[i], rest) + away * Math.sqrt(square)) / square)
                        : 0;
                weights[i] += more;
                for (int k = 0; k < rest.length; k++) {
                    rest[k] -= more * pushes[i][k];
                }
                change = Math.max(change, Math.abs(more) * Math.sqrt(square));
            }
        }
    }

    private static double dot(double[] a, double[] b) {
        double sum = 0;
        for (int i = 0; i < a.length; i++) {
            sum += a[i] * b[i];
        }
        return sum;
    }

    /** Length of what the stops do not balance: 0 where no small step makes the distance less. */
    double rest() {
        return Math.sqrt(dot(rest, rest));
    }

    /**
     * The direction in which the distance shrinks without running into a stop, of length 1: it leads away from all of them by an angle, if that
     * leaves a tenth of what can be gained.
     *
     * @param most greatest sine of the angle
     */
    double[] downhill(double most) {
        double[] way = leaning(0);
        double gain = -dot(gradient, way);
        for (double away = most; away > LEAST_AWAY * most; away *= 0.5) {
            double[] leading = leaning(away);
            if (-dot(gradient, leading) > WORTH * gain) {
                return leading;
            }
        }
        return way;
    }

    private double[] leaning(double away) {
        Balance leaning = new Balance(stops, pushes, gradient);
        leaning.settle(away);
        double length = leaning.rest();
        double[] way = new double[rest.length];
        for (int k = 0; k < way.length; k++) {
            way[k] = -leaning.rest[k] / length;
        }
        return way;
    }

    /** The name of the stop of greatest weight, the plane of the face left out. */
    Optional<String> heaviest() {
        int best = -1;
        for (int i = 0; i < weights.length; i++) {
            if (!stops.get(i).name().isEmpty() && weights[i] > 1e-3 && (best < 0 || weights[i] > weights[best])) {
                best = i;
            }
        }
        return best < 0 ? Optional.empty() : Optional.of(stops.get(best).name());
    }
}
