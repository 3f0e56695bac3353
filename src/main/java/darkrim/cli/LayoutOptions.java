package darkrim.cli;

import darkrim.study.Effort;
import java.nio.file.Path;
import java.util.Optional;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** What commands that work on one layout can be told; {@link SharedOptions} fits it to each. */
final class LayoutOptions {
    @Parameters(paramLabel = "LAYOUT", index = "0", arity = "1", description = "The layout file (YAML).")
    private Path layout;

    @Option(names = "--overwrite", description = "Replace the output file if there is one.")
    private boolean overwrite;

    @Option(
            names = "--seed",
            paramLabel = "N",
            converter = WholeNumber.Seed.class,
            description = "Seed of the random numbers instead of the layout's.")
    private Long seed;

    @Option(
            names = "--samples",
            paramLabel = "N",
            converter = SampleCount.class,
            description = "Samples at most, such as 2e8.")
    private Long samples;

    @Option(
            names = "--threads",
            paramLabel = "N",
            converter = WholeNumber.Threads.class,
            description = "Threads to work with; default: every core. Never changes a result.")
    private Long threads;

    @Option(
            names = "--warm",
            description = "Look at a layout that has a cool-down in its shape as drawn; default: its cold shape.")
    private boolean warm;

    @Option(
            names = {"-v", "--verbose"},
            description = "Show the long lists of a check whole, and details if the program breaks.")
    private boolean verbose;

    /** For a command that is told nothing else. */
    static LayoutOptions of(Path layout, boolean verbose) {
        LayoutOptions options = new LayoutOptions();
        options.layout = layout;
        options.verbose = verbose;
        return options;
    }

    /** The layout file. */
    Path layout() {
        return layout;
    }

    /** Whether output files may be replaced. */
    boolean overwrite() {
        return overwrite;
    }

    /** Whether more is shown. */
    boolean verbose() {
        return verbose;
    }

    /** How hard to work. */
    Effort effort() {
        int count = threads != null
                ? Math.toIntExact(threads)
                : Runtime.getRuntime().availableProcessors();
        return new Effort(count, Optional.ofNullable(seed), Optional.ofNullable(samples)).warm(warm);
    }

    /** The file that an option names, if it was given. */
    Optional<OutputFile> output(String option, Path path) {
        return Optional.ofNullable(path).map(file -> new OutputFile(option, file, overwrite));
    }
}
