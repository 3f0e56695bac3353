package darkrim.cli;

import darkrim.diagnostic.UnusableInput;
import darkrim.layout.Layout;
import darkrim.layout.LayoutReader;
import darkrim.layout.SideFiles;
import darkrim.layout.form.YamlText;
import darkrim.layout.mesh.MeshFiles;
import darkrim.study.NoWindow;
import darkrim.verdict.Watch;
import darkrim.view.Viewer;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.stream.Stream;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code darkrim view}: a window with the parts in three dimensions and the light on them. */
@Command(
        name = "view",
        description = "Opens a window with the parts in three dimensions and the light on them.",
        mixinStandardHelpOptions = true,
        versionProvider = Version.class,
        sortOptions = false,
        footerHeading = "%nExamples:%n",
        footer = {
            "  java -jar target/darkrim.jar view geometries/nightglow-a.yaml",
            "  java -jar target/darkrim.jar view geometries/nightglow-a.yaml \\",
            "      --beside geometries/nightglow-b.yaml",
            "",
            "The parts appear at once; values, verdicts and margins follow when the check has",
            "found them. The layout file is read again whenever it changes. F1 in the window",
            "lists mouse and keys.",
            "",
            "Exit codes:",
            "  0  the window was closed",
            "  2  no window can be shown, or an option cannot be used; standard error says",
            "     why",
            "  4  the display was lost, or the program broke; standard error says which"
        })
final class ViewCommand implements Callable<Integer>, LayoutCommand {
    private final Surroundings surroundings;

    @Mixin
    private LayoutOptions options;

    @Parameters(
            paramLabel = "RESULT",
            index = "1",
            arity = "0..1",
            description =
                    "A result of this layout, as 'darkrim check --json' writes it: shown instead of checking again.")
    private Path result;

    @Option(
            names = "--beside",
            paramLabel = "OTHER",
            order = -2,
            description = "Another layout or revision, shown beside the first and looked at by the same camera.")
    private Path beside;

    ViewCommand(Surroundings surroundings) {
        this.surroundings = surroundings;
    }

    @Override
    public Integer call() {
        List<Path> named =
                Stream.of(options.layout(), beside).filter(Objects::nonNull).toList();
        List<Path> unreadable = named.stream()
                .filter(file -> !Files.isReadable(file) || Files.isDirectory(file))
                .toList();
        if (!unreadable.isEmpty()) {
            unreadable.forEach(file ->
                    surroundings.errors().println(file + ": there is no such file that can be read [unreadable]"));
            surroundings.errors().println("darkrim: no window was opened.");
            return ExitCode.UNUSABLE;
        }
        Watch watch = surroundings.watch().get();
        try {
            for (Path file : named) {
                refuseBeamWindow(file);
            }
            Viewer.open(
                    options.layout(),
                    Optional.ofNullable(beside),
                    Optional.ofNullable(result),
                    options.effort(),
                    System.getenv(),
                    watch::stop,
                    this::withoutDisplay);
            return ended(ExitCode.DONE);
        } catch (UnusableInput unusable) {
            unusable.findings().forEach(surroundings.errors()::println);
            surroundings.errors().println("darkrim: no window was opened.");
            return ExitCode.UNUSABLE;
        } catch (Viewer.NoWindow none) {
            surroundings
                    .errors()
                    .println("darkrim: no window: " + none.getMessage()
                            + "; 'darkrim draw' makes pictures without a display.");
            return ended(ExitCode.UNUSABLE);
        }
    }

    /** Ends the process here, where that is safer than to go back. */
    private int ended(int code) {
        int delivered = surroundings.output().delivered(code, surroundings.errors());
        surroundings.errors().flush();
        Viewer.end(delivered);
        return delivered;
    }

    /**
     * Refuses a layout that nothing can be shown of as long as its beam passes a window. Meshes are not read for this: that can take long, and
     * the window of the program should be there at once. All other errors are shown in it, and go when the file is mended.
     */
    private static void refuseBeamWindow(Path file) throws UnusableInput {
        try (InputStream stream = Files.newInputStream(file)) {
            Optional<Layout> layout = LayoutReader.read(
                            file.toString(),
                            stream.readNBytes(YamlText.LARGEST + 1),
                            Map.of(),
                            SideFiles.known(file.toString(), Map.of(), MeshFiles.none()))
                    .layout();
            if (layout.isPresent()) {
                NoWindow.require(layout.get(), "view");
            }
        } catch (IOException unreadable) {
            // The window says so, and shows the layout as soon as it can be read.
        }
    }

    private int withoutDisplay() {
        surroundings.errors().println("darkrim: the display was lost, and the window with it.");
        return ExitCode.BROKEN;
    }

    @Override
    public LayoutOptions options() {
        return options;
    }
}
