package darkrim.layout;

import darkrim.diagnostic.Findings;
import darkrim.diagnostic.Place;
import darkrim.layout.form.Fields;
import darkrim.layout.form.Value;
import darkrim.layout.form.Wording;
import darkrim.material.ContractionTable;
import darkrim.material.Material;
import darkrim.material.MaterialLibrary;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;

/** The materials of a file beside those of the program, and whether every name of a material is known. */
final class MaterialReader {
    private static final List<String> COLUMNS = List.of("temperature_k", "contraction");
    private static final String CODE = "material";

    private final SideFiles files;
    private final Findings findings;
    private final Map<String, Material> own = new HashMap<>();
    private final Set<String> broken = new HashSet<>();

    MaterialReader(Fields file, SideFiles files, Findings findings) {
        this.files = files;
        this.findings = findings;
        if (file.find("materials").orElse(null) instanceof Value.Named named) {
            broken.addAll(named.places().keySet());
            named.values().forEach((name, value) -> {
                if (MaterialLibrary.of(name).isPresent()) {
                    findings.error(
                            CODE,
                            named.places().get(name),
                            "the program has a material '" + name + "' of its own, expected another name");
                } else if (value.isWhole()) {
                    read(name, (Fields) value).ifPresent(material -> own.put(name, material));
                }
            });
            broken.removeAll(own.keySet());
        }
    }

    /** The material that is named; empty if there is none, which is reported unless it was already. */
    Optional<Material> named(Value value) {
        String name = Fields.text(value);
        Optional<Material> found = Optional.ofNullable(own.get(name)).or(() -> MaterialLibrary.of(name));
        if (found.isEmpty() && !broken.contains(name)) {
            Set<String> known = new TreeSet<>(MaterialLibrary.names());
            known.addAll(own.keySet());
            findings.error(
                    CODE,
                    value.place(),
                    "unknown material '" + Wording.shortened(name) + "', "
                            + MaterialLibrary.refusal(name).orElseGet(() -> Wording.suggestion(name, known)));
        }
        return found;
    }

    private Optional<Material> read(String name, Fields fields) {
        List<NumberTable.Row> rows = fields.has("file")
                ? NumberTable.read(files, fields.find("file").orElseThrow(), COLUMNS, findings)
                : fields.list("contraction").stream().map(NumberTable::inline).toList();
        List<Double> temperatures = new ArrayList<>();
        List<Double> values = new ArrayList<>();
        boolean sound = rows.size() >= 2;
        if (rows.size() == 1) {
            error(fields.place(), "a table with one temperature, expected two or more");
        }
        for (NumberTable.Row row : rows) {
            double temperature = row.numbers().get(0);
            double value = row.numbers().get(1);
            double last = temperatures.isEmpty() ? 0 : temperatures.get(temperatures.size() - 1);
            if (!(temperature > last)) {
                sound = error(
                        row.places().get(0),
                        "a temperature of " + Wording.number(temperature)
                                + " K, expected temperatures above 0 K that increase");
            }
            if (!(Math.abs(value) <= 0.1)) {
                sound = error(
                        row.places().get(1),
                        "a contraction of " + Wording.number(value)
                                + ", expected a share of the length from -0.1 to 0.1, such as 0.0039");
            }
            temperatures.add(temperature);
            values.add(value);
        }
        double accuracy = fields.has("accuracy") ? fields.number("accuracy") : Double.NaN;
        return sound
                ? Optional.of(
                        new Material(name, new ContractionTable(temperatures, values, accuracy), fields.text("source")))
                : Optional.empty();
    }

    private boolean error(Place place, String message) {
        findings.error(CODE, place, message);
        return false;
    }
}
