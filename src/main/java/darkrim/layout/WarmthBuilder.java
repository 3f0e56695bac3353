package darkrim.layout;

import darkrim.diagnostic.Findings;
import darkrim.layout.form.Fields;
import darkrim.layout.form.Value;
import darkrim.layout.form.Wording;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * What is warm in a file.
 *
 * @param worksAt temperature at which a cooled layout works, K; absent where it is not cooled
 * @param findings receives what is wrong
 */
record WarmthBuilder(Optional<Double> worksAt, Findings findings) {
    private static final String TEMPERATURE = "temperature";

    /** What is warm; empty where the file says nothing of it or, with a finding, where it cannot be as described. */
    Optional<WarmthSpec> build(Fields file) {
        Map<String, Value> parts = parts(file);
        if (!file.has("warmth")) {
            parts.forEach((part, value) -> findings.error(
                    "no-warmth",
                    value.place(),
                    "part '" + part
                            + "' has a temperature, and the layout says of no band what to do with it, expected the key"
                            + " warmth in the layout"));
            return Optional.empty();
        }
        return file.find("warmth").filter(Value::isWhole).flatMap(value -> build((Fields) value, parts));
    }

    private Optional<WarmthSpec> build(Fields warmth, Map<String, Value> parts) {
        List<Double> band = warmth.numbers("band");
        if (!(band.get(1) > band.get(0))) {
            findings.error(
                    "wavelength",
                    warmth.place("band"),
                    "a band from " + Wording.number(band.get(0)) + " to " + Wording.number(band.get(1))
                            + " um, expected the shorter wavelength first");
            return Optional.empty();
        }
        Optional<Double> kelvin = warmth.find(TEMPERATURE).map(Fields::number).or(() -> worksAt);
        if (kelvin.isEmpty()) {
            findings.error(
                    "no-temperature",
                    warmth.place(),
                    "nothing says how warm the parts are, expected the key temperature in warmth, or the cool-down that"
                            + " the parts go through");
            return Optional.empty();
        }
        Map<String, Double> kelvins = new LinkedHashMap<>();
        parts.forEach((part, value) -> kelvins.put(part, Fields.number(value)));
        return Optional.of(new WarmthSpec(
                kelvin.get(),
                band.get(0),
                band.get(1),
                warmth.number("quantum_efficiency"),
                warmth.find("pixel_pitch").map(Fields::number),
                warmth.find("surroundings").map(Fields::number),
                warmth.ifGiven(
                        "pupil",
                        pupil -> new WarmthSpec.WarmPupil(pupil.number(TEMPERATURE), pupil.number("emissivity"))),
                kelvins,
                warmth.list("temperature_rules").stream()
                        .map(Fields.class::cast)
                        .map(rule -> new TemperatureRule(rule.text("surfaces"), rule.number(TEMPERATURE), rule.place()))
                        .toList(),
                warmth.place()));
    }

    /** Temperatures of parts that could be read, by name of the part. */
    private static Map<String, Value> parts(Fields file) {
        Map<String, Value> temperatures = new LinkedHashMap<>();
        if (file.find("parts").orElse(null) instanceof Value.Named named) {
            named.values()
                    .forEach((name, value) -> ((Fields) value)
                            .find(TEMPERATURE)
                            .filter(Value::isWhole)
                            .ifPresent(found -> temperatures.put(name, found)));
        }
        return temperatures;
    }
}
