package darkrim.layout;

import darkrim.diagnostic.Findings;
import darkrim.layout.form.Fields;
import darkrim.layout.form.FormReader;
import darkrim.layout.form.Node;
import darkrim.layout.form.Value;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Supplier;

/** Makes a layout of the values of a file, and checks what no single value tells. */
final class LayoutBuilder {
    private final Supplier<Layout.Source> source;
    private final Map<String, Double> chosen;
    private final SideFiles files;
    private final Findings findings;
    private boolean partsComplete;

    LayoutBuilder(Supplier<Layout.Source> source, Map<String, Double> chosen, SideFiles files, Findings findings) {
        this.source = source;
        this.chosen = chosen;
        this.files = files;
        this.findings = findings;
    }

    /** Whether every part of the file is in the layout. */
    boolean partsComplete() {
        return partsComplete;
    }

    /** Reads the whole file. */
    Layout build(FormReader reader, Node.Mapping mapping) {
        Fields file = (Fields) reader.read(mapping, LayoutKeys.LAYOUT, "").orElseThrow();
        DimensionBuilder dimensionBuilder = new DimensionBuilder(file, chosen, findings);
        Map<String, Dimension> dimensions = dimensionBuilder.build(reader.amounts());
        FinishBuilder finishBuilder = new FinishBuilder(file, files, findings);
        Map<String, FinishSpec> finishes = finishBuilder.finishes();
        List<FinishRule> rules = finishBuilder.rules();
        CooldownBuilder cooldown = new CooldownBuilder(file, files, findings);
        List<Part> parts = parts(file, finishBuilder, cooldown);
        Optional<BeamSpec> beam = file.find("beam")
                .filter(Value::isWhole)
                .flatMap(value -> new BeamBuilder(findings).build((Fields) value));
        List<SourceSpec> sources = new SourceBuilder(findings).sources(file, beam);
        List<Requirement> requirements = new RequirementBuilder(cooldown.isStated(), findings).requirements(file);
        Optional<WarmthSpec> warmth =
                new WarmthBuilder(cooldown.cooldown().map(Cooldown::worksAt), findings).build(file);
        if (!findings.hasErrors()) {
            dimensionBuilder.warnOfUnused(reader.amounts());
            finishBuilder.warnOfUnused(finishes.values());
        }
        return new Layout(
                whole(file, "title").map(Fields::text).orElse(""),
                whole(file, "revision").map(Fields::text).orElse(""),
                source.get(),
                dimensions,
                finishes,
                rules,
                beam.orElse(BeamSpec.UNREAD),
                sources,
                parts,
                requirements,
                whole(file, "placement_error").map(Fields::number),
                whole(file, "sampling").map(value -> sampling((Fields) value)).orElse(SamplingSpec.DEFAULT),
                mapping.entries().stream().anyMatch(entry -> entry.key().equals("maps"))
                        ? whole(file, "maps").map(value -> maps((Fields) value)).orElse(MapSpec.UNREAD)
                        : MapSpec.DEFAULT,
                cooldown.cooldown(),
                warmth);
    }

    private List<Part> parts(Fields file, FinishBuilder finishes, CooldownBuilder cooldown) {
        if (!(file.find("parts").orElse(null) instanceof Value.Named named)) {
            return List.of();
        }
        Map<String, Part> parts = new LinkedHashMap<>();
        PartBuilder builder = new PartBuilder(finishes, files.meshes(), findings);
        named.values().forEach((name, value) -> {
            Fields fields = (Fields) value;
            finishes.checkUse(fields);
            if (fields.isWhole()) {
                builder.build(name, fields, named.places().get(name))
                        .ifPresent(part -> parts.put(name, cooldown.mounted(part, fields)));
            }
        });
        cooldown.check(named.places().keySet());
        List<Part> kept = FaceCount.kept(parts.values(), findings);
        partsComplete = named.complete() && kept.size() == named.values().size();
        return kept;
    }

    private static Optional<Value> whole(Fields file, String key) {
        return file.find(key).filter(Value::isWhole);
    }

    private static SamplingSpec sampling(Fields fields) {
        return new SamplingSpec(
                fields.longCount("seed"), fields.number("confidence"), fields.longCount("most_samples"));
    }

    private static MapSpec maps(Fields fields) {
        List<Integer> cells = fields.counts("cells");
        return new MapSpec(
                fields.text("surfaces"), cells.get(0), cells.get(cells.size() - 1), fields.place("surfaces"));
    }
}
