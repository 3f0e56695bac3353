package darkrim.cli;

import darkrim.layout.form.Wording;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.function.Function;

/**
 * The files that a command writes, of which the ending tells the format.
 *
 * @param paths where they go
 * @param endings the endings that are known, in small letters with their dots
 * @param options tells the layout and whether files may be replaced
 */
record OutputFiles(List<Path> paths, List<String> endings, LayoutOptions options) {
    /** Copies the lists. */
    OutputFiles {
        paths = List.copyOf(paths);
        endings = List.copyOf(endings);
    }

    /** The ending of a name, in small letters with its dot. */
    static String ending(Path path) {
        String name = String.valueOf(path.getFileName()).toLowerCase(Locale.ROOT);
        return name.substring(Math.max(0, name.lastIndexOf('.')));
    }

    /** What is wrong with the names. */
    List<String> problems() {
        List<String> problems = new ArrayList<>();
        Set<Path> seen = new HashSet<>();
        for (Path path : paths) {
            if (!endings.contains(ending(path))) {
                problems.add("--output " + Wording.shortened(path.toString()) + ": expected a name that ends in "
                        + Wording.anyOf(endings));
            }
            if (!seen.add(OutputFile.place(path))) {
                problems.add("--output " + Wording.shortened(path.toString())
                        + ": this file is named twice, expected different files");
            }
        }
        return problems;
    }

    /** Whether all can be written; says why if not. */
    boolean areUsable(PrintWriter errors) {
        return OutputFile.areUsable(files(), List.of(options.layout()), errors);
    }

    /** The files. */
    List<OutputFile> files() {
        return paths.stream().map(this::file).toList();
    }

    /**
     * Writes all; false, said why, if one could not be written.
     *
     * @param content makes the bytes for an ending
     */
    boolean write(Function<String, byte[]> content, PrintWriter errors) {
        // All are made before the first is written: if one cannot be made, none is there.
        Map<Path, byte[]> made = new LinkedHashMap<>();
        paths.forEach(path -> made.put(path, content.apply(ending(path))));
        return write(made, errors);
    }

    /** Writes what was made; false, said why, if one could not be written. */
    boolean write(Map<Path, byte[]> made, PrintWriter errors) {
        for (Map.Entry<Path, byte[]> each : made.entrySet()) {
            if (!file(each.getKey()).write(each.getValue(), errors)) {
                return false;
            }
        }
        return true;
    }

    private OutputFile file(Path path) {
        return options.output("--output", path).orElseThrow();
    }
}
