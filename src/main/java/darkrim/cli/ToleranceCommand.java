package darkrim.cli;

import darkrim.diagnostic.UnusableInput;
import darkrim.present.BuildsCsv;
import darkrim.present.ToleranceReport;
import darkrim.present.json.JsonResult;
import darkrim.study.Effort;
import darkrim.study.LayoutFamily;
import darkrim.study.tolerance.ToleranceResult;
import darkrim.study.tolerance.ToleranceSettings;
import darkrim.study.tolerance.ToleranceStudy;
import darkrim.verdict.Plan;
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
            "  0  the yield is proved to be as wanted; without --yield: every worst case passes",
            "  1  the yield is proved to be less; without --yield: a worst case, or a build within the",
            "     tolerances, fails",
            "  2  the layout, an option or an output cannot be used; standard error says why",
            "  3  neither is decided, or the work was stopped before it was",
            "  4  the program broke; standard error says what to report",
            "Ctrl-C shows the builds that are finished and ends with the code of that."
        })
final class ToleranceCommand implements Callable<Integer>, LayoutCommand {
    private final Surroundings surroundings;

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
            description = "Also measure the margins of every build, which takes several times as long.")
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

    @Mixin
    private LayoutOptions options;

    ToleranceCommand(Surroundings surroundings) {
        this.surroundings = surroundings;
    }

    @Override
    public Integer call() {
        Optional<OutputFile> document = options.output("--json", json);
        Optional<OutputFile> table = options.output("--csv", csv);
        if (!isUsable(document) || !isUsable(table)) {
            return ExitCode.UNUSABLE;
        }
        if (json != null
                && csv != null
                && json.toAbsolutePath().normalize().equals(csv.toAbsolutePath().normalize())) {
            surroundings
                    .errors()
                    .println("darkrim: --json and --csv name the same file, expected two files; nothing was done.");
            return ExitCode.UNUSABLE;
        }
        ToleranceResult result;
        try {
            LayoutFamily family = LayoutFamily.of(options.layout());
            result = surroundings.watched(watch -> ToleranceStudy.of(family, settings(), watch));
        } catch (UnusableInput unusable) {
            return Refusal.of(unusable.findings(), surroundings.errors());
        }
        ToleranceReport report = new ToleranceReport(Version.number(), surroundings.ink());
        surroundings.show(result.drawn().warnings(), report.of(result));
        boolean written = write(document, JsonResult.of(result, Version.number()));
        written &= write(table, BuildsCsv.of(result));
        return written ? ExitCode.of(result.verdict()) : ExitCode.UNUSABLE;
    }

    private ToleranceSettings settings() {
        Effort effort = options.effort();
        return new ToleranceSettings(
                builds == null ? ToleranceSettings.BUILDS : Math.toIntExact(builds),
                Optional.ofNullable(yield),
                margins,
                effort.threads(),
                effort.seed(),
                effort.mostSamples().map(Plan::batchesOf).orElse(ToleranceSettings.BATCHES));
    }

    private boolean isUsable(Optional<OutputFile> output) {
        return output.isEmpty() || output.get().isUsable(options.layout(), surroundings.errors());
    }

    private boolean write(Optional<OutputFile> output, String text) {
        return output.isEmpty() || output.get().write(text, surroundings.errors());
    }

    @Override
    public LayoutOptions options() {
        return options;
    }
}
