package darkrim.cli;

import darkrim.diagnostic.UnusableInput;
import darkrim.present.PointReport;
import darkrim.present.PupilDrawing;
import darkrim.study.Effort;
import darkrim.study.NoSuchPoint;
import darkrim.study.PointSight;
import darkrim.verdict.Watch;
import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code darkrim seen-from}: what one point sees of the pupil. */
@Command(
        name = "seen-from",
        description =
                "Says what one point of a surface sees of the pupil, exact and sampled side by side, and what hides"
                        + " the rest.",
        mixinStandardHelpOptions = true,
        versionProvider = Version.class,
        sortOptions = false,
        footerHeading = "%nExample:%n",
        footer = {
            "  java -jar target/darkrim.jar seen-from geometries/nightglow-b.yaml \\",
            "      --at 'mosaic/die[1,2]/active:0.98,0.5' --svg seen.svg",
            "",
            "Put the point in single quotes: names of surfaces hold brackets, which a shell takes for a pattern.",
            "",
            "The rectangle across which u and v run has its sides along the longest straight side of the",
            "surface (along the axes for a disc). u runs along +x, on surfaces that face along x along +y;",
            "v along +y, on upright surfaces along +z. A curved surface is refused.",
            "",
            "Exit codes:",
            "  0  done",
            "  2  the layout, the point, an option or the output file cannot be used; standard error says why",
            "  3  the work was stopped; what was sampled until then is shown",
            "  4  the program broke; standard error says what to report"
        })
final class SeenFromCommand implements Callable<Integer>, LayoutCommand {
    private final Surroundings surroundings;

    @Parameters(paramLabel = "LAYOUT", arity = "1", description = "The layout file (YAML).")
    private Path layout;

    @Option(
            names = "--at",
            paramLabel = "SURFACE[:u,v]",
            required = true,
            converter = PointOption.Reader.class,
            description = "The point: full name of a surface and, from 0 to 1, shares of the way across the rectangle"
                    + " around it; default 0.5,0.5, the middle.")
    private PointOption at;

    @Option(names = "--svg", paramLabel = "FILE", description = "Also draw what the point sees into this file (SVG).")
    private Path svg;

    @Option(names = "--overwrite", description = "Replace the output file if there is one.")
    private boolean overwrite;

    @Option(
            names = "--samples",
            paramLabel = "N",
            converter = SampleCount.class,
            description = "Samples to take, such as 1e7; default: 1e6.")
    private Long samples;

    @Option(names = "--seed", paramLabel = "N", description = "Seed of the random numbers instead of the layout's.")
    private Long seed;

    @Option(
            names = {"-v", "--verbose"},
            description = "Show details if the program breaks.")
    private boolean verbose;

    SeenFromCommand(Surroundings surroundings) {
        this.surroundings = surroundings;
    }

    @Override
    public Integer call() {
        Optional<OutputFile> output = Optional.ofNullable(svg).map(path -> new OutputFile(path, overwrite));
        Optional<String> problem = output.flatMap(file -> file.problem(layout));
        if (problem.isPresent()) {
            surroundings.errors().println("darkrim: --svg " + svg + ": " + problem.get() + "; nothing was done.");
            return ExitCode.UNUSABLE;
        }
        PointSight sight;
        try {
            sight = look();
        } catch (UnusableInput unusable) {
            return Refusal.of(unusable.findings(), surroundings.errors());
        } catch (NoSuchPoint none) {
            surroundings.errors().println("darkrim: --at: " + none.getMessage() + ".");
            return ExitCode.UNUSABLE;
        }
        sight.warnings().forEach(surroundings.errors()::println);
        surroundings.errors().flush();
        surroundings.output().print(new PointReport(Version.number()).of(sight));
        surroundings.output().flush();
        if (output.isPresent()
                && !output.get().write(new PupilDrawing(Version.number()).of(sight), "--svg", surroundings.errors())) {
            return ExitCode.UNUSABLE;
        }
        return sight.stopped() ? ExitCode.UNDECIDED : ExitCode.DONE;
    }

    private PointSight look() throws UnusableInput, NoSuchPoint {
        Effort effort = new Effort(
                Runtime.getRuntime().availableProcessors(), Optional.ofNullable(seed), Optional.ofNullable(samples));
        Watch watch = surroundings.watch().get();
        try {
            return PointSight.of(layout, at.surface(), at.u(), at.v(), effort, watch);
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
