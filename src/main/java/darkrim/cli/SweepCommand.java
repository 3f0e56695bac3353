package darkrim.cli;

import darkrim.diagnostic.UnusableInput;
import darkrim.present.Figures;
import darkrim.present.SweepChart;
import darkrim.present.SweepReport;
import darkrim.present.json.JsonResult;
import darkrim.study.LayoutFamily;
import darkrim.study.MarginScope;
import darkrim.study.PointSettings;
import darkrim.study.PointWorkers;
import darkrim.study.UnusableStudy;
import darkrim.study.WorkersLost;
import darkrim.study.journal.StudyRecord;
import darkrim.study.sweep.Design;
import darkrim.study.sweep.SweepPoint;
import darkrim.study.sweep.SweepResult;
import darkrim.study.sweep.SweepSettings;
import darkrim.study.sweep.SweepStudy;
import darkrim.study.sweep.SweepTable;
import darkrim.study.sweep.Variation;
import darkrim.study.sweep.VariationReader;
import darkrim.verdict.Plan;
import darkrim.verdict.Watch;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** {@code darkrim sweep}: what happens when dimensions change. */
@Command(
        name = "sweep",
        description =
                "Checks a layout at many values of named dimensions, and says where each requirement changes sides.",
        mixinStandardHelpOptions = true,
        versionProvider = Version.class,
        sortOptions = false,
        footerHeading = "%nExample:%n",
        footer = {
            "  java -jar target/darkrim.jar sweep geometries/nightglow-b.yaml \\",
            "      --vary 'opening = 36.6 to 38.2 step 0.4' --csv opening.csv \\",
            "      --chart opening.svg",
            "",
            "Several --vary check every combination. Numbers without a unit are in the units",
            "of the layout. A sweep that is interrupted, even by a power cut, leaves",
            "FILE.part beside its first output file; the same command then goes on from there",
            "and ends with the same bytes.",
            "",
            "Exit codes:",
            "  0  every point was checked; this is no verdict: points may fail",
            "  2  the layout, an option or an output cannot be used; standard error says why",
            "  3  the work was stopped before the end; what is finished is shown",
            "  4  the program broke; standard error says what to report"
        })
final class SweepCommand implements Callable<Integer>, LayoutCommand {
    /** Batches of each number where nothing else is asked for. */
    static final int BATCHES = 32;

    private final Surroundings surroundings;

    @Mixin
    private WorkersOption where;

    @Option(
            names = "--vary",
            paramLabel = "\"NAME = ...\"",
            order = -9,
            required = true,
            description = "What a dimension is to be: 'NAME = A to B step S', 'NAME = A, B, C' or, with --spread,"
                    + " 'NAME = A to B'.")
    private List<String> vary;

    @Option(
            names = "--spread",
            paramLabel = "N",
            order = -8,
            converter = WholeNumber.Points.class,
            description = "Spread N points evenly over the ranges instead of a grid.")
    private Long spread;

    @Option(
            names = "--refine",
            paramLabel = "WIDTH",
            order = -7,
            description =
                    "Halve the steps in which a requirement changes sides until they are no wider than this, in the unit of the"
                            + " dimension.")
    private String refine;

    @Option(
            names = "--margins",
            paramLabel = "WHICH",
            order = -6,
            converter = SweepCommand.Margins.class,
            description = "Margins of direct light in mm: least, of each requirement (default); none, which is several"
                    + " times as fast.")
    private MarginScope margins = MarginScope.REQUIREMENTS;

    @Option(names = "--many-points", order = -5, description = "Allow more than 10,000 points.")
    private boolean many;

    @Option(
            names = "--csv",
            paramLabel = "FILE",
            order = -4,
            description = "Also write the points into this file, a line each.")
    private Path csv;

    @Option(
            names = "--json",
            paramLabel = "FILE",
            order = -3,
            description = "Also write the whole study into this file.")
    private Path json;

    @Option(
            names = "--chart",
            paramLabel = "FILE",
            order = -2,
            description = "Also draw values and margins into this file (.svg or .png).")
    private Path chart;

    @Mixin
    private LayoutOptions options;

    SweepCommand(Surroundings surroundings) {
        this.surroundings = surroundings;
    }

    @Override
    public Integer call() {
        StudyAttempt attempt = this::run;
        return attempt.code(surroundings.errors());
    }

    private int run() throws UnusableInput, UnusableStudy, WorkersLost, IOException {
        LayoutFamily family = LayoutFamily.of(options.layout()).shaped(options.effort());
        SweepSettings settings = settings(family);
        if (chart != null) {
            SweepChart.check(settings.design(), chart.toString());
        }
        SweepTable table =
                new SweepTable(settings.design().variations(), family.written().requirements());
        StudyOutputs<SweepResult> outputs = new StudyOutputs<>(settings.study(family, Version.number()));
        outputs.addText("--csv", csv, result -> table.of(result.points()));
        outputs.addText("--json", json, result -> JsonResult.of(result, Version.number()));
        outputs.add("--chart", chart, result -> new SweepChart(result, Version.number()).content(chart.toString()));
        if (!outputs.areUsable(options, surroundings.errors())) {
            return ExitCode.UNUSABLE;
        }
        try (StudyRecord<SweepPoint> record = outputs.open(table)) {
            SweepResult result = swept(new SweepStudy(family, settings), record);
            surroundings.show(result.warnings(), new SweepReport(Version.number(), surroundings.ink()).of(result));
            if (result.stopped()) {
                outputs.tellOfStop(Figures.counted(result.points().size(), "point"), surroundings.errors());
                return ExitCode.UNDECIDED;
            }
            return outputs.write(result, record, surroundings.errors()) ? ExitCode.DONE : ExitCode.UNUSABLE;
        }
    }

    private SweepResult swept(SweepStudy study, StudyRecord<SweepPoint> record)
            throws WorkersLost, UnusableStudy, UnusableInput, IOException {
        Watch watch = surroundings.watch().get();
        try (PointWorkers workers = where.open(options.effort().threads())) {
            return study.run(workers, record, watch);
        } finally {
            if (watch instanceof Progress progress) {
                progress.close();
            }
        }
    }

    private SweepSettings settings(LayoutFamily family) throws UnusableStudy {
        VariationReader reader = new VariationReader(family);
        List<Variation> variations = new ArrayList<>();
        for (String each : vary) {
            variations.add(reader.read(each));
        }
        Optional<Double> width = refine == null
                ? Optional.empty()
                : Optional.of(reader.width(variations.get(0).dimension(), refine));
        Design design = new Design(variations, Optional.ofNullable(spread).map(Math::toIntExact), width);
        design.check(many);
        int batches = options.effort().mostSamples().map(Plan::batchesOf).orElse(BATCHES);
        return new SweepSettings(
                design,
                options.effort().seed(),
                PointSettings.values(Math.max(SweepSettings.LEAST_BATCHES, batches), margins));
    }

    @Override
    public LayoutOptions options() {
        return options;
    }

    /** Reads which margins to look for. */
    static final class Margins extends Choice<MarginScope> {
        Margins() {
            super(List.of("least", "none"), List.of(MarginScope.REQUIREMENTS, MarginScope.NONE));
        }
    }
}
