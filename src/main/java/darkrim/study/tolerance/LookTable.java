package darkrim.study.tolerance;

import darkrim.layout.Requirement;
import darkrim.layout.form.Wording;
import darkrim.study.PointResult;
import darkrim.study.RequirementFigure;
import darkrim.study.RequirementMargin;
import darkrim.study.journal.CsvLine;
import darkrim.study.journal.FigureColumns;
import darkrim.study.journal.JournalLines;
import darkrim.verdict.Verdict;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Iterator;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Looks as lines of comma-separated values: what was asked, deviations, and what was found. Values of dimensions are not kept: they follow from
 * the deviations.
 */
public final class LookTable implements JournalLines<Looked> {
    private static final List<String> OF_RESULT = List.of("verdict", "impossible because", "warnings");
    private static final int PER_REQUIREMENT = FigureColumns.COUNT + MarginColumns.COUNT;

    private final List<Contributor> contributors;
    private final List<Requirement> requirements;

    /**
     * @param contributors what deviates
     * @param requirements the requirements of the layout
     */
    public LookTable(List<Contributor> contributors, List<Requirement> requirements) {
        this.contributors = List.copyOf(contributors);
        this.requirements = List.copyOf(requirements);
    }

    @Override
    public String header() {
        List<String> names = new ArrayList<>(List.of("margin of"));
        contributors.forEach(each -> names.add(each.name() + FigureColumns.bracketed(each.unit())));
        names.addAll(OF_RESULT);
        for (Requirement each : requirements) {
            FigureColumns.addNames(names, each.name(), "", "");
            MarginColumns.addNames(names, each.name());
        }
        return CsvLine.of(names);
    }

    @Override
    public String line(Looked entry) {
        PointResult result = entry.result();
        List<String> fields = new ArrayList<>(List.of(entry.look().marginOf()));
        entry.look().deviations().forEach(each -> fields.add(CsvLine.number(each)));
        fields.add(CsvLine.word(result.verdict()));
        fields.add(Wording.oneLine(result.impossible()));
        fields.add(Wording.oneLine(result.warnings()));
        for (Requirement each : requirements) {
            result.figure(each.name())
                    .ifPresentOrElse(
                            figure -> FigureColumns.add(fields, figure),
                            () -> fields.addAll(Collections.nCopies(FigureColumns.COUNT, "")));
            result.margins().stream()
                    .filter(margin -> margin.requirement().equals(each.name()))
                    .findFirst()
                    .ifPresentOrElse(
                            margin -> MarginColumns.add(fields, margin),
                            () -> fields.addAll(Collections.nCopies(MarginColumns.COUNT, "")));
        }
        return CsvLine.of(fields);
    }

    @Override
    public Looked read(String line, int number) {
        int count = 1 + contributors.size() + OF_RESULT.size() + PER_REQUIREMENT * requirements.size();
        Iterator<String> fields = CsvLine.fields(line, count).iterator();
        String marginOf = fields.next();
        List<Double> deviations = new ArrayList<>();
        contributors.forEach(each -> deviations.add(Double.valueOf(fields.next())));
        Optional<Verdict> verdict = CsvLine.verdict(fields.next());
        String impossible = fields.next();
        String warnings = fields.next();
        List<RequirementFigure> figures = new ArrayList<>();
        List<RequirementMargin> margins = new ArrayList<>();
        for (Requirement each : requirements) {
            FigureColumns.read(each.name(), fields).ifPresent(figures::add);
            MarginColumns.read(each, impossible, fields).ifPresent(margins::add);
        }
        PointResult result = new PointResult(Map.of(), verdict, figures, margins, warnings, impossible);
        return new Looked(new Look(deviations, marginOf), result);
    }

    /** An entry as it is after it was kept: nothing may hang on whether a study was interrupted. */
    Looked kept(Looked entry) {
        return read(line(entry), 1);
    }
}
