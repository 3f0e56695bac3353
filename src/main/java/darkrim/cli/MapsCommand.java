package darkrim.cli;

import darkrim.diagnostic.UnusableInput;
import darkrim.layout.SourceSpec;
import darkrim.layout.form.Wording;
import darkrim.present.MapReport;
import darkrim.present.map.GreyMap;
import darkrim.present.map.LightMap;
import darkrim.present.map.MapCsv;
import darkrim.present.map.MapFits;
import darkrim.present.picture.LightUnit;
import darkrim.scene.Scene;
import darkrim.scene.Surface;
import darkrim.study.Check;
import darkrim.study.Effort;
import darkrim.study.MarginScope;
import darkrim.study.irradiance.CheckedLight;
import darkrim.study.irradiance.LightKind;
import darkrim.study.irradiance.LitLayout;
import darkrim.study.irradiance.MapSampling.Round;
import darkrim.study.irradiance.PlacedLayout;
import darkrim.study.irradiance.SourceLight;
import darkrim.study.irradiance.SurfaceCells;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** {@code darkrim maps}: the light on flat surfaces, cell by cell, for other programs. */
@Command(
        name = "maps",
        description = "Measures the light on flat surfaces cell by cell, and writes it as images or a table.",
        mixinStandardHelpOptions = true,
        versionProvider = Version.class,
        sortOptions = false,
        footerHeading = "%nExample:%n",
        footer = {
            "  java -jar target/darkrim.jar maps geometries/nightglow-b.yaml \\",
            "      --onto 'mosaic/**/active' -o maps.fits -o maps.csv",
            "",
            "Put patterns in single quotes: names of surfaces hold brackets, which a shell",
            "takes for a pattern. A PNG holds one map: one surface, and direct or reflected",
            "light. 'darkrim draw --detector' draws the same in colours with a scale.",
            "",
            "Exit codes:",
            "  0  written, which is no verdict",
            "  2  the layout, an option or an output cannot be used; standard error says why",
            "  3  the work was stopped; nothing is written",
            "  4  the program broke; standard error says what to report"
        })
final class MapsCommand implements Callable<Integer>, LayoutCommand {
    private static final List<String> ENDINGS = List.of(".fits", ".csv", ".png");

    private final Surroundings surroundings;

    @Option(
            names = {"-o", "--output"},
            paramLabel = "FILE",
            order = -10,
            required = true,
            description = "The file: .fits, .csv or .png (16-bit grey); may be repeated.")
    private List<Path> outputs;

    @Option(
            names = "--onto",
            paramLabel = "PATTERN",
            order = -9,
            defaultValue = "**/active",
            description = "Flat surfaces that receive the light; may be repeated. Default: '**/active'.")
    private List<String> onto;

    @Option(
            names = "--light",
            paramLabel = "WHICH",
            order = -8,
            converter = MapsCommand.Kind.class,
            description = "direct or reflected (once); default: both.")
    private LightKind light;

    @Option(
            names = "--cells-along",
            paramLabel = "N",
            order = -7,
            converter = WholeNumber.Cells.class,
            defaultValue = "32",
            description = "Cells along the longer side of a surface; default: 32.")
    private Long along;

    @Option(
            names = "--cell-samples",
            paramLabel = "N",
            order = -6,
            converter = WholeNumber.CellSamples.class,
            defaultValue = "128",
            description =
                    "Samples of each cell for direct light, 16 times as many for once-reflected light; default: 128.")
    private Long samples;

    @Mixin
    private SourceOption source;

    @Mixin
    private LayoutOptions options;

    MapsCommand(Surroundings surroundings) {
        this.surroundings = surroundings;
    }

    @Override
    public Integer call() {
        OutputFiles files = new OutputFiles(outputs, ENDINGS, options);
        Problems problems = new Problems(surroundings, "nothing was done");
        problems.addAll(files.problems());
        boolean usable = files.areUsable(surroundings.errors());
        try {
            PlacedLayout placed = problems.placed(options);
            Optional<SourceSpec.Distant> lamp = source.of(placed.layout(), placed.scene(), problems);
            problems.addAll(names(placed.scene()));
            if (problems.refuse() || !usable) {
                return ExitCode.UNUSABLE;
            }
            return written(files, placed, lamp);
        } catch (UnusableInput unusable) {
            return Refusal.of(unusable.findings(), surroundings.errors());
        }
    }

    private int written(OutputFiles files, PlacedLayout placed, Optional<SourceSpec.Distant> lamp)
            throws UnusableInput {
        SurfacePatterns patterns = new SurfacePatterns("--onto", onto);
        int direct = light == LightKind.ONCE_REFLECTED ? 0 : Math.toIntExact(samples);
        int reflected = light == LightKind.DIRECT ? 0 : Math.toIntExact(Drawing.REFLECTED * samples);
        Effort effort = options.effort().with(MarginScope.NONE);
        LitLayout lit = surroundings.watched(watch -> LitLayout.of(
                lamp.isPresent()
                        ? SourceLight.of(placed, lamp.get(), effort, watch)
                        : CheckedLight.of(Check.proofs(options.layout(), effort, watch)),
                new LitLayout.Fineness(patterns::selects, Math.toIntExact(along), new Round(direct, reflected)),
                effort.threads(),
                watch));
        if (lit.stopped()) {
            surroundings.errors().println("darkrim: stopped before every cell was measured; nothing was written.");
            return ExitCode.UNDECIDED;
        }
        LightUnit unit = LightUnit.of(lamp, lit.scene());
        List<LightMap> maps = new ArrayList<>();
        for (Surface surface : lit.scene().surfaces()) {
            if (patterns.selects(surface.name())) {
                for (LightKind kind : kinds()) {
                    maps.add(new LightMap(lit.maps().get(surface.index()), kind, unit));
                }
            }
        }
        if (!files.write(ending -> content(ending, maps, lit), surroundings.errors())) {
            return ExitCode.UNUSABLE;
        }
        List<MapReport.Line> lines = maps.stream()
                .map(map -> new MapReport.Line(
                        map.surface(),
                        map.kind().words(),
                        map.grid().columns(),
                        map.grid().rows(),
                        map.mean(),
                        map.meanError(),
                        map.proof()))
                .toList();
        surroundings.show(
                lit.checked().warnings(),
                new MapReport(Version.number()).of(lines, unit.unit(), unit.words(), lit.checked(), outputs));
        return ExitCode.DONE;
    }

    private static byte[] content(String ending, List<LightMap> maps, LitLayout lit) {
        return switch (ending) {
            case ".fits" -> MapFits.of(maps, lit.layout(), lit.checked().seed(), Version.number());
            case ".png" -> GreyMap.of(maps.get(0), lit.layout(), lit.checked().seed(), Version.number());
            default -> MapCsv.of(maps).getBytes(StandardCharsets.UTF_8);
        };
    }

    private List<LightKind> kinds() {
        return light == null ? List.of(LightKind.DIRECT, LightKind.ONCE_REFLECTED) : List.of(light);
    }

    private List<String> names(Scene scene) {
        SurfacePatterns patterns = new SurfacePatterns("--onto", onto);
        Optional<String> problem = patterns.problem(scene);
        if (problem.isPresent()) {
            return List.of(problem.get());
        }
        List<String> problems = new ArrayList<>();
        List<Surface> selected = scene.surfaces().stream()
                .filter(surface -> patterns.selects(surface.name()))
                .toList();
        List<String> curved = selected.stream()
                .filter(surface -> !SurfaceCells.isFlat(scene, surface))
                .map(Surface::name)
                .toList();
        if (!curved.isEmpty()) {
            problems.add("--onto: " + Wording.shortened(curved.get(0))
                    + (curved.size() == 1 ? " is" : " and " + (curved.size() - 1) + " more are")
                    + " not flat, expected flat surfaces only");
        }
        boolean picture =
                outputs.stream().anyMatch(each -> OutputFiles.ending(each).equals(".png"));
        if (picture && (selected.size() != 1 || light == null)) {
            problems.add("a PNG holds one map: expected --onto with one surface, not " + selected.size()
                    + ", and --light direct or reflected");
        }
        return problems;
    }

    @Override
    public LayoutOptions options() {
        return options;
    }

    /** Reads a class of light that is measured by itself. */
    static final class Kind extends Choice<LightKind> {
        Kind() {
            super(List.of("direct", "reflected"), List.of(LightKind.DIRECT, LightKind.ONCE_REFLECTED));
        }
    }
}
