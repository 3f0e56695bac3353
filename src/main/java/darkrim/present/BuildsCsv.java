package darkrim.present;

import darkrim.layout.Requirement;
import darkrim.study.MarginUnit;
import darkrim.study.RequirementFigure;
import darkrim.study.RequirementMargin;
import darkrim.study.journal.CsvLine;
import darkrim.study.journal.FigureColumns;
import darkrim.study.sweep.SweepTable;
import darkrim.study.tolerance.Build;
import darkrim.study.tolerance.Contributor;
import darkrim.study.tolerance.ToleranceResult;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * Sampled builds as comma-separated values ({@link CsvLine}): a line each with the deviations, the verdicts and, where
 * they were measured, the margins. An empty cell is a number that is not known;
 * where a bound alone is proved, there is no value, and the margin is said to be at least or at most what stands there.
 */
public final class BuildsCsv {
    private BuildsCsv() {}

    /** All builds, with a header that names the units. */
    public static String of(ToleranceResult result) {
        StringBuilder text = new StringBuilder();
        List<Requirement> requirements = result.drawn().layout().requirements();
        text.append(CsvLine.of(header(result, requirements)));
        for (Build build : result.builds()) {
            text.append(CsvLine.of(cells(result, build, requirements)));
        }
        return text.toString();
    }

    private static List<String> header(ToleranceResult result, List<Requirement> requirements) {
        List<String> cells = new ArrayList<>(List.of("build", "verdict"));
        for (Contributor each : result.contributors()) {
            cells.add(each.name() + " deviation" + FigureColumns.bracketed(each.unit()));
        }
        for (Requirement each : requirements) {
            cells.add(each.name());
            String unit = FigureColumns.bracketed(SweepTable.unit(each));
            cells.add(each.name() + " value" + unit);
            cells.add(each.name() + " at least" + unit);
            cells.add(each.name() + " at most" + unit);
            if (result.settings().withMargins()) {
                cells.add(each.name() + " margin" + FigureColumns.bracketed(SweepTable.marginUnit(each)));
                cells.add(each.name() + " margin is");
            }
        }
        cells.add("cannot be built because");
        cells.add("warnings");
        return cells;
    }

    private static List<String> cells(ToleranceResult result, Build build, List<Requirement> requirements) {
        List<String> cells = new ArrayList<>();
        cells.add(String.valueOf(build.number()));
        cells.add(build.result().verdict().map(BuildsCsv::word).orElse("impossible"));
        build.deviations().forEach(deviation -> cells.add(number(deviation)));
        for (int i = 0; i < requirements.size(); i++) {
            Optional<RequirementFigure> figure =
                    build.result().figure(requirements.get(i).name());
            cells.add(
                    figure.map(RequirementFigure::verdict).map(BuildsCsv::word).orElse(""));
            cells.add(figure.map(found -> number(found.value())).orElse(""));
            cells.add(figure.map(found -> number(found.lower())).orElse(""));
            cells.add(figure.map(found -> number(found.upper())).orElse(""));
            if (result.settings().withMargins()) {
                RequirementMargin margin = build.margins().get(i);
                cells.add(number(margin.margin()));
                cells.add(kind(margin, figure));
            }
        }
        cells.add(build.result().impossible());
        cells.add(build.result().warnings());
        return cells;
    }

    /** How a margin is known; empty where it is not. */
    private static String kind(RequirementMargin margin, Optional<RequirementFigure> figure) {
        if (!Double.isFinite(margin.margin())) {
            return "";
        }
        if (margin.isBound()) {
            return margin.margin() < 0 ? "at most" : "at least";
        }
        // Samples of which none met light have no spread, and yet leave room for some.
        boolean ofRange = margin.unit() == MarginUnit.RELATIVE_IRRADIANCE
                && figure.filter(found -> found.lower() < found.upper()).isPresent();
        return margin.standardError() > 0 || ofRange ? "sampled" : "exact";
    }

    private static String word(Enum<?> verdict) {
        return verdict.name().toLowerCase(Locale.ROOT);
    }

    private static String number(double value) {
        return Double.isFinite(value) ? String.valueOf(value) : "";
    }
}
