package darkrim.cli;

import darkrim.diagnostic.UnusableInput;
import darkrim.layout.SourceSpec;
import darkrim.layout.form.Wording;
import darkrim.present.json.SavedCheck;
import darkrim.present.json.SavedResult;
import darkrim.scene.Scene;
import darkrim.study.Check;
import darkrim.study.MarginScope;
import darkrim.study.NoSuchPoint;
import darkrim.study.irradiance.CheckedLight;
import darkrim.study.irradiance.LitLayout;
import darkrim.study.irradiance.PlacedLayout;
import darkrim.study.irradiance.SourceLight;
import darkrim.verdict.Watch;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** {@code darkrim draw}: pictures of parts and their light. */
@Command(
        name = "draw",
        description = {
            "Draws the parts of a layout with the light that falls on them, a flat map of one surface, or what one"
                    + " point sees, into a PNG file.",
            "Needs no display."
        },
        mixinStandardHelpOptions = true,
        versionProvider = Version.class,
        sortOptions = false,
        footerHeading = "%nExamples:%n",
        footer = {
            "  java -jar target/darkrim.jar draw geometries/nightglow-a.yaml -o a.png \\",
            "      --hide walls --hide lid --about 'mosaic/die[2,2]'",
            "  java -jar target/darkrim.jar draw geometries/nightglow-a.yaml -o map.png \\",
            "      --detector 'mosaic/die[1,2]/active' --light reflected",
            "  java -jar target/darkrim.jar draw geometries/nightglow-a.yaml -o seen.png \\",
            "      --seen-from 'mosaic/die[1,2]/active:0.98,0.5'",
            "",
            "Put names and patterns in single quotes: they hold brackets and stars, which a",
            "shell takes for its own. The layout is checked first, unless RESULT or --source",
            "is given, so that outlines can tell verdicts. No date is written unless --date",
            "gives one: the same command makes the same bytes.",
            "",
            "Exit codes:",
            "  0  the picture is drawn; this is no verdict",
            "  2  the layout, an option or the output cannot be used; standard error says why",
            "  3  the work was stopped; the picture shows what was found until then",
            "  4  the program broke; standard error says what to report"
        })
final class DrawCommand implements Callable<Integer>, LayoutCommand {
    /** Options of a picture of parts that say nothing of a flat map. */
    private static final List<String> OF_PARTS = List.of(
            "--from",
            "--perspective",
            "--section",
            "--only",
            "--hide",
            "--about",
            "--magnify",
            "--path",
            "--no-outlines");

    /** Those of them that say something of what a point sees. */
    private static final List<String> OF_SIGHT = List.of("--only", "--hide");

    private final Surroundings surroundings;

    @Spec
    private CommandSpec spec;

    @Parameters(
            paramLabel = "RESULT",
            index = "1",
            arity = "0..1",
            description =
                    "What 'darkrim check --json' wrote for this layout: its values and verdicts are drawn, and the layout"
                            + " is not checked again.")
    private Path result;

    @Option(
            names = {"-o", "--output"},
            paramLabel = "FILE",
            order = -50,
            required = true,
            description = "The picture (.png).")
    private Path output;

    @Option(
            names = "--size",
            paramLabel = "WxH",
            order = -49,
            converter = PictureSize.Reader.class,
            defaultValue = "1600x1000",
            description = "Width and height in pixels; default: 1600x1000.")
    private PictureSize size;

    @Option(
            names = "--detector",
            paramLabel = "SURFACE",
            order = -48,
            description = "Draw a flat map of this surface instead, such as an active area.")
    private String detector;

    @Option(
            names = "--seen-from",
            paramLabel = "SURFACE[:u,v]",
            order = -47,
            converter = PointOption.Reader.class,
            description = "Draw what this point sees instead, as 'darkrim seen-from --at' takes it.")
    private PointOption point;

    @Option(
            names = "--angle",
            paramLabel = "DEG",
            order = -46,
            converter = RealNumber.Angle.class,
            description = "With --seen-from: angle from the middle of the picture to its rim; default: 90, all that the"
                    + " point sees.")
    private Double angle;

    @Option(
            names = "--date",
            paramLabel = "YYYY-MM-DD",
            order = -45,
            converter = DateOption.class,
            description = "Also write this date on the picture.")
    private String date;

    @Mixin
    private SourceOption source;

    @Mixin
    private DrawnParts parts;

    @Mixin
    private DrawnLight light;

    @Mixin
    private LayoutOptions options;

    DrawCommand(Surroundings surroundings) {
        this.surroundings = surroundings;
    }

    @Override
    public Integer call() {
        OutputFile file = options.output("--output", output).orElseThrow();
        Problems problems = problems();
        boolean usable = file.isUsable(options.layout(), surroundings.errors());
        try {
            PlacedLayout placed = problems.placed(options);
            Optional<SourceSpec.Distant> shown = source.of(placed.layout(), placed.scene(), problems);
            Drawing drawing = drawing(shown);
            names(placed.scene(), drawing, problems);
            if (problems.refuse() || !usable) {
                return ExitCode.UNUSABLE;
            }
            LitLayout lit = surroundings.watched(watch -> LitLayout.of(
                    shown.isPresent()
                            ? SourceLight.of(placed, shown.get(), options.effort(), watch)
                            : checked(placed, drawing, watch),
                    drawing.fineness(),
                    options.effort().threads(),
                    watch));
            if (!file.write(drawing.png(lit), surroundings.errors())) {
                return ExitCode.UNUSABLE;
            }
            surroundings.show(
                    lit.checked().warnings(),
                    "Drawn into " + Wording.oneLine(output.toString()) + ": " + drawing.what(lit)
                            + System.lineSeparator());
            return lit.stopped() ? ExitCode.UNDECIDED : ExitCode.DONE;
        } catch (SavedResult.Unusable unusable) {
            surroundings.errors().println("darkrim: " + result + ": " + unusable.getMessage() + "; nothing was drawn.");
            return ExitCode.UNUSABLE;
        } catch (UnusableInput unusable) {
            return Refusal.of(unusable.findings(), surroundings.errors());
        } catch (NoSuchPoint none) {
            surroundings.errors().println("darkrim: " + place() + ": " + none.getMessage() + "; nothing was drawn.");
            return ExitCode.UNUSABLE;
        }
    }

    /** What is known of the light: read back, or found now. */
    private CheckedLight checked(PlacedLayout placed, Drawing drawing, Watch watch)
            throws UnusableInput, SavedResult.Unusable {
        return result != null
                ? SavedCheck.read(result, placed)
                : CheckedLight.of(
                        drawing.judged()
                                ? Check.of(options.layout(), options.effort().with(MarginScope.NONE), watch)
                                : Check.proofs(
                                        options.layout(), options.effort().with(MarginScope.NONE), watch));
    }

    private Drawing drawing(Optional<SourceSpec.Distant> shown) {
        DrawingTask task = new DrawingTask(shown, light, size, Optional.ofNullable(date), options.effort());
        if (detector != null) {
            return new FlatMapDrawing(task, detector);
        }
        return point != null
                ? new SightDrawing(task, parts, point, angle == null ? RealNumber.Angle.MOST : angle)
                : new PartsDrawing(task, parts);
    }

    private Problems problems() {
        Problems problems = new Problems(surroundings, "nothing was drawn");
        if (!output.toString().toLowerCase(Locale.ROOT).endsWith(".png")) {
            problems.add("--output " + Wording.shortened(output.toString()) + ": expected a name that ends in .png");
        }
        if (detector != null && point != null) {
            problems.add("--detector and --seen-from are two pictures, expected one of them");
        }
        List<String> idle = OF_PARTS.stream()
                .filter(option -> detector != null || (point != null && !OF_SIGHT.contains(option)))
                .filter(option -> spec.commandLine().getParseResult().hasMatchedOption(option))
                .toList();
        if (!idle.isEmpty()) {
            problems.add(String.join(", ", idle) + (idle.size() == 1 ? " is" : " are")
                    + " for pictures of parts, expected none with " + place());
        }
        if (angle != null && point == null) {
            problems.add("--angle says how much a point sees, expected --seen-from with it");
        }
        if (light.light().isEmpty() && (detector != null || point != null)) {
            problems.add("--light none is for pictures of parts, expected direct, reflected or total here");
        }
        if (source.isGiven() && light.light().isEmpty()) {
            problems.add("--source says whose light is drawn, expected --light direct, reflected or total with it");
        }
        if (source.isGiven()
                && (result != null || options.effort().mostSamples().isPresent())) {
            problems.add("RESULT and --samples are about a check of the beam, expected neither with --source");
        }
        if (!source.isGiven()
                && result != null
                && (options.effort().seed().isPresent()
                        || options.effort().mostSamples().isPresent())) {
            problems.add("--seed and --samples are for a check, which RESULT replaces");
        }
        problems.add(light.problem());
        return problems;
    }

    /** The option that names what is looked at. */
    private String place() {
        return detector != null ? "--detector" : point != null ? "--seen-from" : "--path";
    }

    /** What is wrong with the names that options give, seen beside the layout. */
    private void names(Scene scene, Drawing drawing, Problems problems) {
        List<String> wrong = new ArrayList<>(parts.problems(scene));
        light.cells()
                .map(all -> new SurfacePatterns("--cells", all))
                .flatMap(all -> all.problem(scene))
                .ifPresent(wrong::add);
        if (wrong.isEmpty() && parts.isCutAway(scene)) {
            wrong.add("--section cuts all parts away that would be drawn, expected a plane that leaves some");
        }
        problems.addAll(wrong);
        if (scene.beam().window().isPresent()
                && !source.isGiven()
                && (point != null || parts.path().isPresent())) {
            problems.add(place() + " does not follow light through the window of the layout, expected none");
        }
        try {
            drawing.check(scene);
        } catch (NoSuchPoint none) {
            problems.add(place() + ": " + none.getMessage());
        }
    }

    @Override
    public LayoutOptions options() {
        return options;
    }
}
