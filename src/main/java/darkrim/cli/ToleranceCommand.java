package darkrim.cli;

import darkrim.diagnostic.UnusableInput;
import darkrim.present.BuildsCsv;
import darkrim.present.Figures;
import darkrim.present.ToleranceChart;
import darkrim.present.ToleranceReport;
import darkrim.present.json.JsonResult;
import darkrim.study.Effort;
import darkrim.study.LayoutFamily;
import darkrim.study.PointWorkers;
import darkrim.study.UnusableStudy;
import darkrim.study.WorkersLost;
import darkrim.study.journal.StudyRecord;
import darkrim.study.tolerance.LookTable;
import darkrim.study.tolerance.Looked;
import darkrim.study.tolerance.ToleranceResult;
import darkrim.study.tolerance.ToleranceSettings;
import darkrim.study.tolerance.ToleranceStudy;
import darkrim.verdict.Plan;
import darkrim.verdict.Watch;
import java.io.IOException;
import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** {@code darkrim tolerance}: how many builds pass. */
@Command(
        name = "tolerance",
        description =
                "Says what the tolerances in a layout do to its requirements: the worst case, the root sum square, and how"
                        + " many of many sampled builds pass.",
        mixinStandardHelpOptions = true,
        versionProvider = Version.class,
        sortOptions = false,
        footerHeading = "%nExample:%n",
        footer = {
            "  java -jar target/darkrim.jar tolerance geometries/nightglow-b.yaml --builds 20",
            "",
            "Exit codes:",
            "  0  the yield is proved to be as wanted; without --yield: every worst case",
            "     passes",
            "  1  the yield is proved to be less; without --yield: a worst case, or a build",
            "     within the tolerances, fails",
            "  2  the layout, an option or an output cannot be used; standard error says why",
            "  3  neither is decided, or the work was stopped before it was",
            "  4  the program broke; standard error says what to report",
            "A study that is interrupted, even by a power cut, leaves FILE.part beside its",
            "first output file; the same command then goes on from there and ends with the",
            "same bytes. Ctrl-C shows the builds that are finished."
        })
final class ToleranceCommand implements Callable<Integer>, LayoutCommand {
    private final Surroundings surroundings;

    @Mixin
    private WorkersOption where;

    @Option(
            names = "--builds",
            paramLabel = "N",
            order = -6,
            converter = WholeNumber.Builds.class,
            description = "How many builds to sample; default: 200.")
    private Long builds;

    @Option(
            names = "--yield",
            paramLabel = "SHARE",
            order = -5,
            converter = Share.class,
            description =
                    "Share of builds that must pass, such as 0.99; also looks for the loosest tolerances that keep it.")
    private Double yield;

    @Option(
            names = "--build-margins",
            order = -4,
            description = "Also measure the margins of every build, which takes about twice as long.")
    private boolean margins;

    @Option(
            names = "--json",
            paramLabel = "FILE",
            order = -3,
            description = "Also write the result into this file, without the single builds.")
    private Path json;

    @Option(
            names = "--csv",
            paramLabel = "FILE",
            order = -2,
            description = "Also write the builds into this file, a line each.")
    private Path csv;

    @Option(
            names = "--chart",
            paramLabel = "FILE",
            order = -1,
            description = "Also draw margins and contributors into this file (.svg or .png).")
    private Path chart;

    @Mixin
    private LayoutOptions options;

    ToleranceCommand(Surroundings surroundings) {
        this.surroundings = surroundings;
    }

    @Override
    public Integer call() {
        StudyAttempt attempt = this::run;
        return attempt.code(surroundings.errors());
    }

    private int run() throws UnusableInput, UnusableStudy, WorkersLost, IOException {
        LayoutFamily family = LayoutFamily.of(options.layout()).shaped(options.effort());
        ToleranceSettings settings = settings();
        if (chart != null) {
            ToleranceChart.check(chart.toString());
        }
        LookTable table = ToleranceStudy.table(family);
        StudyOutputs<ToleranceResult> outputs = new StudyOutputs<>(settings.study(family, Version.number()));
        outputs.addText("--json", json, result -> JsonResult.of(result, Version.number()));
        outputs.addText("--csv", csv, result -> BuildsCsv.of(result));
        outputs.add("--chart", chart, result -> new ToleranceChart(result, Version.number()).content(chart.toString()));
        if (!outputs.areUsable(options, surroundings.errors())) {
            return ExitCode.UNUSABLE;
        }
        try (StudyRecord<Looked> record = outputs.open(table)) {
            CountedRecord<Looked> counted = new CountedRecord<>(record);
            ToleranceResult result = studied(family, settings, counted);
            ToleranceReport report = new ToleranceReport(Version.number(), surroundings.ink());
            surroundings.show(result.drawn().warnings(), report.of(result));
            if (result.stopped()) {
                outputs.tellOfStop(Figures.counted(counted.count(), "look"), surroundings.errors());
                return ExitCode.of(result.verdict());
            }
            return outputs.write(result, record, surroundings.errors())
                    ? ExitCode.of(result.verdict())
                    : ExitCode.UNUSABLE;
        }
    }

    private ToleranceResult studied(LayoutFamily family, ToleranceSettings settings, StudyRecord<Looked> record)
            throws WorkersLost, UnusableInput, IOException {
        Watch watch = surroundings.watch().get();
        try (PointWorkers workers = where.open(options.effort().threads())) {
            return ToleranceStudy.of(family, settings, workers, record, watch);
        } finally {
            if (watch instanceof Progress progress) {
                progress.close();
            }
        }
    }

    private ToleranceSettings settings() {
        Effort effort = options.effort();
        return new ToleranceSettings(
                builds == null ? ToleranceSettings.BUILDS : Math.toIntExact(builds),
                Optional.ofNullable(yield),
                margins,
                effort.seed(),
                effort.mostSamples().map(Plan::batchesOf).orElse(ToleranceSettings.BATCHES));
    }

    @Override
    public LayoutOptions options() {
        return options;
    }
}
