package darkrim.cli;

import darkrim.diagnostic.UnusableInput;
import darkrim.present.LayoutWords;
import darkrim.present.SectionReport;
import darkrim.present.drawing.DxfSection;
import darkrim.present.drawing.PdfLetters;
import darkrim.present.drawing.PdfSheet;
import darkrim.present.drawing.SectionSheet;
import darkrim.present.drawing.SvgSheet;
import darkrim.present.table.DataTable;
import darkrim.present.table.SectionTable;
import darkrim.study.Check;
import darkrim.study.CheckResult;
import darkrim.study.section.LayoutSection;
import darkrim.study.section.SectionPlane;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** {@code darkrim section}: a drawing of a section with the rays that limit the light. */
@Command(
        name = "section",
        description =
                "Draws a section of a layout with the pupil, the rays that graze the edges of the openings, where they"
                        + " land, and margins in mm.",
        mixinStandardHelpOptions = true,
        versionProvider = Version.class,
        sortOptions = false,
        footerHeading = "%nExample:%n",
        footer = {
            "  java -jar target/darkrim.jar section geometries/nightglow-b.yaml \\",
            "      --plane x=20.1 -o s.svg -o s.pdf -o s.dxf",
            "",
            "SVG and PDF are sheets of A3, true to scale. DXF has the section itself in mm,",
            "1:1, a layer for each part and kind of ray.",
            "",
            "Exit codes:",
            "  0  drawn, which is no verdict",
            "  2  the layout, an option or an output cannot be used; standard error says why",
            "  3  the work was stopped; the drawing lacks margins that were not found until",
            "     then",
            "  4  the program broke; standard error says what to report"
        })
final class SectionCommand implements Callable<Integer>, LayoutCommand {
    private final Surroundings surroundings;

    @Option(
            names = {"-o", "--output"},
            paramLabel = "FILE",
            order = -10,
            required = true,
            description = "The drawing: .svg, .pdf or .dxf; may be repeated.")
    private List<Path> outputs;

    @Option(
            names = "--plane",
            paramLabel = "AXIS=PLACE",
            order = -9,
            converter = SectionOption.Reader.class,
            description = "The plane, such as x=0 or y=20.1 (mm).")
    private SectionOption plane;

    @Option(
            names = "--through",
            paramLabel = "X,Y,Z",
            order = -8,
            converter = TripleOption.class,
            description = "Any plane instead: a point of it (mm); coordinates in the drawing are counted from there.")
    private Vector3D through;

    @Option(
            names = "--normal",
            paramLabel = "X,Y,Z",
            order = -7,
            converter = TripleOption.class,
            description = "With --through: direction square to the plane, toward the eye.")
    private Vector3D normal;

    @Option(
            names = "--date",
            paramLabel = "YYYY-MM-DD",
            order = -6,
            converter = DateOption.class,
            description = "Also write this date on the sheet.")
    private String date;

    @Mixin
    private TableOptions tables;

    @Mixin
    private LayoutOptions options;

    SectionCommand(Surroundings surroundings) {
        this.surroundings = surroundings;
    }

    @Override
    public Integer call() {
        OutputFiles files = new OutputFiles(outputs, List.of(".svg", ".pdf", ".dxf"), options);
        Problems problems = new Problems(surroundings, "nothing was drawn");
        problems.addAll(files.problems());
        problems.add(problem());
        boolean usable = OutputFile.areUsable(
                tables.files(files.files(), options.overwrite()), List.of(options.layout()), surroundings.errors());
        try {
            problems.placed(options);
            if (problems.refuse() || !usable) {
                return ExitCode.UNUSABLE;
            }
            // Margins rest on proofs.
            CheckResult result = surroundings.watched(watch -> Check.proofs(options.layout(), options.effort(), watch));
            LayoutSection section = LayoutSection.of(result, wanted());
            if (section.bodies().isEmpty()) {
                surroundings
                        .errors()
                        .println("darkrim: the plane " + wanted().words()
                                + " cuts no part, expected one that does; nothing was drawn.");
                return ExitCode.UNUSABLE;
            }
            return written(files, result, section);
        } catch (UnusableInput unusable) {
            return Refusal.of(unusable.findings(), surroundings.errors());
        }
    }

    private int written(OutputFiles files, CheckResult result, LayoutSection section) {
        DataTable table = SectionTable.of(section, result.effort().seed(), Version.number());
        if (!files.write(ending -> content(ending, result, section), surroundings.errors())
                || !tables.write(() -> table, options.overwrite(), surroundings.errors())) {
            return ExitCode.UNUSABLE;
        }
        if (outputs.stream().anyMatch(path -> OutputFiles.ending(path).equals(".pdf"))) {
            String lacking =
                    PdfLetters.lacking(SectionSheet.of(section, imprint(result)).words());
            if (!lacking.isEmpty()) {
                surroundings.errors().println("darkrim: warning: the PDF shows ? in place of " + lacking + ".");
            }
        }
        surroundings.show(result.warnings(), new SectionReport(Version.number()).of(section, outputs));
        return result.judgement().stopped() || result.margins().stopped() ? ExitCode.UNDECIDED : ExitCode.DONE;
    }

    private byte[] content(String ending, CheckResult result, LayoutSection section) {
        SectionSheet.Imprint imprint = imprint(result);
        String title = LayoutWords.title(section.layout()) + ", section "
                + section.plane().words();
        return switch (ending) {
            case ".dxf" -> DxfSection.of(section, imprint).getBytes(StandardCharsets.US_ASCII);
            case ".pdf" -> PdfSheet.of(SectionSheet.of(section, imprint), title);
            default -> SvgSheet.of(SectionSheet.of(section, imprint), title).getBytes(StandardCharsets.UTF_8);
        };
    }

    private SectionSheet.Imprint imprint(CheckResult result) {
        return new SectionSheet.Imprint(Version.number(), result.effort().seed(), Optional.ofNullable(date));
    }

    private SectionPlane wanted() {
        return plane != null ? SectionPlane.square(plane.axis(), plane.place()) : SectionPlane.through(through, normal);
    }

    private Optional<String> problem() {
        if (plane != null && (through != null || normal != null)) {
            return Optional.of("--plane names a plane, and --through and --normal another, expected one of them");
        }
        if (plane == null && through == null && normal == null) {
            return Optional.of("--plane AXIS=PLACE is missing, expected it, or --through and --normal together");
        }
        if (plane == null && (through == null || normal == null)) {
            return Optional.of((through == null ? "--through" : "--normal") + " X,Y,Z is missing, expected it beside "
                    + (through == null ? "--normal" : "--through"));
        }
        return normal != null && !(normal.norm() > 0)
                ? Optional.of("--normal has no direction, expected a number other than 0 among the three")
                : Optional.empty();
    }

    @Override
    public LayoutOptions options() {
        return options;
    }
}
