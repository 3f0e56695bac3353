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
        List<OutputFile> files = new ArrayList<>();
        if (csv != null) {
            files.add(new OutputFile("--csv", csv, overwrite));
        }
        if (json != null) {
            files.add(new OutputFile("--json", json, overwrite));
        }
        return files;
    }

    /**
     * Whether the files can be written; says why if not.
     *
     * @param input the file that is read, which must not be written over
     */
    boolean areUsable(Path input, boolean overwrite, PrintWriter errors) {
        if (csv != null
                && json != null
                && csv.toAbsolutePath().normalize().equals(json.toAbsolutePath().normalize())) {
            errors.println("darkrim: --csv and --json name the same file " + csv + ", expected two files.");
            return false;
        }
        return files(overwrite).stream().allMatch(file -> file.isUsable(input, errors));
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
