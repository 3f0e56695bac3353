package darkrim.layout.form;

import darkrim.diagnostic.Findings;
import darkrim.diagnostic.Place;
import java.math.BigDecimal;
import java.math.MathContext;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * Works out every number of a file: bare numbers in the units of the file, numbers with units, and formulas over the named dimensions. A
 * formula reckons in the units of the file, so that a bare number in it means the same as elsewhere.
 */
public final class Quantities {
    /** What a named dimension turned out to be. */
    public record Settled(double value, Measure measure) {}

    private final Unit lengthUnit;
    private final Unit angleUnit;
    private final Map<String, Amount> dimensions;
    private final Findings findings;
    private final DimensionMeasures measures;
    /** In the units of the file. */
    private final Map<String, BigDecimal> values = new LinkedHashMap<>();

    private final Set<String> unresolved = new LinkedHashSet<>();

    /**
     * @param lengthUnit what a bare length is in
     * @param angleUnit what a bare angle is in
     * @param dimensions what is written for each named dimension, in the order of the file
     * @param findings receives what is wrong
     */
    public Quantities(Unit lengthUnit, Unit angleUnit, Map<String, Amount> dimensions, Findings findings) {
        this.lengthUnit = lengthUnit;
        this.angleUnit = angleUnit;
        this.dimensions = Collections.unmodifiableMap(new LinkedHashMap<>(dimensions));
        this.findings = findings;
        this.measures = new DimensionMeasures(this.dimensions.keySet());
    }

    /**
     * Gives all numbers their values. A number with an error keeps none.
     *
     * @param amounts all numbers of the file, in its order; those of the dimensions among them
     * @param broken names that are defined but could not be read: their use is no further error
     */
    public void settle(List<Amount> amounts, Set<String> broken) {
        FormulaNames names = new FormulaNames(dimensions, broken, amounts, findings);
        unresolved.addAll(names.unresolved());
        Set<Amount> sound =
                amounts.stream().filter(names::isSound).collect(Collectors.toCollection(LinkedHashSet::new));
        findMeasures(sound);
        warnOfUnclear(sound);
        for (String name : names.order()) {
            settleDimension(name);
        }
        for (Amount amount : sound) {
            amount.kind().measure().ifPresent(measure -> settle(amount, measure));
        }
    }

    /** The value and measure of each named dimension that has one, in the order of the file. */
    public Map<String, Settled> dimensions() {
        Map<String, Settled> settled = new LinkedHashMap<>();
        dimensions.forEach((name, amount) -> {
            if (amount.isWhole()) {
                settled.put(name, new Settled(amount.value(), measureOf(name).orElse(Measure.NUMBER)));
            }
        });
        return settled;
    }

    /** Goes over all uses until nothing more becomes known, and only then reports contradictions. */
    private void findMeasures(Set<Amount> sound) {
        dimensions.forEach((name, amount) -> {
            if (amount.written() instanceof Written.WithUnit withUnit) {
                measures.declare(name, withUnit.unit().measure(), amount.place());
            }
        });
        int before;
        do {
            before = measures.count();
            pass(sound, new Findings());
        } while (measures.count() > before);
        pass(sound, findings);
    }

    private void pass(Set<Amount> sound, Findings into) {
        dimensions.forEach((name, amount) -> {
            if (amount.written() instanceof Formula formula && sound.contains(amount)) {
                MeasureInference inference = new MeasureInference(formula, measures, into);
                if (measures.of(name) instanceof Inferred.Known known) {
                    inference.demand(known.measure());
                } else if (inference.measure() instanceof Inferred.Known known) {
                    measures.declare(name, known.measure(), amount.place());
                }
            }
        });
        for (Amount amount : sound) {
            if (amount.written() instanceof Formula formula
                    && amount.kind().measure().isPresent()) {
                new MeasureInference(formula, measures, into)
                        .demand(amount.kind().measure().get());
            }
        }
    }

    /** Such as two bare numbers that occur only in a product: either could be the length. */
    private void warnOfUnclear(Set<Amount> sound) {
        Set<String> used = new LinkedHashSet<>();
        for (Amount amount : sound) {
            if (amount.written() instanceof Formula formula) {
                used.addAll(formula.names());
            }
        }
        dimensions.forEach((name, amount) -> {
            if (used.contains(name) && measures.of(name) instanceof Inferred.Open && !unresolved.contains(name)) {
                findings.warning(
                        "measure-unclear",
                        amount.place(),
                        "cannot tell whether '" + name
                                + "' is a length, an angle or a plain number; it counts as a plain "
                                + "number, expected a unit if it is not");
            }
        });
    }

    private Optional<Measure> measureOf(String name) {
        return measures.of(name) instanceof Inferred.Known known ? Optional.of(known.measure()) : Optional.empty();
    }

    private void settleDimension(String name) {
        Amount amount = dimensions.get(name);
        Optional<Measure> measure = measureOf(name);
        if (measure.isPresent() && unitSize(measure.get()).isEmpty()) {
            refuse(
                    name,
                    "measure",
                    amount.place(),
                    "the dimension '" + name + "' gives " + measure.get()
                            + ", expected a length, an angle or a plain number");
            return;
        }
        inFileUnits(amount)
                .ifPresentOrElse(
                        value -> {
                            values.put(name, value);
                            amount.settle(toDouble(value, measure.orElse(Measure.NUMBER)));
                        },
                        () -> unresolved.add(name));
    }

    private void refuse(String name, String code, Place place, String message) {
        findings.error(code, place, message);
        unresolved.add(name);
    }

    private void settle(Amount amount, Measure measure) {
        inFileUnits(amount).ifPresent(value -> {
            double settled = toDouble(value, measure);
            Range range = amount.kind().range();
            if (range.contains(settled)) {
                amount.settle(settled);
                return;
            }
            String unit = measure.equals(Measure.LENGTH) ? " mm" : measure.equals(Measure.ANGLE) ? " deg" : "";
            String shown = amount.written() instanceof Formula formula
                    ? "'" + Wording.shortened(formula.text()) + "' is "
                    : "";
            findings.error(
                    "range",
                    amount.place(),
                    shown + Wording.number(settled) + unit + " is out of range, expected " + range.describe(unit));
        });
    }

    /** The value in the units of the file; empty, with a finding where it is a new one, if there is none. */
    private Optional<BigDecimal> inFileUnits(Amount amount) {
        Written written = amount.written();
        if (written instanceof Written.Bare bare) {
            return Optional.of(bare.number());
        }
        if (written instanceof Written.WithUnit withUnit) {
            BigDecimal inBase = withUnit.number().multiply(withUnit.unit().size(), MathContext.DECIMAL128);
            return Optional.of(
                    inBase.divide(unitSize(withUnit.unit().measure()).orElseThrow(), MathContext.DECIMAL128));
        }
        Formula formula = (Formula) written;
        if (formula.names().stream().anyMatch(unresolved::contains)) {
            return Optional.empty();
        }
        return new FormulaValue(formula, findings).evaluate(values, angleUnit.size());
    }

    private double toDouble(BigDecimal inFileUnits, Measure measure) {
        return inFileUnits
                .multiply(unitSize(measure).orElseThrow(), MathContext.DECIMAL128)
                .doubleValue();
    }

    /** Size of the file's unit; empty for what is neither a length, an angle nor a plain number. */
    private Optional<BigDecimal> unitSize(Measure measure) {
        if (measure.equals(Measure.LENGTH)) {
            return Optional.of(lengthUnit.size());
        }
        if (measure.equals(Measure.ANGLE)) {
            return Optional.of(angleUnit.size());
        }
        return measure.equals(Measure.NUMBER) ? Optional.of(BigDecimal.ONE) : Optional.empty();
    }
}
