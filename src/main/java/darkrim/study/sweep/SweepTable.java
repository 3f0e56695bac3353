package darkrim.study.sweep;

import darkrim.layout.Requirement;
import darkrim.layout.form.Wording;
import darkrim.study.MarginUnit;
import darkrim.study.RequirementFigure;
import darkrim.verdict.Verdict;
import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.CsvRecord;
import de.siegmar.fastcsv.writer.CsvWriter;
import de.siegmar.fastcsv.writer.LineDelimiter;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.TreeMap;

/**
 * Points as lines of comma-separated values (RFC 4180): one header with units, one line a point, always the same columns. Numbers have all their
 * digits, so that a line read back is the same point to the last bit; no number and no answer is an empty field.
 */
public final class SweepTable {
    private static final int FIXED_BEFORE = 1;
    private static final int PER_REQUIREMENT = 12;
    private static final String YES = "yes";
    private static final String NO = "no";

    private final List<Variation> variations;
    private final List<Requirement> requirements;

    /**
     * @param variations what is varied
     * @param requirements the requirements of the layout
     */
    public SweepTable(List<Variation> variations, List<Requirement> requirements) {
        this.variations = List.copyOf(variations);
        this.requirements = List.copyOf(requirements);
    }

    /** Names of the columns, as a line. */
    public String header() {
        List<String> names = new ArrayList<>(List.of("point"));
        for (Variation each : variations) {
            names.add(each.dimension() + bracketed(each.unit()));
        }
        names.add("verdict");
        names.add("impossible because");
        names.add("compared with point");
        for (Requirement each : requirements) {
            String unit = bracketed(unit(each));
            String name = each.name();
            names.add(name + " verdict");
            names.add(name + " value" + unit);
            names.add(name + " standard error" + unit);
            names.add(name + " at least" + unit);
            names.add(name + " at most" + unit);
            names.add(name + " limit" + unit);
            names.add(name + " margin" + bracketed(marginUnit(each)));
            names.add(name + " margin is at least");
            names.add(name + " worst surface");
            names.add(name + " change" + unit);
            names.add(name + " change standard error" + unit);
            names.add(name + " change is significant");
        }
        return line(names);
    }

    /** What a requirement's value is measured in. */
    public static String unit(Requirement requirement) {
        return requirement.condition() instanceof Requirement.PupilSeen ? "share of pupil" : "relative irradiance";
    }

    /** What a requirement's margin is measured in. */
    public static String marginUnit(Requirement requirement) {
        return MarginUnit.of(requirement).words();
    }

    private static String bracketed(String unit) {
        return unit.isEmpty() ? "" : " [" + unit + "]";
    }

    /** A point as a line. */
    public String line(SweepPoint point) {
        List<String> fields = new ArrayList<>(List.of(String.valueOf(point.number())));
        variations.forEach(each -> fields.add(number(point.chosen().get(each.dimension()))));
        fields.add(word(point.verdict()));
        fields.add(Wording.oneLine(point.impossible()));
        fields.add(point.comparedWith().map(String::valueOf).orElse(""));
        for (Requirement each : requirements) {
            Optional<RequirementLine> line = point.line(each.name());
            if (line.isPresent()) {
                add(fields, line.get());
            } else {
                fields.addAll(java.util.Collections.nCopies(PER_REQUIREMENT, ""));
            }
        }
        return line(fields);
    }

    private static void add(List<String> fields, RequirementLine line) {
        RequirementFigure figure = line.figure();
        fields.add(word(Optional.of(figure.verdict())));
        fields.add(number(figure.value()));
        fields.add(number(figure.standardError()));
        fields.add(number(figure.lower()));
        fields.add(number(figure.upper()));
        fields.add(number(figure.limit()));
        fields.add(number(figure.margin()));
        fields.add(figure.marginAtLeast() ? YES : NO);
        fields.add(Wording.oneLine(figure.worst()));
        fields.add(number(line.change()));
        fields.add(number(line.changeError()));
        fields.add(line.significant() ? YES : NO);
    }

    /** Fields as a line, with its end. */
    static String line(List<String> fields) {
        StringWriter text = new StringWriter();
        try (CsvWriter writer =
                CsvWriter.builder().lineDelimiter(LineDelimiter.CRLF).build(text)) {
            writer.writeRecord(fields);
        } catch (IOException impossible) {
            throw new UncheckedIOException(impossible);
        }
        return text.toString();
    }

    /**
     * Fields of a line.
     *
     * @throws IllegalArgumentException if it is none
     */
    static List<String> fields(String line) {
        List<CsvRecord> records = CsvReader.builder().skipEmptyLines(false).ofCsvRecord(line).stream()
                .toList();
        if (records.size() != 1) {
            throw new IllegalArgumentException("not one line");
        }
        return records.get(0).getFields();
    }

    /**
     * Reads a line back.
     *
     * @throws IllegalArgumentException if it is not a line of this table
     */
    public SweepPoint point(String line) {
        List<String> all = fields(line);
        int count = FIXED_BEFORE + variations.size() + 3 + PER_REQUIREMENT * requirements.size();
        if (all.size() != count) {
            throw new IllegalArgumentException(all.size() + " fields, expected " + count);
        }
        Iterator<String> fields = all.iterator();
        int number = Integer.parseInt(fields.next());
        TreeMap<String, Double> chosen = new TreeMap<>();
        variations.forEach(each -> chosen.put(each.dimension(), number(fields.next())));
        Optional<Verdict> verdict = verdict(fields.next());
        String impossible = fields.next();
        String compared = fields.next();
        List<RequirementLine> lines = new ArrayList<>();
        for (Requirement each : requirements) {
            Optional<Verdict> own = verdict(fields.next());
            List<String> rest = new ArrayList<>();
            for (int i = 1; i < PER_REQUIREMENT; i++) {
                rest.add(fields.next());
            }
            own.ifPresent(found -> lines.add(requirementLine(each.name(), found, rest)));
        }
        return new SweepPoint(
                number,
                chosen,
                compared.isEmpty() ? Optional.empty() : Optional.of(Integer.valueOf(compared)),
                verdict,
                lines,
                impossible);
    }

    private static RequirementLine requirementLine(String name, Verdict verdict, List<String> rest) {
        Iterator<String> fields = rest.iterator();
        RequirementFigure figure = new RequirementFigure(
                name,
                verdict,
                number(fields.next()),
                number(fields.next()),
                number(fields.next()),
                number(fields.next()),
                number(fields.next()),
                number(fields.next()),
                fields.next().equals(YES),
                fields.next(),
                new TreeMap<>());
        return new RequirementLine(
                figure,
                number(fields.next()),
                number(fields.next()),
                fields.next().equals(YES));
    }

    private static String number(double value) {
        return Double.isNaN(value) ? "" : Double.toString(value);
    }

    private static double number(String field) {
        return field.isEmpty() ? Double.NaN : Double.parseDouble(field);
    }

    private static String word(Optional<Verdict> verdict) {
        return verdict.map(each -> each.name().toLowerCase(Locale.ROOT)).orElse("");
    }

    private static Optional<Verdict> verdict(String word) {
        return word.isEmpty() ? Optional.empty() : Optional.of(Verdict.valueOf(word.toUpperCase(Locale.ROOT)));
    }
}
