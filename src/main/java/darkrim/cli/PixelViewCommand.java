package darkrim.cli;

import darkrim.diagnostic.UnusableInput;
import darkrim.present.PixelCsv;
import darkrim.present.PixelReport;
import darkrim.present.json.JsonResult;
import darkrim.study.NoSuchPoint;
import darkrim.study.PointName;
import darkrim.study.pixel.PixelView;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** {@code darkrim pixel-view}: what pixels see. */
@Command(
        name = "pixel-view",
        description =
                "Says what pixels see: of every surface the projected solid angle, how much of it the beam strikes, and what"
                        + " it sends, as reflected light of the beam and as warm light where the layout states temperatures.",
        mixinStandardHelpOptions = true,
        versionProvider = Version.class,
        sortOptions = false,
        footerHeading = "%nExamples:%n",
        footer = {
            "  java -jar target/darkrim.jar pixel-view geometries/nightglow-b.yaml",
            "  java -jar target/darkrim.jar pixel-view geometries/nightglow-b.yaml \\",
            "      --at 'mosaic/die[1,2]/active:0.98,0.5' --csv seen.csv",
            "",
            "Put the point in single quotes: names of surfaces hold brackets, which a shell",
            "takes for a pattern. 'darkrim draw --seen-from' draws what a point sees.",
            "",
            "Exit codes:",
            "  0  done; this is no verdict",
            "  2  the layout, a point, an option or an output cannot be used; standard error",
            "     says why",
            "  3  the work was stopped; the points looked at until then are shown",
            "  4  the program broke; standard error says what to report"
        })
final class PixelViewCommand implements Callable<Integer>, LayoutCommand {
    private final Surroundings surroundings;

    @Option(
            names = "--at",
            paramLabel = "SURFACE[:u,v]",
            order = -4,
            converter = PointOption.Reader.class,
            description = "A point, as 'darkrim seen-from' takes it; may be repeated. Without any: the middle and"
                    + " the corner pixels of every active area, and the worst pixel that a search finds.")
    private List<PointOption> points = new ArrayList<>();

    @Option(
            names = "--csv",
            paramLabel = "FILE",
            order = -3,
            description = "Also write all that every point sees into this file.")
    private Path csv;

    @Option(names = "--json", paramLabel = "FILE", order = -2, description = "Also write the result as JSON.")
    private Path json;

    @Mixin
    private LayoutOptions options;

    PixelViewCommand(Surroundings surroundings) {
        this.surroundings = surroundings;
    }

    @Override
    public Integer call() {
        StudyOutputs<PixelView> outputs = new StudyOutputs<>();
        outputs.addText("--csv", csv, PixelCsv::of);
        outputs.addText("--json", json, found -> JsonResult.of(found, Version.number()));
        if (!outputs.areUsable(options, surroundings.errors())) {
            return ExitCode.UNUSABLE;
        }
        PixelView view;
        try {
            view = surroundings.watched(watch -> PixelView.of(
                    options.layout(),
                    points.stream()
                            .map(point -> new PointName(point.surface(), point.u(), point.v()))
                            .toList(),
                    options.effort(),
                    watch));
        } catch (UnusableInput unusable) {
            return Refusal.of(unusable.findings(), surroundings.errors());
        } catch (NoSuchPoint none) {
            surroundings.errors().println("darkrim: --at: " + none.getMessage() + ".");
            return ExitCode.UNUSABLE;
        }
        surroundings.show(view.warnings(), new PixelReport(Version.number(), options.verbose()).of(view));
        if (!outputs.write(view, surroundings.errors())) {
            return ExitCode.UNUSABLE;
        }
        return view.stopped() ? ExitCode.UNDECIDED : ExitCode.DONE;
    }

    @Override
    public LayoutOptions options() {
        return options;
    }
}
