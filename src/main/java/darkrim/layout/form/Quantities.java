package darkrim.layout.form;

import com.ezylang.evalex.config.ExpressionConfiguration;
import darkrim.diagnostic.Findings;
import java.math.BigDecimal;
import java.math.MathContext;
import java.util.Collections;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * Works out every number of a file: bare numbers in the units of the file, numbers with units, and formulas over the
 * named dimensions. A formula reckons in the units of the file, so that a bare number in it means the same as
 * elsewhere.
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

    private final ExpressionConfiguration language;
    private final Map<Amount, String> nameOf = new HashMap<>();
    private final Map<Amount, String> alike;
    private final Map<String, Double> chosen;
    private final Set<String> unresolved = new LinkedHashSet<>();

    /**
     * @param lengthUnit what a bare length is in
     * @param angleUnit what a bare angle is in
     * @param dimensions what is written for each named dimension, in the order of the file
     * @param alike numbers that measure what a dimension measures, with the name of that dimension
     * @param chosen values that named dimensions take instead of what is written, in mm, degrees or plain
     * @param findings receives what is wrong
     */
    public Quantities(
            Unit lengthUnit,
            Unit angleUnit,
            Map<String, Amount> dimensions,
            Map<Amount, String> alike,
            Map<String, Double> chosen,
            Findings findings) {
        this.lengthUnit = lengthUnit;
        this.angleUnit = angleUnit;
        this.language = FormulaLanguage.over(values, angleUnit.size());
        this.dimensions = Collections.unmodifiableMap(new LinkedHashMap<>(dimensions));
        this.alike = Collections.unmodifiableMap(new LinkedHashMap<>(alike));
        this.chosen = Map.copyOf(chosen);
        this.findings = findings;
        this.measures = new DimensionMeasures(this.dimensions.keySet());
        dimensions.forEach((name, amount) -> nameOf.put(amount, name));
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
        Set<Amount> sound = findMeasures(
                amounts.stream().filter(names::isSound).collect(Collectors.toCollection(LinkedHashSet::new)));
        warnOfUnclear(sound);
        for (String name : names.order()) {
            if (!unresolved.contains(name)) {
                settleDimension(name);
            }
        }
        for (Amount amount : sound) {
            String like = alike.get(amount);
            if (like == null) {
                amount.kind().measure().ifPresent(measure -> settle(amount, measure));
            } else if (!unresolved.contains(like)) {
                settleLike(amount, like);
            }
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

    /**
     * Goes over all uses until nothing more becomes known, and only then reports contradictions. A use of a dimension
     * as it stands tells more than one inside a product, and so goes first.
     *
     * @return the numbers without contradictions
     */
    private Set<Amount> findMeasures(Set<Amount> sound) {
        dimensions.forEach((name, amount) -> {
            if (amount.written() instanceof Written.WithUnit withUnit) {
                measures.declare(name, withUnit.unit().measure(), amount.place());
            }
        });
        for (Amount amount : sound) {
            if (amount.written() instanceof Formula formula && formula.isName()) {
                demand(amount, new Findings());
            }
        }
        List<Amount> open = List.copyOf(sound);
        int before;
        do {
            before = measures.count();
            open = open.stream().filter(this::hasOpenName).toList();
            open.forEach(amount -> demand(amount, new Findings()));
        } while (measures.count() > before);
        return sound.stream().filter(this::agrees).collect(Collectors.toCollection(LinkedHashSet::new));
    }

    private boolean hasOpenName(Amount amount) {
        String name = nameOf.get(amount);
        return amount.written() instanceof Formula formula
                && (formula.names().stream().anyMatch(used -> measures.of(used) instanceof Inferred.Open)
                        || (name != null && measures.of(name) instanceof Inferred.Open));
    }

    private boolean agrees(Amount amount) {
        Findings own = new Findings();
        demand(amount, own);
        findings.addAll(own.sorted());
        String name = nameOf.get(amount);
        if (own.hasErrors() && name != null) {
            unresolved.add(name);
            measures.forget(name);
        }
        return !own.hasErrors();
    }

    /**
     * Asks a formula for the measure that its place wants or, where it defines a dimension, for the one that uses
     * want.
     */
    private void demand(Amount amount, Findings into) {
        if (!(amount.written() instanceof Formula formula)) {
            return;
        }
        MeasureInference inference = new MeasureInference(formula, measures, into);
        String name = nameOf.get(amount);
        String like = alike.getOrDefault(amount, name);
        Optional<Measure> wanted = like == null ? amount.kind().measure() : measureOf(like);
        if (wanted.isPresent()) {
            inference.demand(wanted.get());
        } else if (name != null && inference.measure() instanceof Inferred.Known known) {
            if (unitSize(known.measure()).isPresent()) {
                measures.declare(name, known.measure(), amount.place());
            } else {
                into.error(
                        "measure",
                        amount.place(),
                        "the dimension '" + name + "' gives " + known.measure()
                                + ", expected a length, an angle or a plain number");
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
                                + "' is a length, an angle or a plain number, so it counts as a plain number; "
                                + "if it is a length or an angle, give it a unit");
            }
        });
    }

    private Optional<Measure> measureOf(String name) {
        return measures.of(name) instanceof Inferred.Known known ? Optional.of(known.measure()) : Optional.empty();
    }

    private void settleDimension(String name) {
        Amount amount = dimensions.get(name);
        Measure measure = measureOf(name).orElse(Measure.NUMBER);
        Double instead = chosen.get(name);
        if (instead != null) {
            values.put(
                    name, BigDecimal.valueOf(instead).divide(unitSize(measure).orElseThrow(), MathContext.DECIMAL128));
            amount.settle(instead);
            return;
        }
        inFileUnits(amount)
                .ifPresentOrElse(
                        value -> settleDimension(name, amount, value, toDouble(value, measure)),
                        () -> unresolved.add(name));
    }

    private void settleDimension(String name, Amount amount, BigDecimal inFileUnits, double settled) {
        if (Double.isFinite(settled)) {
            values.put(name, inFileUnits);
            amount.settle(settled);
        } else {
            unresolved.add(name);
            findings.error(
                    "not-finite",
                    amount.place(),
                    "'" + Wording.shortened(amount.written().text())
                            + "' is too large for a number, expected a finite value");
        }
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
            String number = Wording.number(settled) + unit;
            String what = amount.written() instanceof Formula formula
                    ? "'" + Wording.shortened(formula.text()) + "' gives " + number
                    : number + " is out of range";
            findings.error("range", amount.place(), what + ", expected " + range.describe(unit));
        });
    }

    private void settleLike(Amount amount, String dimension) {
        Measure measure = measureOf(dimension).orElse(Measure.NUMBER);
        if (amount.written() instanceof Written.WithUnit withUnit
                && !withUnit.unit().measure().equals(measure)) {
            findings.error(
                    "measure",
                    amount.place(),
                    "'" + Wording.shortened(withUnit.text()) + "' is "
                            + withUnit.unit().measure() + ", expected " + measure + " as '" + dimension + "' is");
            return;
        }
        settle(amount, measure);
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
        return new FormulaValue(formula, findings).evaluate(language);
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
