package darkrim.study.sweep;

import darkrim.layout.Requirement;
import darkrim.layout.form.Wording;
import darkrim.study.MarginUnit;
import darkrim.study.RequirementFigure;
import darkrim.study.journal.CsvLine;
import darkrim.study.journal.FigureColumns;
import darkrim.study.journal.JournalLines;
import darkrim.verdict.Verdict;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Iterator;
import java.util.List;
import java.util.Optional;
import java.util.TreeMap;

/**
 * Points as lines of comma-separated values (RFC 4180): one header with units, one line a point, always the same columns. Numbers have all their
 * digits, so that a line read back is the same point to the last bit; no number and no answer is an empty field.
 */
public final class SweepTable implements JournalLines<SweepPoint> {
    /** Number, verdict, why impossible, warnings, compared with. */
    private static final int FIXED = 5;

    private static final int PER_REQUIREMENT = FigureColumns.COUNT + 3;

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

    @Override
    public String header() {
        List<String> names = new ArrayList<>(List.of("point"));
        for (Variation each : variations) {
            names.add(each.dimension() + FigureColumns.bracketed(each.unit()));
        }
        names.add("verdict");
        names.add("impossible because");
        names.add("warnings");
        names.add("compared with point");
        for (Requirement each : requirements) {
            String name = each.name();
            FigureColumns.addNames(names, name, unit(each), marginUnit(each));
            String unit = FigureColumns.bracketed(unit(each));
            names.add(name + " change" + unit);
            names.add(name + " change standard error" + unit);
            names.add(name + " change is significant");
        }
        return CsvLine.of(names);
    }

    /** Points as a table with its header. */
    public String of(List<SweepPoint> points) {
        StringBuilder text = new StringBuilder(header());
        points.forEach(point -> text.append(line(point)));
        return text.toString();
    }

    /** What a requirement's value is measured in. */
    public static String unit(Requirement requirement) {
        if (requirement.condition() instanceof Requirement.Clearance) {
            return "mm";
        }
        return requirement.condition() instanceof Requirement.PupilSeen ? "share of pupil" : "relative irradiance";
    }

    /** What a requirement's margin is measured in. */
    public static String marginUnit(Requirement requirement) {
        return MarginUnit.of(requirement).words();
    }

    @Override
    public String line(SweepPoint point) {
        List<String> fields = new ArrayList<>(List.of(String.valueOf(point.number())));
        variations.forEach(each -> fields.add(CsvLine.number(point.chosen().get(each.dimension()))));
        fields.add(CsvLine.word(point.verdict()));
        fields.add(Wording.oneLine(point.impossible()));
        fields.add(Wording.oneLine(point.warnings()));
        fields.add(point.comparedWith().map(String::valueOf).orElse(""));
        for (Requirement each : requirements) {
            Optional<RequirementLine> line = point.line(each.name());
            if (line.isPresent()) {
                add(fields, line.get());
            } else {
                fields.addAll(Collections.nCopies(PER_REQUIREMENT, ""));
            }
        }
        return CsvLine.of(fields);
    }

    private static void add(List<String> fields, RequirementLine line) {
        FigureColumns.add(fields, line.figure());
        fields.add(CsvLine.number(line.change()));
        fields.add(CsvLine.number(line.changeError()));
        fields.add(CsvLine.answer(line.significant()));
    }

    @Override
    public SweepPoint read(String line, int expected) {
        int count = FIXED + variations.size() + PER_REQUIREMENT * requirements.size();
        Iterator<String> fields = CsvLine.fields(line, count).iterator();
        int number = Integer.parseInt(fields.next());
        if (number != expected) {
            throw new IllegalArgumentException("point " + number + ", expected " + expected);
        }
        TreeMap<String, Double> chosen = new TreeMap<>();
        variations.forEach(each -> chosen.put(each.dimension(), CsvLine.number(fields.next())));
        Optional<Verdict> verdict = CsvLine.verdict(fields.next());
        String impossible = fields.next();
        String warnings = fields.next();
        String compared = fields.next();
        List<RequirementLine> lines = new ArrayList<>();
        for (Requirement each : requirements) {
            Optional<RequirementFigure> figure = FigureColumns.read(each.name(), fields);
            double change = CsvLine.number(fields.next());
            double changeError = CsvLine.number(fields.next());
            boolean significant = CsvLine.answer(fields.next());
            figure.ifPresent(found -> lines.add(new RequirementLine(found, change, changeError, significant)));
        }
        return new SweepPoint(
                number,
                chosen,
                compared.isEmpty() ? Optional.empty() : Optional.of(Integer.valueOf(compared)),
                verdict,
                lines,
                warnings,
                impossible);
    }
}
