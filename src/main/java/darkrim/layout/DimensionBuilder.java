package darkrim.layout;

import darkrim.diagnostic.Findings;
import darkrim.layout.form.Amount;
import darkrim.layout.form.Fields;
import darkrim.layout.form.Formula;
import darkrim.layout.form.Measure;
import darkrim.layout.form.Quantities;
import darkrim.layout.form.Unit;
import darkrim.layout.form.Value;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** The units and named dimensions of a file, and with them the values of all its numbers. */
final class DimensionBuilder {
    private final Fields file;
    private final Map<String, Double> chosen;
    private final Findings findings;
    private final Map<String, Amount> written = new LinkedHashMap<>();
    private final Map<String, Fields> withKeys = new LinkedHashMap<>();
    private final Set<String> broken = new HashSet<>();

    /**
     * @param file the file
     * @param chosen values that dimensions take instead of what is written, in mm, degrees or plain
     * @param findings receives what is wrong
     */
    DimensionBuilder(Fields file, Map<String, Double> chosen, Findings findings) {
        this.file = file;
        this.chosen = chosen;
        this.findings = findings;
    }

    /** Settles all numbers of the file and hands over the named ones. */
    Map<String, Dimension> build(List<Amount> amounts) {
        file.find("dimensions").ifPresent(value -> collect((Value.Named) value));
        Map<Amount, String> alike = new LinkedHashMap<>();
        withKeys.forEach((name, fields) -> ToleranceBuilder.amounts(fields).forEach(amount -> alike.put(amount, name)));
        Quantities quantities = new Quantities(unit("length"), unit("angle"), written, alike, chosen, findings);
        quantities.settle(amounts, broken);
        ToleranceBuilder tolerances = new ToleranceBuilder(findings);
        Map<String, Dimension> dimensions = new LinkedHashMap<>();
        quantities.dimensions().forEach((name, settled) -> {
            Amount amount = written.get(name);
            dimensions.put(
                    name,
                    new Dimension(
                            name,
                            settled.value(),
                            kind(settled.measure()),
                            amount.written().text(),
                            Optional.ofNullable(withKeys.get(name))
                                    .flatMap(fields -> tolerances.ofDimension(name, fields)),
                            amount.place()));
        });
        return dimensions;
    }

    /** Warns of dimensions that no formula uses. */
    void warnOfUnused(List<Amount> amounts) {
        Set<String> used = new HashSet<>();
        for (Amount amount : amounts) {
            if (amount.written() instanceof Formula formula) {
                used.addAll(formula.names());
            }
        }
        written.forEach((name, amount) -> {
            if (!used.contains(name)) {
                findings.warning(
                        "unused",
                        amount.place(),
                        "the dimension '" + name + "' is not used, expected its name in a value or formula");
            }
        });
    }

    private void collect(Value.Named named) {
        broken.addAll(named.places().keySet());
        named.values().forEach((name, value) -> {
            if (Formula.reserves(name)) {
                findings.error(
                        "name",
                        named.places().get(name),
                        "'" + name + "' is a function, a unit or pi, expected another name for the dimension");
                return;
            }
            Value amount = value instanceof Fields fields ? fields.find("value").orElse(null) : value;
            if (amount instanceof Amount found) {
                written.put(name, found);
                broken.remove(name);
                if (value instanceof Fields fields) {
                    withKeys.put(name, fields);
                }
            }
        });
    }

    private Unit unit(String key) {
        Unit otherwise = key.equals("length") ? Unit.MM : Unit.DEG;
        return file.find("units")
                .flatMap(units -> ((Fields) units).find(key))
                .flatMap(word -> Unit.of(Fields.text(word)))
                .orElse(otherwise);
    }

    private static Quantity kind(Measure measure) {
        if (measure.equals(Measure.LENGTH)) {
            return Quantity.LENGTH;
        }
        return measure.equals(Measure.ANGLE) ? Quantity.ANGLE : Quantity.NUMBER;
    }
}
