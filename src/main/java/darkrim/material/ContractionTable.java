package darkrim.material;

import java.util.List;

/**
 * Measured values with straight lines between.
 *
 * @param temperatures temperatures, K, increasing, at least two
 * @param values the contraction at each; from any length that is the same for all
 * @param stated how well they are known, as a share; NaN where that is not stated
 */
public record ContractionTable(List<Double> temperatures, List<Double> values, double stated) implements Contraction {
    /**
     * @throws IllegalArgumentException if there are fewer than two temperatures, they do not increase, or there is not a value for each
     */
    public ContractionTable {
        temperatures = List.copyOf(temperatures);
        values = List.copyOf(values);
        if (temperatures.size() < 2 || temperatures.size() != values.size()) {
            throw new IllegalArgumentException("expected two temperatures or more, and a value for each");
        }
        for (int i = 1; i < temperatures.size(); i++) {
            if (!(temperatures.get(i) > temperatures.get(i - 1))) {
                throw new IllegalArgumentException("expected temperatures that increase");
            }
        }
    }

    @Override
    public double lowest() {
        return temperatures.get(0);
    }

    @Override
    public double highest() {
        return temperatures.get(temperatures.size() - 1);
    }

    @Override
    public double at(double kelvin) {
        int next = 1;
        while (next < temperatures.size() - 1 && temperatures.get(next) < kelvin) {
            next++;
        }
        double from = temperatures.get(next - 1);
        double share = (kelvin - from) / (temperatures.get(next) - from);
        double first = values.get(next - 1);
        return share == 1 ? values.get(next) : first + share * (values.get(next) - first);
    }

    @Override
    public double accuracy(double kelvin) {
        return stated;
    }
}
