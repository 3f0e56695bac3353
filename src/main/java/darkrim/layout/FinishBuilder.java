package darkrim.layout;

import darkrim.diagnostic.Findings;
import darkrim.diagnostic.Place;
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
import java.util.Optional;
import java.util.Set;

/** The finishes of a file, the rules that give them to surfaces, and whether every name of a finish is known. */
final class FinishBuilder {
    /** What emissivity and reflectance may add up to beyond 1, for the rounding of decimal numbers and of quadratures. */
    private static final double ROUNDING = 1e-6;

    private final Fields file;
    private final SideFiles files;
    private final Findings findings;
    private final Set<String> known = new LinkedHashSet<>();
    private final Set<String> used = new HashSet<>();

    FinishBuilder(Fields file, SideFiles files, Findings findings) {
        this.file = file;
        this.files = files;
        this.findings = findings;
    }

    /** The finishes that could be read. */
    Map<String, FinishSpec> finishes() {
        Map<String, FinishSpec> finishes = new LinkedHashMap<>();
        if (file.find("finishes").orElse(null) instanceof Value.Named named) {
            known.addAll(named.places().keySet());
            Optional<Band> band = band();
            FinishReader reader = new FinishReader(band, files, findings);
            named.values().forEach((name, value) -> {
                Fields fields = (Fields) value;
                if (name.equals(Part.NO_FINISH)) {
                    findings.error(
                            "name",
                            named.places().get(name),
                            "'" + name + "' is the finish that reflects nothing, expected another name");
                } else if (fields.isWhole()) {
                    finish(name, named.places().get(name), fields, reader, band)
                            .map(finish -> finish.emitting(emissivity(finish, fields)))
                            .ifPresent(finish -> finishes.put(name, finish));
                }
            });
        }
        known.add(Part.NO_FINISH);
        return finishes;
    }

    private Optional<FinishSpec> finish(
            String name, Place place, Fields fields, FinishReader reader, Optional<Band> band) {
        if (fields.has("library")) {
            return new LibraryFinish(findings).read(name, place, fields, band);
        }
        reader.warnOfDye(fields, fields);
        return reader.reflection(fields)
                .map(reflection -> new FinishSpec(name, reflection, fields.text("source"), place));
    }

    /** The emissivity that is stated, with a finding where it is more than what is not reflected. */
    private Optional<Double> emissivity(FinishSpec finish, Fields fields) {
        Optional<Double> stated = fields.find("emissivity").map(Fields::number);
        double most = 1 - finish.reflection().reflectance(1);
        if (stated.isPresent() && stated.get() > most + ROUNDING) {
            findings.error(
                    "emissivity",
                    fields.place("emissivity"),
                    "an emissivity of " + Wording.number(stated.get()) + " where "
                            + Wording.number(Math.round(1e6 * (1 - most)) / 1e6)
                            + " is reflected at normal incidence, expected at most "
                            + Wording.number(Math.round(1e6 * most) / 1e6));
        }
        return stated;
    }

    private Optional<Band> band() {
        Optional<Value> value = file.find("band").filter(Value::isWhole);
        if (value.isEmpty()) {
            return Optional.empty();
        }
        List<Double> ends = file.numbers("band");
        if (!(ends.get(1) > ends.get(0))) {
            findings.error(
                    "wavelength",
                    value.get().place(),
                    "a band from " + Wording.number(ends.get(0)) + " to " + Wording.number(ends.get(1))
                            + " um, expected the shorter wavelength first");
            return Optional.empty();
        }
        return Optional.of(new Band(ends.get(0), ends.get(1)));
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
                findings.warning(
                        "unused",
                        finish.place(),
                        "the finish '" + finish.name() + "' is not used, expected a part or a finish rule with it");
            }
        }
    }
}
