package darkrim.cli;

import darkrim.present.table.DataTable;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Supplier;
import picocli.CommandLine.Option;

/** The files into which a command can write its table. */
final class TableOptions {
    @Option(
            names = "--csv",
            paramLabel = "FILE",
            description = "Also write the table into this file as comma-separated values.")
    private Path csv;

    @Option(names = "--json", paramLabel = "FILE", description = "Also write the table into this file as JSON.")
    private Path json;

    private List<OutputFile> files(boolean overwrite) {
        return files(List.of(), overwrite);
    }

    /**
     * The files that are asked for, after others that the command writes.
     *
     * @param others the others
     * @param overwrite whether they may be replaced
     */
    List<OutputFile> files(List<OutputFile> others, boolean overwrite) {
        List<OutputFile> files = new ArrayList<>(others);
        if (csv != null) {
            files.add(new OutputFile("--csv", csv, overwrite));
        }
        if (json != null) {
            files.add(new OutputFile("--json", json, overwrite));
        }
        return files;
    }

    /** Writes the files that are asked for; false, said why, if one could not be written. */
    boolean write(Supplier<DataTable> table, boolean overwrite, PrintWriter errors) {
        for (OutputFile file : files(overwrite)) {
            DataTable content = table.get();
            if (!file.write(file.option().equals("--csv") ? content.csv() : content.json(), errors)) {
                return false;
            }
        }
        return true;
    }
}
