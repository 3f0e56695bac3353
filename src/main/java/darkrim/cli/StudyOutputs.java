package darkrim.cli;

import darkrim.layout.form.Wording;
import darkrim.study.UnusableStudy;
import darkrim.study.journal.JournalLines;
import darkrim.study.journal.StudyJournal;
import darkrim.study.journal.StudyRecord;
import java.io.IOException;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;

/**
 * The files of a study: those that are written whole at its end, and the journal beside the first of them, which is there only until then.
 *
 * @param <R> the result of the study
 */
final class StudyOutputs<R> {
    private record Output<R>(String option, Path path, Function<R, byte[]> content) {}

    private final Optional<List<String>> study;
    private final List<Output<R>> outputs = new ArrayList<>();
    private boolean overwrite;

    /** Of a study that keeps no journal. */
    StudyOutputs() {
        study = Optional.empty();
    }

    /**
     * @param study what tells the study from any other
     */
    StudyOutputs(List<String> study) {
        this.study = Optional.of(List.copyOf(study));
    }

    /**
     * Adds a file.
     *
     * @param option the option that names it
     * @param path where it goes; null: nowhere
     * @param content makes its bytes
     */
    void add(String option, Path path, Function<R, byte[]> content) {
        if (path != null) {
            outputs.add(new Output<>(option, path, content));
        }
    }

    /** Adds a file of text, as {@link #add}. */
    void addText(String option, Path path, Function<R, String> content) {
        add(option, path, result -> content.apply(result).getBytes(StandardCharsets.UTF_8));
    }

    /** The journal; none where no file is written. */
    Optional<Path> journal() {
        return outputs.stream()
                .filter(first -> study.isPresent())
                .findFirst()
                .map(first -> first.path().resolveSibling(first.path().getFileName() + ".part"));
    }

    /**
     * Whether all files can be written; says why if not. What an earlier run of this very study was about to finish may be replaced.
     *
     * @param options tells the layout and whether files may be replaced
     * @param others files that are read beside the layout
     */
    boolean areUsable(LayoutOptions options, PrintWriter errors, Path... others) {
        overwrite = options.overwrite()
                || journal()
                        .filter(file -> StudyJournal.exists(file, study.orElseThrow()))
                        .isPresent();
        List<Path> inputs = new ArrayList<>(List.of(others));
        inputs.add(0, options.layout());
        boolean usable = OutputFile.areUsable(outputs.stream().map(this::file).toList(), inputs, errors);
        return journalIsNoOutput(errors) && usable;
    }

    /** Whether no file has the place of the journal, whose removal would take it away; says so if one has. */
    private boolean journalIsNoOutput(PrintWriter errors) {
        Optional<Path> journal = journal().map(OutputFile::place);
        List<OutputFile> taken = outputs.stream()
                .map(this::file)
                .filter(file -> journal.equals(Optional.of(OutputFile.place(file.path()))))
                .toList();
        taken.forEach(file -> errors.println("darkrim: " + file.option() + " " + file.shown()
                + ": has the name of the file that keeps what is finished until the study ends, expected another name;"
                + " nothing was done."));
        return taken.isEmpty();
    }

    private OutputFile file(Output<R> output) {
        return new OutputFile(output.option(), output.path(), overwrite);
    }

    /** Opens the journal. */
    <T> StudyRecord<T> open(JournalLines<T> lines) throws UnusableStudy, IOException {
        Optional<Path> journal = journal();
        return journal.isPresent() ? StudyJournal.open(journal.get(), study.orElseThrow(), lines) : StudyRecord.none();
    }

    /** Says where what was finished is kept until the study goes on. */
    void tellOfStop(String finished, PrintWriter errors) {
        journal()
                .ifPresent(file -> errors.println("darkrim: stopped after " + finished + ", which are kept in "
                        + Wording.oneLine(file.toString())
                        + "; the same command goes on from there."));
    }

    /** Writes all files; false, said why, if one could not be written. */
    boolean write(R result, PrintWriter errors) {
        for (Output<R> each : outputs) {
            if (!file(each).write(each.content().apply(result), errors)) {
                return false;
            }
        }
        return true;
    }

    /** Writes all files, then removes the journal; false, said why, if one could not be written: the journal stays then. */
    boolean write(R result, StudyRecord<?> record, PrintWriter errors) throws IOException {
        if (!write(result, errors)) {
            return false;
        }
        if (record instanceof StudyJournal<?> journal) {
            journal.remove();
        }
        return true;
    }
}
