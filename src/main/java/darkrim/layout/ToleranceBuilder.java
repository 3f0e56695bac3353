package darkrim.layout;

import darkrim.diagnostic.Findings;
import darkrim.layout.form.Amount;
import darkrim.layout.form.Fields;
import darkrim.layout.form.Formula;
import darkrim.layout.form.Value;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * The tolerances of a file.
 *
 * @param findings receives what is wrong
 */
record ToleranceBuilder(Findings findings) {
    private static final String CODE = "tolerance";
    private static final int AXES = 3;

    /** The numbers of the tolerance of a dimension; they measure what the dimension measures. */
    static List<Amount> amounts(Fields dimension) {
        Value tolerance = dimension.find("tolerance").orElse(null);
        if (tolerance instanceof Amount either) {
            return List.of(either);
        }
        List<Amount> found = new ArrayList<>();
        if (tolerance instanceof Fields ends) {
            for (String end : List.of("minus", "plus")) {
                ends.find(end).ifPresent(value -> found.add((Amount) value));
            }
        }
        return found;
    }

    /** The tolerance of a dimension, if it has one that can be used. */
    Optional<Tolerance> ofDimension(String name, Fields dimension) {
        Optional<Value> tolerance = dimension.find("tolerance").filter(Value::isWhole);
        if (!dimension.has("tolerance")) {
            for (String key : List.of("distribution", "sigmas")) {
                dimension
                        .find(key)
                        .ifPresent(value -> findings.error(
                                CODE,
                                value.place(),
                                "'" + key + "' says how a tolerance spreads, but the dimension '" + name
                                        + "' has none, expected the key 'tolerance' beside it"));
            }
        }
        if (tolerance.isEmpty() || !dimension.isWhole() || !checkSpread(dimension)) {
            return Optional.empty();
        }
        boolean reckoned = dimension.find("value").orElse(null) instanceof Amount amount
                && amount.written() instanceof Formula formula
                && !formula.names().isEmpty();
        if (reckoned) {
            findings.error(
                    CODE,
                    tolerance.get().place(),
                    "the dimension '" + name + "' is reckoned from others and follows their deviations,"
                            + " expected tolerances on those that it is reckoned from");
            return Optional.empty();
        }
        return Optional.of(
                tolerance.get() instanceof Fields ends
                        ? new Tolerance(
                                ends.number("minus"), ends.number("plus"), distribution(dimension), sigmas(dimension))
                        : Tolerance.within(Fields.number(tolerance.get()), distribution(dimension), sigmas(dimension)));
    }

    /** The placement tolerance of a part, if it has one that can be used. */
    Optional<PlacementTolerance> ofPart(Fields part) {
        Optional<Fields> given =
                part.find("placement_tolerance").filter(Value::isWhole).map(Fields.class::cast);
        if (given.isEmpty() || !checkSpread(given.get())) {
            return Optional.empty();
        }
        Fields fields = given.get();
        if (!fields.has("shift") && !fields.has("tilt")) {
            findings.error(
                    CODE,
                    fields.place(),
                    "the placement tolerance neither shifts nor tilts the part, expected the key 'shift' or 'tilt'");
            return Optional.empty();
        }
        return Optional.of(new PlacementTolerance(axes(fields, "shift"), axes(fields, "tilt")));
    }

    private static List<Tolerance> axes(Fields fields, String key) {
        List<Double> given = fields.has(key) ? fields.numbers(key) : List.of(0.0);
        List<Tolerance> tolerances = new ArrayList<>();
        for (int axis = 0; axis < AXES; axis++) {
            double within = given.get(Math.min(axis, given.size() - 1));
            tolerances.add(Tolerance.within(within, distribution(fields), sigmas(fields)));
        }
        return tolerances;
    }

    private boolean checkSpread(Fields fields) {
        if (fields.has("sigmas") && distribution(fields) != Distribution.NORMAL) {
            findings.error(
                    CODE,
                    fields.place("sigmas"),
                    "'sigmas' is for the normal distribution, expected 'distribution: normal' beside it");
            return false;
        }
        return true;
    }

    private static Distribution distribution(Fields fields) {
        return fields.find("distribution")
                .map(word -> Distribution.valueOf(Fields.text(word).toUpperCase(Locale.ROOT)))
                .orElse(Distribution.UNIFORM);
    }

    private static double sigmas(Fields fields) {
        return fields.find("sigmas").map(Fields::number).orElse(Tolerance.SIGMAS);
    }
}
