package darkrim.cli;

import darkrim.diagnostic.UnusableInput;
import darkrim.present.TextReport;
import darkrim.present.json.JsonResult;
import darkrim.present.table.CheckTables;
import darkrim.present.table.JunitReport;
import darkrim.study.Check;
import darkrim.study.CheckResult;
import darkrim.study.MarginScope;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** {@code darkrim check}: from a layout file to a verdict. */
@Command(
        name = "check",
        description =
                "Reads a layout file, checks every requirement in it, and says pass, fail or undecided with the evidence.",
        mixinStandardHelpOptions = true,
        versionProvider = Version.class,
        sortOptions = false,
        footerHeading = "%nExample:%n",
        footer = {
            "  java -jar target/darkrim.jar check geometries/nightglow-b.yaml --json b.json",
            "",
            "Exit codes:",
            "  0  every requirement holds",
            "  1  a requirement does not hold",
            "  2  the layout, an option or an output cannot be used; standard error says why",
            "  3  no requirement fails, but at least one is not decided",
            "  4  the program broke; standard error says what to report",
            "Ctrl-C shows what is finished and ends with the code of that."
        })
final class CheckCommand implements Callable<Integer>, LayoutCommand {
    private final Surroundings surroundings;

    @Option(
            names = "--json",
            paramLabel = "FILE",
            order = -2,
            description = "Also write the whole result into this file.")
    private Path json;

    @Option(
            names = "--csv",
            paramLabel = "FILE",
            order = -2,
            description = "Also write a line for each surface of each requirement into this file.")
    private Path csv;

    @Option(
            names = "--junit",
            paramLabel = "FILE",
            order = -2,
            description = "Also write the requirements as a report of tests (JUnit's XML), for build servers.")
    private Path junit;

    @Option(
            names = "--margins",
            paramLabel = "WHICH",
            order = -1,
            converter = CheckCommand.Margins.class,
            defaultValue = "least",
            description =
                    "By how much light keeps clear of what must be dark, mm: least, of each requirement (default); "
                            + "all, of each surface (takes longer); none.")
    private MarginScope margins;

    @Mixin
    private LayoutOptions options;

    CheckCommand(Surroundings surroundings) {
        this.surroundings = surroundings;
    }

    @Override
    public Integer call() {
        StudyOutputs<CheckResult> outputs = new StudyOutputs<>();
        outputs.addText("--json", json, found -> JsonResult.of(found, Version.number()));
        outputs.addText(
                "--csv",
                csv,
                found -> CheckTables.check(found, Version.number()).csv());
        outputs.addText("--junit", junit, found -> JunitReport.of(found, Version.number()));
        if (!outputs.areUsable(options, surroundings.errors())) {
            return ExitCode.UNUSABLE;
        }
        CheckResult result;
        try {
            result = surroundings.watched(watch ->
                    Check.coldAndWarm(options.layout(), options.effort().with(margins), watch));
        } catch (UnusableInput unusable) {
            return Refusal.of(unusable.findings(), surroundings.errors());
        }
        TextReport report = new TextReport(Version.number(), surroundings.ink(), options.verbose());
        surroundings.show(result.warnings(), report.of(result));
        return outputs.write(result, surroundings.errors())
                ? ExitCode.of(result.judgement().verdict())
                : ExitCode.UNUSABLE;
    }

    @Override
    public LayoutOptions options() {
        return options;
    }

    /** Reads which margins to look for. */
    static final class Margins extends Choice<MarginScope> {
        Margins() {
            super(List.of("least", "all", "none"), List.of(MarginScope.LEAST, MarginScope.ALL, MarginScope.NONE));
        }
    }
}
