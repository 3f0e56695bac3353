package darkrim.cli;

import darkrim.layout.form.Wording;
import darkrim.study.journal.FreshFile;
import java.io.IOException;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.CopyOption;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * A file that will be written whole or not at all: the text goes into a new file beside it, which then takes its name.
 *
 * @param option the option that names it, for messages
 * @param path where it goes
 * @param overwrite whether it may take the place of an ordinary file
 */
record OutputFile(String option, Path path, boolean overwrite) {
    /** Longer files are no layouts, bytes. */
    private static final long LARGEST_LAYOUT = 16 << 20;

    /**
     * Whether the file can be written; says why if it cannot. Asked before the work, so that none is in vain.
     *
     * @param input the file that is read, which must not be written over
     * @param errors where to say it
     */
    boolean isUsable(Path input, PrintWriter errors) {
        return areUsable(List.of(this), List.of(input), errors);
    }

    /**
     * Whether files can be written beside each other; says why if they cannot.
     *
     * @param files the files of one command
     * @param inputs the files that are read, which must not be written over
     * @param errors where to say it
     */
    static boolean areUsable(List<OutputFile> files, List<Path> inputs, PrintWriter errors) {
        List<String> problems = new ArrayList<>();
        for (int i = 0; i < files.size(); i++) {
            OutputFile file = files.get(i);
            files.subList(0, i).stream()
                    .filter(earlier -> !earlier.option().equals(file.option())
                            && place(earlier.path()).equals(place(file.path())))
                    .map(earlier -> earlier.option() + " and " + file.option() + " name the same file "
                            + earlier.shown() + ", expected two files")
                    .forEach(problems::add);
            inputs.stream()
                    .flatMap(input -> file.problem(input).stream())
                    .findFirst()
                    .ifPresent(why -> problems.add(file.option() + " " + file.shown() + ": " + why));
        }
        problems.forEach(problem -> errors.println("darkrim: " + problem + "; nothing was done."));
        return problems.isEmpty();
    }

    /**
     * Why the file cannot be written, if it cannot.
     *
     * @param input the file that is read, which must not be written over
     */
    Optional<String> problem(Path input) {
        try {
            if (path.toString().equals("-")) {
                return Optional.of("standard output holds the report, expected a file name");
            }
            if (Files.isDirectory(path)) {
                return Optional.of("is a folder, expected a file name");
            }
            if (Files.exists(path, LinkOption.NOFOLLOW_LINKS)) {
                if (Files.exists(input) && Files.exists(path) && Files.isSameFile(path, input)) {
                    return Optional.of("is the layout file itself and would be lost");
                }
                if (!Files.isRegularFile(path, LinkOption.NOFOLLOW_LINKS)) {
                    return Optional.of("is not an ordinary file");
                }
                if (!overwrite) {
                    return Optional.of("there is such a file already; --overwrite replaces it");
                }
                if (isNamedIn(input)) {
                    return Optional.of("is a file that "
                            + Wording.oneLine(input.getFileName().toString()) + " reads, or has the name of one;"
                            + " expected another name");
                }
            }
            if (!Files.isDirectory(folder())) {
                return Optional.of("there is no folder " + Wording.oneLine(folder().toString()));
            }
            Files.delete(FreshFile.beside(path));
            return Optional.empty();
        } catch (IOException refused) {
            return Optional.of("no file can be made in the folder " + Wording.oneLine(folder().toString()));
        }
    }

    /** Whether the layout names a file called so, such as a mesh: to replace it would change what the layout means. */
    private boolean isNamedIn(Path input) throws IOException {
        if (!Files.isRegularFile(input) || Files.size(input) > LARGEST_LAYOUT) {
            return false;
        }
        String text = new String(Files.readAllBytes(input), StandardCharsets.UTF_8);
        String name = path.getFileName().toString();
        for (int at = text.indexOf(name); at >= 0; at = text.indexOf(name, at + 1)) {
            if (at == 0 || " \t\n:'\"[{,/\\".indexOf(text.charAt(at - 1)) >= 0) {
                return true;
            }
        }
        return false;
    }

    /**
     * Writes the file.
     *
     * @throws IOException if it could not be written; nothing is left behind then
     */
    void write(String text) throws IOException {
        write(text.getBytes(StandardCharsets.UTF_8));
    }

    private void write(byte[] content) throws IOException {
        Path fresh = FreshFile.beside(path);
        boolean moved = false;
        try {
            Files.write(fresh, content, StandardOpenOption.WRITE, StandardOpenOption.TRUNCATE_EXISTING);
            CopyOption[] how = overwrite
                    ? new CopyOption[] {StandardCopyOption.REPLACE_EXISTING, StandardCopyOption.ATOMIC_MOVE}
                    : new CopyOption[] {};
            if (!overwrite && Files.exists(path, LinkOption.NOFOLLOW_LINKS)) {
                throw new FileAlreadyExistsException(path.toString());
            }
            Files.move(fresh, path, how);
            moved = true;
        } finally {
            // Once it is moved, another writer may have made its own of that name.
            if (!moved) {
                Files.deleteIfExists(fresh);
            }
        }
    }

    /**
     * Writes the file, or says why it could not be written.
     *
     * @param text what to write
     * @param errors where to say it
     * @return whether it was written
     */
    boolean write(String text, PrintWriter errors) {
        return write(text.getBytes(StandardCharsets.UTF_8), errors);
    }

    /**
     * Writes the file, or says why it could not be written.
     *
     * @param content what to write
     * @param errors where to say it
     * @return whether it was written
     */
    boolean write(byte[] content, PrintWriter errors) {
        try {
            write(content);
            return true;
        } catch (IOException problem) {
            errors.println("darkrim: " + option + " " + shown() + ": the file could not be written: " + words(problem));
            return false;
        }
    }

    private String words(IOException problem) {
        boolean there = Files.exists(path, LinkOption.NOFOLLOW_LINKS);
        if (there && problem instanceof FileAlreadyExistsException) {
            return "there is such a file by now; it was left as it is.";
        }
        return problem.getClass().getSimpleName() + " " + Wording.oneLine(String.valueOf(problem.getMessage()))
                + (there ? "; the file of that name was left as it is." : "; there is no such file now.");
    }

    /** Its name on one line. */
    String shown() {
        return Wording.oneLine(path.toString());
    }

    /** Where a file is or would be: the same for all names of its folder, but for a folder that is not there. */
    static Path place(Path file) {
        Path whole = file.toAbsolutePath();
        try {
            if (whole.getParent() != null) {
                return whole.getParent().toRealPath().resolve(whole.getFileName());
            }
        } catch (IOException noFolder) {
            return whole.normalize();
        }
        return whole;
    }

    private Path folder() {
        return path.toAbsolutePath().normalize().getParent();
    }
}
