package darkrim.cli;

import darkrim.present.SweepChart;
import darkrim.present.json.JsonResult;
import darkrim.study.LayoutFamily;
import darkrim.study.UnusableStudy;
import darkrim.study.sweep.SweepJournal;
import darkrim.study.sweep.SweepPoint;
import darkrim.study.sweep.SweepRecord;
import darkrim.study.sweep.SweepResult;
import darkrim.study.sweep.SweepSettings;
import darkrim.study.sweep.SweepTable;
import java.io.IOException;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** The files of a sweep: those that are written whole at its end, and the journal beside the first of them, which is there only until then. */
final class SweepOutputs {
    private record Output(String option, Path path) {}

    private final List<Output> outputs = new ArrayList<>();
    private final Path chart;
    private final SweepSettings settings;
    private final SweepTable table;
    private final List<String> study;
    private boolean overwrite;

    SweepOutputs(Path csv, Path json, Path chart, LayoutFamily family, SweepSettings settings) {
        add("--csv", csv);
        add("--json", json);
        add("--chart", chart);
        this.chart = chart;
        this.settings = settings;
        this.table =
                new SweepTable(settings.design().variations(), family.written().requirements());
        this.study = settings.study(family, Version.number());
    }

    private void add(String option, Path path) {
        if (path != null) {
            outputs.add(new Output(option, path));
        }
    }

    /** The journal; none where no file is written. */
    Optional<Path> journal() {
        return outputs.stream()
                .findFirst()
                .map(first -> first.path().resolveSibling(first.path().getFileName() + ".part"));
    }

    /** Whether all files can be written; says why if not. What an earlier run of this very study was about to finish may be replaced. */
    boolean areUsable(LayoutOptions options, PrintWriter errors) throws UnusableStudy {
        overwrite = options.overwrite()
                || journal().filter(file -> SweepJournal.exists(file, study)).isPresent();
        Set<Path> paths = new HashSet<>();
        for (Output each : outputs) {
            if (!paths.add(each.path().toAbsolutePath().normalize())) {
                throw new UnusableStudy("two outputs name the same file " + each.path());
            }
        }
        if (chart != null) {
            SweepChart.check(settings.design(), chart.toString());
        }
        return outputs.stream().allMatch(each -> file(each).isUsable(options.layout(), errors));
    }

    private OutputFile file(Output output) {
        return new OutputFile(output.option(), output.path(), overwrite);
    }

    SweepRecord open() throws UnusableStudy, IOException {
        Optional<Path> journal = journal();
        return journal.isPresent() ? SweepJournal.open(journal.get(), study, table) : SweepRecord.NONE;
    }

    /** Writes all files, then removes the journal; false, said why, if one could not be written: the journal stays then. */
    boolean write(SweepResult result, SweepRecord record, PrintWriter errors) throws IOException {
        for (Output each : outputs) {
            byte[] content = switch (each.option()) {
                case "--csv" -> csv(result).getBytes(StandardCharsets.UTF_8);
                case "--json" -> JsonResult.of(result, Version.number()).getBytes(StandardCharsets.UTF_8);
                default -> new SweepChart(result, Version.number()).content(chart.toString());
            };
            if (!file(each).write(content, errors)) {
                return false;
            }
        }
        if (record instanceof SweepJournal journal) {
            journal.remove();
        }
        return true;
    }

    private String csv(SweepResult result) {
        StringBuilder text = new StringBuilder(table.header());
        for (SweepPoint point : result.points()) {
            text.append(table.line(point));
        }
        return text.toString();
    }
}
