package darkrim.study.pixel;

import darkrim.light.Estimate;
import darkrim.light.HemisphereTally;
import java.util.List;
import java.util.function.ToDoubleFunction;

/**
 * Means and their errors from bundles of rays. Rays of one bundle are strata and hang together; bundles are independent, so the spread of their
 * means tells the error.
 *
 * @param bundles at least two, of as many rays each
 */
record BundleReading(List<HemisphereTally> bundles) {
    /**
     * The mean over all rays of what a bundle holds the sum of.
     *
     * @param sum reads the sum off a bundle
     * @param factor what it is multiplied by
     */
    Estimate mean(ToDoubleFunction<HemisphereTally> sum, double factor) {
        double all = 0;
        long rays = 0;
        for (HemisphereTally bundle : bundles) {
            all += sum.applyAsDouble(bundle);
            rays += bundle.rays();
        }
        double mean = factor * (all / rays);
        double squares = 0;
        for (HemisphereTally bundle : bundles) {
            double off = factor * (sum.applyAsDouble(bundle) / bundle.rays()) - mean;
            squares += off * off;
        }
        return new Estimate(bundles.size(), mean, squares / (bundles.size() - 1), Double.POSITIVE_INFINITY);
    }

    /** How many rays met something first. */
    long rays(int number) {
        return bundles.stream().mapToLong(bundle -> bundle.seen(number)).sum();
    }

    /** How many rays there are. */
    long rays() {
        return bundles.stream().mapToLong(HemisphereTally::rays).sum();
    }

    /** How many things are told apart. */
    int size() {
        return bundles.get(0).size();
    }

    /** A sum over all things. */
    static double total(HemisphereTally bundle, PerThing value) {
        double sum = 0;
        for (int i = 0; i < bundle.size(); i++) {
            sum += value.of(bundle, i);
        }
        return sum;
    }

    /** A number that a bundle holds for each thing. */
    interface PerThing {
        /** The number. */
        double of(HemisphereTally bundle, int thing);
    }
}
