package darkrim.study.tolerance;

import darkrim.study.RequirementMargin;
import java.util.List;
import java.util.Optional;

/**
 * The margins of one requirement over the builds.
 *
 * @param count how many are known
 * @param mean their mean
 * @param deviation their standard deviation
 * @param shares for each contributor the square of the correlation between its deviation and the margin: its share of the variance as far
 *     as a straight line tells
 */
public record SampledMargins(int count, double mean, double deviation, List<Double> shares) {
    /** Copies the list. */
    public SampledMargins {
        shares = List.copyOf(shares);
    }

    /** Of builds with margins; empty where fewer than two are known. */
    static Optional<SampledMargins> of(List<Build> builds, int requirement, int contributors) {
        List<Build> known = builds.stream()
                .filter(build -> !build.margins().isEmpty())
                .filter(build -> build.margins().get(requirement).isKnown())
                .toList();
        if (known.size() < 2) {
            return Optional.empty();
        }
        double[] margins = known.stream()
                .map(build -> build.margins().get(requirement))
                .mapToDouble(RequirementMargin::margin)
                .toArray();
        double mean = mean(margins);
        double sum = products(margins, mean, margins, mean);
        Double[] shares = new Double[contributors];
        for (int i = 0; i < contributors; i++) {
            int at = i;
            double[] deviations = known.stream()
                    .mapToDouble(build -> build.deviations().get(at))
                    .toArray();
            double middle = mean(deviations);
            double both = products(margins, mean, deviations, middle);
            double own = products(deviations, middle, deviations, middle);
            shares[i] = sum > 0 && own > 0 ? both * both / (sum * own) : 0;
        }
        return Optional.of(
                new SampledMargins(known.size(), mean, StrictMath.sqrt(sum / (known.size() - 1)), List.of(shares)));
    }

    private static double mean(double[] values) {
        double sum = 0;
        for (double value : values) {
            sum += value;
        }
        return sum / values.length;
    }

    private static double products(double[] a, double meanA, double[] b, double meanB) {
        double sum = 0;
        for (int i = 0; i < a.length; i++) {
            sum += (a[i] - meanA) * (b[i] - meanB);
        }
        return sum;
    }
}
