package darkrim.study.tolerance;

import darkrim.layout.Requirement;
import darkrim.layout.form.Wording;
import darkrim.study.MarginUnit;
import darkrim.study.RequirementMargin;
import darkrim.study.journal.CsvLine;
import darkrim.verdict.Verdict;
import java.util.Iterator;
import java.util.List;
import java.util.Optional;

/** The margin of one requirement as columns of a table. */
final class MarginColumns {
    /** Number of columns. */
    static final int COUNT = 6;

    private MarginColumns() {}

    static void addNames(List<String> names, String requirement) {
        names.add(requirement + " margin judged");
        names.add(requirement + " margin found");
        names.add(requirement + " margin standard error");
        names.add(requirement + " margin capped");
        names.add(requirement + " margin at");
        names.add(requirement + " margin set by");
    }

    static void add(List<String> fields, RequirementMargin margin) {
        fields.add(CsvLine.word(margin.verdict()));
        fields.add(CsvLine.number(margin.margin()));
        fields.add(CsvLine.number(margin.standardError()));
        fields.add(CsvLine.answer(margin.capped()));
        fields.add(Wording.oneLine(margin.where()));
        fields.add(Wording.oneLine(margin.setBy()));
    }

    /** Reads the fields of a requirement, all of them; empty where no margin was looked for. */
    static Optional<RequirementMargin> read(Requirement requirement, String impossible, Iterator<String> fields) {
        Optional<Verdict> verdict = CsvLine.verdict(fields.next());
        double value = CsvLine.number(fields.next());
        double standardError = CsvLine.number(fields.next());
        String capped = fields.next();
        RequirementMargin margin = new RequirementMargin(
                requirement.name(),
                verdict,
                value,
                standardError,
                MarginUnit.of(requirement),
                CsvLine.answer(capped),
                fields.next(),
                fields.next(),
                impossible);
        return capped.isEmpty() ? Optional.empty() : Optional.of(margin);
    }
}
