package darkrim.cli;

import darkrim.present.Ink;
import java.io.IOException;
import java.io.OutputStream;
import java.io.OutputStreamWriter;
import java.io.PrintWriter;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import picocli.AutoComplete;
import picocli.CommandLine;
import picocli.CommandLine.Model.CommandSpec;
import picocli.codegen.docgen.manpage.ManPageGenerator;

/** Writes what an installed program brings beside itself: its pages for {@code man} as AsciiDoc, and the script for shell completion. */
final class ManPages {
    private ManPages() {}

    /**
     * Writes them.
     *
     * @param arguments the folder for the pages, and the file of the script
     */
    public static void main(String... arguments) throws IOException {
        Path pages = Files.createDirectories(Path.of(arguments[0]));
        Path script = Path.of(arguments[1]);
        PrintWriter nowhere =
                new PrintWriter(new OutputStreamWriter(OutputStream.nullOutputStream(), StandardCharsets.UTF_8));
        CommandLine line = Commands.all(new Surroundings(
                OutputWriter.to(Writer.nullWriter()), nowhere, Ink.PLAIN, () -> new Quiet(() -> false)));
        List<CommandSpec> shown = new ArrayList<>(List.of(line.getCommandSpec()));
        line.getSubcommands().values().stream()
                .map(CommandLine::getCommandSpec)
                .filter(spec -> !spec.usageMessage().hidden())
                .forEach(shown::add);
        int code = ManPageGenerator.generateManPage(
                pages.toFile(), null, new boolean[0], true, shown.toArray(CommandSpec[]::new));
        if (code != 0) {
            throw new IOException("the pages for man could not be written into " + pages);
        }
        Files.createDirectories(script.toAbsolutePath().getParent());
        Files.writeString(script, AutoComplete.bash("darkrim", line));
    }
}
