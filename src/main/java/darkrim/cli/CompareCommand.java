package darkrim.cli;

import darkrim.diagnostic.UnusableInput;
import darkrim.present.ComparisonReport;
import darkrim.present.json.JsonResult;
import darkrim.present.table.CheckTables;
import darkrim.study.comparison.Comparison;
import darkrim.study.comparison.ComparisonStudy;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code darkrim compare}: what a revision did. */
@Command(
        name = "compare",
        description =
                "Checks two layouts with the same random numbers and says what differs: dimensions, finishes, parts"
                        + " and surfaces, verdicts and margins, and light paths that are new, gone, stronger or weaker.",
        mixinStandardHelpOptions = true,
        versionProvider = Version.class,
        sortOptions = false,
        footerHeading = "%nExample:%n",
        footer = {
            "  java -jar target/darkrim.jar compare geometries/nightglow-a.yaml \\",
            "      geometries/nightglow-b.yaml",
            "",
            "The first layout is the one before, the second the one after.",
            "",
            "Exit codes:",
            "  0  the second layout is not worse",
            "  1  it is worse: a requirement fails that did not, or fails by more",
            "  2  a layout, an option or an output cannot be used; standard error says why",
            "  3  cannot tell: a requirement is open, no longer asked or asks something else,",
            "     or the work was stopped",
            "  4  the program broke; standard error says what to report"
        })
final class CompareCommand implements Callable<Integer>, LayoutCommand {
    private final Surroundings surroundings;

    @Option(
            names = "--json",
            paramLabel = "FILE",
            order = -1,
            description = "Also write the whole comparison into this file.")
    private Path json;

    @Option(
            names = "--csv",
            paramLabel = "FILE",
            order = -1,
            description = "Also write requirements and dimensions into this file as comma-separated values.")
    private Path csv;

    @Mixin
    private LayoutOptions options;

    @Parameters(paramLabel = "OTHER", index = "1", arity = "1", description = "The layout file to compare it with.")
    private Path other;

    CompareCommand(Surroundings surroundings) {
        this.surroundings = surroundings;
    }

    @Override
    public Integer call() {
        String version = Version.number();
        StudyOutputs<Comparison> outputs = new StudyOutputs<>();
        outputs.addText("--json", json, found -> JsonResult.of(found, version));
        outputs.addText(
                "--csv", csv, found -> CheckTables.comparison(found, version).csv());
        if (!outputs.areUsable(options, surroundings.errors(), other)) {
            return ExitCode.UNUSABLE;
        }
        Comparison comparison;
        try {
            comparison =
                    surroundings.watched(watch -> ComparisonStudy.of(options.layout(), other, options.effort(), watch));
        } catch (UnusableInput unusable) {
            return Refusal.of(unusable.findings(), surroundings.errors());
        }
        comparison.before().warnings().forEach(surroundings.errors()::println);
        String report = new ComparisonReport(version, surroundings.ink(), options.verbose()).of(comparison);
        surroundings.show(comparison.after().warnings(), report);
        if (!outputs.write(comparison, surroundings.errors())) {
            return ExitCode.UNUSABLE;
        }
        return switch (comparison.judgement()) {
            case NOT_WORSE -> ExitCode.DONE;
            case WORSE -> ExitCode.FAIL;
            case CANNOT_TELL -> ExitCode.UNDECIDED;
        };
    }

    @Override
    public LayoutOptions options() {
        return options;
    }
}
