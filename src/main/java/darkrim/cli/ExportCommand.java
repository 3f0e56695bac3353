package darkrim.cli;

import darkrim.assembly.Assembly;
import darkrim.diagnostic.Findings;
import darkrim.diagnostic.UnusableInput;
import darkrim.layout.SourceSpec;
import darkrim.layout.form.Wording;
import darkrim.present.Figures;
import darkrim.present.LayoutWords;
import darkrim.present.geometry.GltfScene;
import darkrim.present.geometry.LitFaces;
import darkrim.present.geometry.ShapeFiles;
import darkrim.present.geometry.SurfaceCsv;
import darkrim.present.geometry.VtuScene;
import darkrim.present.picture.LightUnit;
import darkrim.scene.Scene;
import darkrim.scene.Surface;
import darkrim.study.Check;
import darkrim.study.MarginScope;
import darkrim.study.irradiance.CheckedLight;
import darkrim.study.irradiance.DarkProof;
import darkrim.study.irradiance.LitLayout;
import darkrim.study.irradiance.MapSampling.Round;
import darkrim.study.irradiance.PlacedLayout;
import darkrim.study.irradiance.SourceLight;
import darkrim.study.irradiance.SurfaceCells;
import darkrim.study.irradiance.SurfaceMap;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.function.Predicate;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** {@code darkrim export}: the parts, and the light on them, for other programs. */
@Command(
        name = "export",
        description =
                "Writes the parts of a layout, with the light on them where the format holds it, for other programs.",
        mixinStandardHelpOptions = true,
        versionProvider = Version.class,
        sortOptions = false,
        footerHeading = "%nExamples:%n",
        footer = {
            "  java -jar target/darkrim.jar export geometries/nightglow-b.yaml -o scene.glb",
            "  java -jar target/darkrim.jar export geometries/nightglow-80k.yaml --warm \\",
            "      -o lid.stl --only 'lid/**'",
            "",
            "The ending tells the format: .glb binary glTF 2.0 in metres, coloured by light;",
            ".vtu grid of VTK in mm with the light as numbers; .csv the surfaces with their",
            "numbers in that grid; .stl and .obj the shape alone, in mm. Light comes from a",
            "check, unless --light none leaves it out.",
            "",
            "Exit codes:",
            "  0  written, which is no verdict",
            "  2  the layout, an option or an output cannot be used; standard error says why",
            "  3  the work was stopped; nothing is written",
            "  4  the program broke; standard error says what to report"
        })
final class ExportCommand implements Callable<Integer>, LayoutCommand {
    private static final List<String> ENDINGS = List.of(".glb", ".vtu", ".csv", ".stl", ".obj");
    private static final int ALONG = 24;
    private static final int SAMPLES = 128;

    private final Surroundings surroundings;

    @Option(
            names = {"-o", "--output"},
            paramLabel = "FILE",
            order = -50,
            required = true,
            description = "The file: .glb, .vtu, .csv, .stl or .obj; may be repeated.")
    private List<Path> outputs;

    @Mixin
    private ChosenSurfaces chosen;

    @Mixin
    private SourceOption source;

    @Mixin
    private DrawnLight light;

    @Mixin
    private LayoutOptions options;

    ExportCommand(Surroundings surroundings) {
        this.surroundings = surroundings;
    }

    @Override
    public Integer call() {
        OutputFiles files = new OutputFiles(outputs, ENDINGS, options);
        Problems problems = new Problems(surroundings, "nothing was done");
        problems.addAll(files.problems());
        problems.add(light.problem());
        if (source.isGiven() && !needsLight()) {
            problems.add("--source says whose light is written, expected a .glb, .vtu or .csv file with it, and --light"
                    + " direct, reflected or total");
        }
        if (source.isGiven() && options.effort().mostSamples().isPresent()) {
            problems.add("--samples is about a check of the beam, expected none with --source");
        }
        boolean usable = files.areUsable(surroundings.errors());
        try {
            PlacedLayout placed = problems.placed(options);
            Optional<SourceSpec.Distant> lamp = source.of(placed.layout(), placed.scene(), problems);
            names(placed.scene(), problems);
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
        Optional<LitLayout> lit = needsLight() ? Optional.of(lit(placed, lamp)) : Optional.empty();
        if (lit.map(LitLayout::stopped).orElse(false)) {
            surroundings.errors().println("darkrim: stopped before all light was measured; nothing was written.");
            return ExitCode.UNDECIDED;
        }
        List<LitFaces> faces = new ArrayList<>();
        Scene scene = lit.map(LitLayout::scene).orElse(placed.scene());
        for (Surface surface : scene.surfaces()) {
            if (chosen.holds(surface.name())) {
                SurfaceMap map = lit.map(each -> each.maps().get(surface.index()))
                        .orElseGet(() -> SurfaceMap.unsampled(SurfaceCells.whole(scene, surface), DarkProof.NONE));
                faces.add(LitFaces.of(scene, map));
            }
        }
        if (!files.write(ending -> content(ending, faces, placed, lit, lamp), surroundings.errors())) {
            return ExitCode.UNUSABLE;
        }
        String named = String.join(
                ", ", outputs.stream().map(Path::toString).map(Wording::oneLine).toList());
        surroundings.show(
                lit.map(each -> each.checked().warnings()).orElse(placed.warnings()),
                LayoutWords.title(placed.layout()) + System.lineSeparator()
                        + Figures.counted(faces.size(), "surface") + " written into " + named + "."
                        + System.lineSeparator());
        return ExitCode.DONE;
    }

    /** Whether a file is wanted that holds light, and light is. */
    private boolean needsLight() {
        return light.light().isPresent()
                && outputs.stream().map(OutputFiles::ending).anyMatch(List.of(".glb", ".vtu", ".csv")::contains);
    }

    private LitLayout lit(PlacedLayout placed, Optional<SourceSpec.Distant> lamp) throws UnusableInput {
        Predicate<String> cells = light.cells()
                .map(all -> new SurfacePatterns("--cells", all))
                .<Predicate<String>>map(all -> all::selects)
                .orElse(name -> false);
        int samples = light.samples(SAMPLES);
        return surroundings.watched(watch -> LitLayout.of(
                lamp.isPresent()
                        ? SourceLight.of(placed, lamp.get(), options.effort(), watch)
                        : CheckedLight.of(
                                Check.of(options.layout(), options.effort().with(MarginScope.NONE), watch)),
                new LitLayout.Fineness(cells, light.along(ALONG), new Round(samples, Drawing.REFLECTED * samples)),
                options.effort().threads(),
                watch));
    }

    private byte[] content(
            String ending,
            List<LitFaces> faces,
            PlacedLayout placed,
            Optional<LitLayout> lit,
            Optional<SourceSpec.Distant> lamp) {
        Optional<LightUnit> unit = lit.map(each -> LightUnit.of(lamp, each.scene()));
        return switch (ending) {
            case ".glb" -> GltfScene.of(faces, unit.map(each -> shown(faces, each)), placed.layout(), Version.number());
            case ".vtu" -> bytes(VtuScene.of(faces, unit, placed.layout(), Version.number()));
            case ".csv" -> bytes(SurfaceCsv.of(faces, unit, lit.map(LitLayout::checked)));
            case ".stl" -> bytes(ShapeFiles.stl(assembly(placed), chosen::holds));
            default -> bytes(ShapeFiles.obj(assembly(placed), placed.layout(), Version.number(), chosen::holds));
        };
    }

    private GltfScene.Shown shown(List<LitFaces> faces, LightUnit unit) {
        List<SurfaceMap> maps = faces.stream().map(LitFaces::map).toList();
        return new GltfScene.Shown(light.light().orElseThrow(), light.choice().scale(unit, maps), unit);
    }

    private static Assembly assembly(PlacedLayout placed) {
        return Assembly.of(placed.layout(), new Findings());
    }

    private static byte[] bytes(String text) {
        return text.getBytes(StandardCharsets.UTF_8);
    }

    private void names(Scene scene, Problems problems) {
        problems.addAll(chosen.problems(scene));
        problems.add(
                light.cells().map(all -> new SurfacePatterns("--cells", all)).flatMap(all -> all.problem(scene)));
    }

    @Override
    public LayoutOptions options() {
        return options;
    }
}
