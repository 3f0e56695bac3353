package darkrim.study.journal;

import darkrim.layout.form.Wording;
import darkrim.study.RequirementFigure;
import darkrim.verdict.Verdict;
import java.util.Iterator;
import java.util.List;
import java.util.Optional;
import java.util.TreeMap;

/** The figures of one requirement as columns of a table; what single surfaces have is left out. */
public final class FigureColumns {
    /** Number of columns. */
    public static final int COUNT = 9;

    private FigureColumns() {}

    /**
     * Adds the names of the columns.
     *
     * @param names receives them
     * @param requirement name of the requirement
     * @param unit of its value; empty where none is to stand there
     * @param marginUnit of its margin
     */
    public static void addNames(List<String> names, String requirement, String unit, String marginUnit) {
        names.add(requirement + " verdict");
        names.add(requirement + " value" + bracketed(unit));
        names.add(requirement + " standard error" + bracketed(unit));
        names.add(requirement + " at least" + bracketed(unit));
        names.add(requirement + " at most" + bracketed(unit));
        names.add(requirement + " limit" + bracketed(unit));
        names.add(requirement + " margin" + bracketed(marginUnit));
        names.add(requirement + " margin is at least");
        names.add(requirement + " worst surface");
    }

    /** A unit as it stands behind the name of a column. */
    public static String bracketed(String unit) {
        return unit.isEmpty() ? "" : " [" + unit + "]";
    }

    /** Adds the fields of a requirement. */
    public static void add(List<String> fields, RequirementFigure figure) {
        fields.add(CsvLine.word(Optional.of(figure.verdict())));
        fields.add(CsvLine.number(figure.value()));
        fields.add(CsvLine.number(figure.standardError()));
        fields.add(CsvLine.number(figure.lower()));
        fields.add(CsvLine.number(figure.upper()));
        fields.add(CsvLine.number(figure.limit()));
        fields.add(CsvLine.number(figure.margin()));
        fields.add(CsvLine.answer(figure.marginAtLeast()));
        fields.add(Wording.oneLine(figure.worst()));
    }

    /**
     * Reads the fields of a requirement, all of them; empty where there is no verdict.
     *
     * @param requirement its name
     * @param fields the fields, of which the next are its own
     */
    public static Optional<RequirementFigure> read(String requirement, Iterator<String> fields) {
        Optional<Verdict> verdict = CsvLine.verdict(fields.next());
        RequirementFigure figure = new RequirementFigure(
                requirement,
                verdict.orElse(Verdict.UNDECIDED),
                CsvLine.number(fields.next()),
                CsvLine.number(fields.next()),
                CsvLine.number(fields.next()),
                CsvLine.number(fields.next()),
                CsvLine.number(fields.next()),
                CsvLine.number(fields.next()),
                CsvLine.answer(fields.next()),
                fields.next(),
                new TreeMap<>());
        return verdict.map(known -> figure);
    }
}
