package darkrim.layout;

import darkrim.diagnostic.Findings;
import darkrim.layout.form.Fields;
import darkrim.layout.form.Value;
import darkrim.layout.form.Wording;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** The finishes of a file, the rules that give them to surfaces, and whether every name of a finish is known. */
final class FinishBuilder {
    private final Fields file;
    private final Findings findings;
    private final Set<String> known = new LinkedHashSet<>();
    private final Set<String> used = new HashSet<>();

    FinishBuilder(Fields file, Findings findings) {
        this.file = file;
        this.findings = findings;
    }

    /** The finishes that could be read. */
    Map<String, FinishSpec> finishes() {
        Map<String, FinishSpec> finishes = new LinkedHashMap<>();
        if (file.find("finishes").orElse(null) instanceof Value.Named named) {
            known.addAll(named.places().keySet());
            named.values().forEach((name, value) -> {
                Fields fields = (Fields) value;
                if (name.equals(Part.NO_FINISH)) {
                    findings.error(
                            "name",
                            named.places().get(name),
                            "'" + name + "' is the finish that reflects nothing, expected another name");
                } else if (fields.isWhole() && reflectsNotTooMuch(fields)) {
                    finishes.put(
                            name,
                            new FinishSpec(
                                    name,
                                    fields.number("diffuse"),
                                    fields.number("mirror"),
                                    fields.text("source"),
                                    named.places().get(name)));
                }
            });
        }
        known.add(Part.NO_FINISH);
        return finishes;
    }

    /** The rules that could be read. */
    List<FinishRule> rules() {
        List<FinishRule> rules = new ArrayList<>();
        for (Value value : file.list("finish_rules")) {
            Fields fields = (Fields) value;
            checkUse(fields);
            if (fields.isWhole() && known.contains(fields.text("finish"))) {
                rules.add(new FinishRule(fields.text("surfaces"), fields.text("finish"), fields.place()));
            }
        }
        return rules;
    }

    /** Notes the finish that is named, and reports it if there is none of the name. */
    void checkUse(Fields fields) {
        fields.find("finish").ifPresent(this::checkUse);
    }

    /** Notes the finish of this name, and reports it if there is none. */
    void checkUse(Value value) {
        String name = Fields.text(value);
        use(name);
        if (!known.contains(name)) {
            findings.error(
                    "unknown-finish",
                    value.place(),
                    "unknown finish '" + Wording.shortened(name) + "', " + Wording.suggestion(name, known));
        }
    }

    /** Notes a finish. */
    void use(String name) {
        used.add(name);
    }

    /** Whether a finish of this name is defined, even if with errors. */
    boolean isKnown(String name) {
        return known.contains(name);
    }

    /** Warns of finishes that nothing has. */
    void warnOfUnused(Collection<FinishSpec> finishes) {
        for (FinishSpec finish : finishes) {
            if (!used.contains(finish.name())) {
                findings.warning("unused", finish.place(), "the finish '" + finish.name() + "' is not used");
            }
        }
    }

    private boolean reflectsNotTooMuch(Fields fields) {
        double sum = fields.number("diffuse") + fields.number("mirror");
        if (sum <= 1) {
            return true;
        }
        findings.error(
                "reflectance",
                fields.place(),
                "diffuse and mirror add up to " + Wording.number(sum) + ", expected at most 1");
        return false;
    }
}
