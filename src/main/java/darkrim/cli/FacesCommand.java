package darkrim.cli;

import darkrim.diagnostic.Finding;
import darkrim.diagnostic.UnusableInput;
import darkrim.layout.form.Wording;
import darkrim.present.FaceNameLines;
import darkrim.present.FaceReport;
import darkrim.present.table.PartTables;
import darkrim.study.FaceListing;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code darkrim faces}: what faces the parts have and what they are called. */
@Command(
        name = "faces",
        description = {
            "Lists the faces of the parts of a layout, in place: name, area, centre, direction and the box around it;"
                    + " of a mesh also what is wrong with it.",
            "Requirements and finish rules may still be wrong."
        },
        mixinStandardHelpOptions = true,
        versionProvider = Version.class,
        sortOptions = false,
        footerHeading = "%nExample:%n",
        footer = {
            "  java -jar target/darkrim.jar faces geometries/nightglow-b-mesh.yaml --part lid",
            "",
            "Exit codes:",
            "  0  done",
            "  2  a part, an option or an output cannot be used, or a named face was not",
            "     found; standard error says which",
            "  4  the program broke; standard error says what to report"
        })
final class FacesCommand implements Callable<Integer>, LayoutCommand {
    private final Surroundings surroundings;

    @Parameters(paramLabel = "LAYOUT", index = "0", arity = "1", description = "The layout file (YAML).")
    private Path layout;

    @Option(names = "--part", paramLabel = "NAME", description = "Only this part; default: all.")
    private String part;

    @Option(
            names = "--names",
            paramLabel = "FILE",
            description = "Also write names for the faces of meshes into this file, to paste into the layout.")
    private Path names;

    @Option(
            names = "--warm",
            description = "List a layout that has a cool-down in its shape as drawn; default: its cold shape.")
    private boolean warm;

    @Option(names = "--overwrite", description = "Replace the output file if there is one.")
    private boolean overwrite;

    @Option(
            names = {"-v", "--verbose"},
            description = "Show long tables whole, and details if the program breaks.")
    private boolean verbose;

    @Mixin
    private TableOptions tables;

    FacesCommand(Surroundings surroundings) {
        this.surroundings = surroundings;
    }

    @Override
    public Integer call() {
        Optional<OutputFile> output =
                Optional.ofNullable(names).map(file -> new OutputFile("--names", file, overwrite));
        List<OutputFile> files = tables.files(output.stream().toList(), overwrite);
        if (!OutputFile.areUsable(files, List.of(layout), surroundings.errors())) {
            return ExitCode.UNUSABLE;
        }
        FaceListing found;
        try {
            found = FaceListing.of(layout, Optional.ofNullable(part), warm);
        } catch (UnusableInput unusable) {
            return Refusal.of(unusable.findings(), surroundings.errors());
        }
        FaceListing listing = found;
        if (listing.faces().isEmpty()) {
            surroundings
                    .errors()
                    .println("darkrim: --part: the layout has no part named '" + Wording.shortened(part)
                            + "', expected one of those that are listed without --part.");
            return ExitCode.UNUSABLE;
        }
        surroundings.show(listing.findings(), new FaceReport(verbose).of(listing));
        if (output.isPresent() && !write(output.get(), FaceNameLines.of(listing))) {
            return ExitCode.UNUSABLE;
        }
        if (!tables.write(() -> PartTables.faces(listing, Version.number()), overwrite, surroundings.errors())) {
            return ExitCode.UNUSABLE;
        }
        boolean wrong = listing.findings().stream().anyMatch(finding -> finding.severity() == Finding.Severity.ERROR);
        return wrong ? ExitCode.UNUSABLE : ExitCode.DONE;
    }

    private boolean write(OutputFile file, String text) {
        if (text.isEmpty()) {
            surroundings
                    .errors()
                    .println("darkrim: --names: no part listed is a mesh, expected one; no file was written.");
            return false;
        }
        return file.write(text, surroundings.errors());
    }

    @Override
    public LayoutOptions options() {
        return LayoutOptions.of(layout, verbose);
    }
}
