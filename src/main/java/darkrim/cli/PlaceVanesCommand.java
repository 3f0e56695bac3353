package darkrim.cli;

import darkrim.diagnostic.UnusableInput;
import darkrim.layout.Shape.Toward;
import darkrim.layout.VanesShape.Taper;
import darkrim.layout.form.Wording;
import darkrim.present.VaneReport;
import darkrim.present.table.PartTables;
import darkrim.study.vanes.VaneConstruction;
import darkrim.study.vanes.VaneForm;
import darkrim.study.vanes.VaneProof;
import darkrim.study.vanes.VaneTask;
import darkrim.study.vanes.VaneText;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** {@code darkrim place-vanes}: where vanes must stand in a tube or cone, with the proof that they do their work there. */
@Command(
        name = "place-vanes",
        description = {
            "Places vanes in a tube or cone in front of a round detector, so that no wall point that the detector sees is"
                    + " lit at or beyond an angle off axis; writes them as a part of a layout and proves it of what is"
                    + " written.",
            "The detector lies in the plane z = 0; light comes in through a round entrance at the top of the wall."
                    + " Lengths in mm."
        },
        mixinStandardHelpOptions = true,
        versionProvider = Version.class,
        sortOptions = false,
        footerHeading = "%nExample:%n",
        footer = {
            "  java -jar target/darkrim.jar place-vanes --wall-diameter 80 \\",
            "      --edge-diameter 60 --length 300 --detector-diameter 20 \\",
            "      --entrance-diameter 60 --off-axis 20",
            "",
            "Exit codes:",
            "  0  proved",
            "  1  a wall point is known that the detector sees and that is lit",
            "  2  an option or an output cannot be used, or no vanes can be placed; standard",
            "     error says why",
            "  3  not decided",
            "  4  the program broke; standard error says what to report"
        })
final class PlaceVanesCommand implements Callable<Integer>, OptionChoices {
    private final Surroundings surroundings;

    @Option(
            names = "--wall-diameter",
            paramLabel = "D[,D]",
            split = ",",
            hideParamSyntax = true,
            required = true,
            converter = RealNumber.Length.class,
            description = "Inner diameter of the wall, or at its base and at the entrance.")
    private List<Double> wall;

    @Option(
            names = "--edge-diameter",
            paramLabel = "D[,D]",
            split = ",",
            hideParamSyntax = true,
            converter = RealNumber.Length.class,
            description = "Diameter of the edges of vanes, or at the base and at the entrance.")
    private List<Double> edge;

    @Option(
            names = "--depth",
            paramLabel = "T",
            converter = RealNumber.Length.class,
            description = "Depth of the vanes from the wall, instead of --edge-diameter.")
    private Double depth;

    @Option(
            names = "--length",
            paramLabel = "L",
            required = true,
            converter = RealNumber.Length.class,
            description = "Length of the wall along the axis.")
    private Double length;

    @Option(
            names = "--base",
            paramLabel = "Z",
            defaultValue = "0",
            converter = RealNumber.Length.class,
            description = "Height of the base of the wall above the detector; default: 0.")
    private Double base;

    @Option(
            names = "--detector-diameter",
            paramLabel = "D",
            required = true,
            converter = RealNumber.Length.class,
            description = "Diameter of the detector; of a rectangular one its diagonal.")
    private Double detector;

    @Option(
            names = "--entrance-diameter",
            paramLabel = "D",
            required = true,
            converter = RealNumber.Length.class,
            description = "Diameter of the entrance at the top of the wall.")
    private Double entrance;

    @Option(
            names = "--off-axis",
            paramLabel = "ANGLE",
            converter = RealNumber.Angle.class,
            description = "Least angle off axis of the light to be kept from the wall, degrees, below 90.")
    private Double offAxis;

    @Option(
            names = "--first",
            paramLabel = "Z",
            converter = RealNumber.Length.class,
            description =
                    "Instead of --off-axis: height of a first vane, above which the wall is hidden whatever the angle.")
    private Double first;

    @Option(
            names = "--clearance",
            paramLabel = "T",
            defaultValue = "0.05",
            converter = RealNumber.Length.class,
            description =
                    "By how much edges, detector and entrance may be wider in radius than drawn; default: 0.05. With 0 the"
                            + " lines just touch.")
    private Double clearance;

    @Option(
            names = "--thickness",
            paramLabel = "T",
            defaultValue = "0.5",
            converter = RealNumber.Length.class,
            description = "Thickness of a vane; default: 0.5.")
    private Double thickness;

    @Option(
            names = "--land",
            paramLabel = "T",
            defaultValue = "0.05",
            converter = RealNumber.Length.class,
            description = "Height of the straight land at the edge; default: 0.05.")
    private Double land;

    @Option(
            names = "--bevel",
            paramLabel = "ANGLE",
            defaultValue = "45",
            converter = RealNumber.Angle.class,
            description = "Angle between bevel and axis, up to 80 deg; default: 45. The edge is toward the light.")
    private Double bevel;

    @Option(
            names = "--wall-thickness",
            paramLabel = "T",
            defaultValue = "1",
            converter = RealNumber.Length.class,
            description = "Thickness of the wall; default: 1.")
    private Double wallThickness;

    @Option(
            names = "--chord",
            paramLabel = "T",
            defaultValue = "0.01",
            converter = RealNumber.Length.class,
            description = "Greatest distance between a circle and its polygon; default: 0.01.")
    private Double chord;

    @Option(
            names = "--name",
            paramLabel = "NAME",
            defaultValue = "vanes",
            description = "Name of the part; default: vanes.")
    private String name;

    @Option(
            names = "--layout",
            paramLabel = "FILE",
            description = "Also write a layout of its own into this file, if the proof holds.")
    private Path layout;

    @Option(names = "--overwrite", description = "Replace the output file if there is one.")
    private boolean overwrite;

    @Mixin
    private TableOptions tables;

    PlaceVanesCommand(Surroundings surroundings) {
        this.surroundings = surroundings;
    }

    @Override
    public List<List<String>> choices() {
        return List.of(VaneOptionCheck.EDGE, VaneOptionCheck.REACH);
    }

    @Override
    public Integer call() {
        List<String> problems = new VaneOptionCheck(
                        wall, edge, depth, length, base, detector, entrance, offAxis, first, clearance)
                .problems();
        if (!name.matches("[A-Za-z][A-Za-z0-9_-]{0,99}") || name.equals("detector")) {
            problems.add(
                    "--name: expected letters, digits, _ and -, of which the first is a letter, other than 'detector',"
                            + " got '" + Wording.shortened(name) + "'");
        }
        Optional<OutputFile> output =
                Optional.ofNullable(layout).map(file -> new OutputFile("--layout", file, overwrite));
        output.flatMap(file -> file.problem(Path.of("")))
                .ifPresent(why -> problems.add("--layout " + layout + ": " + why));
        if (!problems.isEmpty()) {
            return refuse(problems);
        }
        List<OutputFile> files = tables.files(output.stream().toList(), overwrite);
        if (!OutputFile.areUsable(files, List.of(Path.of("")), surroundings.errors())) {
            return ExitCode.UNUSABLE;
        }
        VaneTask task = task();
        VaneConstruction construction = VaneConstruction.of(task);
        int count = construction.heights().size();
        if (count > VaneConstruction.MOST) {
            return refuse(
                    List.of("more than " + VaneConstruction.MOST + " vanes would be needed, expected deeper vanes"));
        }
        VaneForm form = new VaneForm(name, thickness, land, bevel, Toward.PUPIL, wallThickness, chord);
        VaneText text = new VaneText(task, form, construction.heights());
        VaneProof found;
        try {
            found = VaneProof.of(text);
        } catch (UnusableInput unusable) {
            surroundings.errors().println("darkrim: the vanes cannot be made as asked; nothing was written.");
            unusable.findings().forEach(finding -> surroundings.errors().println("  " + finding.message()));
            return ExitCode.UNUSABLE;
        }
        VaneProof proof = found;
        surroundings.output().print(VaneReport.of(text, construction, proof));
        if (!tables.write(
                () -> PartTables.vanes(text, construction, proof, Version.number()),
                overwrite,
                surroundings.errors())) {
            return ExitCode.UNUSABLE;
        }
        if (!proof.holds()) {
            output.ifPresent(file -> surroundings
                    .errors()
                    .println("darkrim: --layout " + file.path() + ": the proof does not hold; no file was written."));
            return proof.fails() ? ExitCode.FAIL : ExitCode.UNDECIDED;
        }
        boolean written = output.map(file -> file.write(text.layout(), surroundings.errors()))
                .orElse(true);
        return written ? ExitCode.PASS : ExitCode.UNUSABLE;
    }

    private VaneTask task() {
        Taper walls = taper(wall);
        return new VaneTask(
                walls,
                depth == null ? taper(edge) : new Taper(walls.atBase() - depth, walls.atTop() - depth),
                base,
                base + length,
                detector / 2,
                entrance / 2,
                offAxis == null ? OptionalDouble.empty() : OptionalDouble.of(offAxis),
                first == null ? OptionalDouble.empty() : OptionalDouble.of(first),
                clearance);
    }

    private static Taper taper(List<Double> diameters) {
        return new Taper(diameters.get(0) / 2, diameters.get(diameters.size() - 1) / 2);
    }

    private int refuse(List<String> problems) {
        problems.forEach(problem -> surroundings.errors().println("darkrim: " + problem));
        surroundings.errors().println("darkrim: nothing was written.");
        return ExitCode.UNUSABLE;
    }
}
