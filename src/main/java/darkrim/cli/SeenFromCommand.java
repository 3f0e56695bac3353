package darkrim.cli;

import darkrim.diagnostic.UnusableInput;
import darkrim.present.PointReport;
import darkrim.present.PupilDrawing;
import darkrim.present.table.PointTable;
import darkrim.study.NoSuchPoint;
import darkrim.study.PointSight;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

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
            "Put the point in single quotes: names of surfaces hold brackets, which a shell",
            "takes for a pattern.",
            "",
            "The rectangle across which u and v run has its sides along the longest straight",
            "side of the surface (along the axes for a disc). u runs along +x, on surfaces",
            "that face along x along +y; v along +y, on upright surfaces along +z. A curved",
            "surface is refused.",
            "",
            "Exit codes:",
            "  0  done",
            "  2  the layout, the point, an option or an output cannot be used; standard",
            "     error says why",
            "  3  the work was stopped; what was sampled until then is shown",
            "  4  the program broke; standard error says what to report"
        })
final class SeenFromCommand implements Callable<Integer>, LayoutCommand {
    private final Surroundings surroundings;

    @Option(
            names = "--at",
            paramLabel = "SURFACE[:u,v]",
            order = -3,
            required = true,
            converter = PointOption.Reader.class,
            description = "The point: full name of a surface and, from 0 to 1, shares of the way across the rectangle"
                    + " around it; default: 0.5,0.5, the middle.")
    private PointOption at;

    @Option(
            names = "--svg",
            paramLabel = "FILE",
            order = -2,
            description = "Also draw what the point sees into this file (SVG).")
    private Path svg;

    @Mixin
    private TableOptions tables;

    @Mixin
    private LayoutOptions options;

    SeenFromCommand(Surroundings surroundings) {
        this.surroundings = surroundings;
    }

    @Override
    public Integer call() {
        Optional<OutputFile> output = options.output("--svg", svg);
        List<OutputFile> files = tables.files(output.stream().toList(), options.overwrite());
        if (!OutputFile.areUsable(files, List.of(options.layout()), surroundings.errors())) {
            return ExitCode.UNUSABLE;
        }
        PointSight found;
        try {
            found = surroundings.watched(
                    watch -> PointSight.of(options.layout(), at.surface(), at.u(), at.v(), options.effort(), watch));
        } catch (UnusableInput unusable) {
            return Refusal.of(unusable.findings(), surroundings.errors());
        } catch (NoSuchPoint none) {
            surroundings.errors().println("darkrim: --at: " + none.getMessage() + ".");
            return ExitCode.UNUSABLE;
        }
        PointSight sight = found;
        surroundings.show(sight.warnings(), new PointReport(Version.number()).of(sight));
        if (output.isPresent()
                && !output.get().write(new PupilDrawing(Version.number()).of(sight), surroundings.errors())) {
            return ExitCode.UNUSABLE;
        }
        if (!tables.write(() -> PointTable.of(sight, Version.number()), options.overwrite(), surroundings.errors())) {
            return ExitCode.UNUSABLE;
        }
        return sight.stopped() ? ExitCode.UNDECIDED : ExitCode.DONE;
    }

    @Override
    public LayoutOptions options() {
        return options;
    }
}
