package darkrim.cli;

import darkrim.diagnostic.UnusableInput;
import darkrim.present.PathReport;
import darkrim.present.PathsCsv;
import darkrim.present.json.JsonResult;
import darkrim.scene.Surface;
import darkrim.study.UnusableStudy;
import darkrim.study.path.PathResult;
import darkrim.study.path.PathSettings;
import darkrim.study.path.PathStudy;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** {@code darkrim paths}: by which surfaces reflected light comes. */
@Command(
        name = "paths",
        description =
                "Lists the ways of light onto surfaces: by which surfaces it is reflected, in turn, how much each way"
                        + " brings, where it is brightest, at what angles it strikes, and a line to draw.",
        mixinStandardHelpOptions = true,
        versionProvider = Version.class,
        sortOptions = false,
        footerHeading = "%nExample:%n",
        footer = {
            "  java -jar target/darkrim.jar paths geometries/nightglow-b.yaml \\",
            "      --onto 'mosaic/die[1,2]/active' --reflections 2 --csv paths.csv",
            "",
            "Put patterns in single quotes: names of surfaces hold brackets, which a shell",
            "takes for a pattern. Nothing is judged here, and a way that no sample met is not",
            "listed.",
            "",
            "Exit codes:",
            "  0  done",
            "  2  the layout, an option or an output cannot be used; standard error says why",
            "  3  the work was stopped; what was finished until then is shown, no file is",
            "     written",
            "  4  the program broke; standard error says what to report"
        })
final class PathsCommand implements Callable<Integer>, LayoutCommand {
    private final Surroundings surroundings;

    @Option(
            names = "--onto",
            paramLabel = "PATTERN",
            order = -6,
            description = "Surfaces that receive the light, such as 'mosaic/**/active'; may be repeated."
                    + " Default: those on which a requirement limits once-reflected light.")
    private List<String> onto = List.of();

    @Option(
            names = "--reflections",
            paramLabel = "N",
            order = -5,
            converter = WholeNumber.Reflections.class,
            description = "Follow light through up to so many reflections, 1 to 8; default: 1.")
    private Long reflections = 1L;

    @Option(
            names = "--top",
            paramLabel = "K",
            order = -4,
            converter = WholeNumber.Lines.class,
            description = "Describe the K strongest paths of each number of reflections; default: 5.")
    private Long top = 5L;

    @Option(
            names = "--json",
            paramLabel = "FILE",
            order = -3,
            description = "Also write the whole result into this file.")
    private Path json;

    @Option(
            names = "--csv",
            paramLabel = "FILE",
            order = -2,
            description = "Also write the paths into this file, a line each.")
    private Path csv;

    @Mixin
    private LayoutOptions options;

    PathsCommand(Surroundings surroundings) {
        this.surroundings = surroundings;
    }

    @Override
    public Integer call() {
        StudyAttempt attempt = this::run;
        return attempt.code(surroundings.errors());
    }

    private int run() throws UnusableInput, UnusableStudy {
        StudyOutputs<PathResult> outputs = new StudyOutputs<>();
        outputs.addText("--json", json, found -> JsonResult.of(found, Version.number()));
        outputs.addText("--csv", csv, PathsCsv::of);
        if (!outputs.areUsable(options, surroundings.errors())) {
            return ExitCode.UNUSABLE;
        }
        PathSettings settings = new PathSettings(Math.toIntExact(reflections), Math.toIntExact(top));
        PathResult result = surroundings.<PathResult, UnusableStudy>watched(watch -> {
            PathStudy study = PathStudy.of(options.layout(), options.effort(), watch);
            return study.run(receivers(study), settings, options.effort(), watch);
        });
        surroundings.show(result.warnings(), new PathReport(Version.number()).of(result));
        if (result.stopped()) {
            return ExitCode.UNDECIDED;
        }
        return outputs.write(result, surroundings.errors()) ? ExitCode.DONE : ExitCode.UNUSABLE;
    }

    private List<Surface> receivers(PathStudy study) throws UnusableStudy {
        if (onto.isEmpty()) {
            List<Surface> limited = study.limited();
            if (limited.isEmpty()) {
                throw new UnusableStudy(
                        "--onto is missing, and no requirement of the layout limits once-reflected light;"
                                + " expected a pattern such as 'mosaic/**/active'");
            }
            return limited;
        }
        SurfacePatterns patterns = new SurfacePatterns("--onto", onto);
        Optional<String> problem = patterns.problem(study.scene());
        if (problem.isPresent()) {
            throw new UnusableStudy(problem.get());
        }
        return study.scene().surfaces().stream()
                .filter(surface -> patterns.selects(surface.name()))
                .toList();
    }

    @Override
    public LayoutOptions options() {
        return options;
    }
}
