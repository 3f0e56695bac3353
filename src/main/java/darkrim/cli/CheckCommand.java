package darkrim.cli;

import darkrim.diagnostic.UnusableInput;
import darkrim.present.TextReport;
import darkrim.present.json.JsonResult;
import darkrim.study.Check;
import darkrim.study.CheckResult;
import darkrim.study.Effort;
import darkrim.study.MarginScope;
import darkrim.verdict.Watch;
import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

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
            "  2  the layout, an option or the output file cannot be used; standard error says why",
            "  3  no requirement fails, but at least one is not decided",
            "  4  the program broke; standard error says what to report",
            "Ctrl-C shows what is finished and ends with the code of that."
        })
final class CheckCommand implements Callable<Integer>, LayoutCommand {
    private static final int MOST_THREADS = 1024;

    private final Surroundings surroundings;

    @Spec
    private CommandSpec spec;

    @Parameters(paramLabel = "LAYOUT", arity = "1", description = "The layout file (YAML).")
    private Path layout;

    @Option(names = "--json", paramLabel = "FILE", description = "Also write the whole result into this file.")
    private Path json;

    @Option(names = "--overwrite", description = "Replace the output file if there is one.")
    private boolean overwrite;

    @Option(names = "--seed", paramLabel = "N", description = "Seed of the random numbers instead of the layout's.")
    private Long seed;

    @Option(
            names = "--samples",
            paramLabel = "N",
            converter = SampleCount.class,
            description = "Samples at most, such as 2e8, instead of the layout's.")
    private Long samples;

    @Option(
            names = "--threads",
            paramLabel = "N",
            description = "Threads to work with; default: every core. Never changes a result.")
    private Integer threads;

    @Option(
            names = "--margins",
            paramLabel = "WHICH",
            converter = MarginChoice.class,
            defaultValue = "least",
            description = {
                "By how much light keeps clear of what must be dark: least, of each requirement (default); all, of each "
                        + "surface (takes longer); none."
            })
    private MarginScope margins;

    @Option(
            names = {"-v", "--verbose"},
            description = "Show long lists whole, and details if the program breaks.")
    private boolean verbose;

    CheckCommand(Surroundings surroundings) {
        this.surroundings = surroundings;
    }

    @Override
    public Integer call() {
        Effort effort = effort();
        Optional<OutputFile> output = Optional.ofNullable(json).map(path -> new OutputFile(path, overwrite));
        Optional<String> problem = output.flatMap(file -> file.problem(layout));
        if (problem.isPresent()) {
            surroundings.errors().println("darkrim: --json " + json + ": " + problem.get() + "; nothing was checked.");
            return ExitCode.UNUSABLE;
        }
        CheckResult result;
        try {
            result = check(effort);
        } catch (UnusableInput unusable) {
            return Refusal.of(unusable.findings(), surroundings.errors());
        }
        result.warnings().forEach(surroundings.errors()::println);
        surroundings.errors().flush();
        TextReport report = new TextReport(Version.number(), surroundings.ink(), verbose);
        surroundings.output().print(report.of(result));
        surroundings.output().flush();
        if (output.isPresent()
                && !output.get().write(JsonResult.of(result, Version.number()), "--json", surroundings.errors())) {
            return ExitCode.UNUSABLE;
        }
        return ExitCode.of(result.judgement().verdict());
    }

    private Effort effort() {
        if (threads != null && (threads < 1 || threads > MOST_THREADS)) {
            throw new ParameterException(
                    spec.commandLine(), "--threads " + threads + ": expected a number from 1 to " + MOST_THREADS);
        }
        int count = threads != null ? threads : Runtime.getRuntime().availableProcessors();
        return new Effort(count, Optional.ofNullable(seed), Optional.ofNullable(samples), margins);
    }

    private CheckResult check(Effort effort) throws UnusableInput {
        Watch watch = surroundings.watch().get();
        try {
            return Check.of(layout, effort, watch);
        } finally {
            if (watch instanceof Progress progress) {
                progress.close();
            }
        }
    }

    @Override
    public String input() {
        return String.valueOf(layout);
    }

    @Override
    public boolean verbose() {
        return verbose;
    }
}
