package darkrim.study.journal;

import darkrim.layout.form.Wording;
import darkrim.study.UnusableStudy;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.channels.OverlappingFileLockException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Collectors;

/**
 * The file that lets an interrupted study go on: a line that says which study it belongs to, the header, and a line for whatever was finished,
 * written one by one, each with its check sum ({@link SummedLine}). Whatever ends the program, all lines but a torn last one stay good.
 *
 * @param <T> what the study finishes one by one
 */
public final class StudyJournal<T> implements StudyRecord<T> {
    /** A larger file is none of ours. */
    private static final long LARGEST = 1L << 30;

    private static final String END = SummedLine.END;

    private final Path file;
    private final FileChannel channel;
    private final JournalLines<T> lines;
    private final List<T> found;

    private StudyJournal(Path file, FileChannel channel, JournalLines<T> lines, List<T> found) {
        this.file = file;
        this.channel = channel;
        this.lines = lines;
        this.found = List.copyOf(found);
    }

    /** Whether there is a journal of a study, whole enough to tell. */
    public static boolean exists(Path file, List<String> study) {
        // A pipe would be waited for.
        if (!Files.isRegularFile(file, LinkOption.NOFOLLOW_LINKS)) {
            return false;
        }
        try {
            byte[] own = CsvLine.of(study).getBytes(StandardCharsets.UTF_8);
            try (var stream = Files.newInputStream(file)) {
                return Arrays.equals(own, stream.readNBytes(own.length));
            }
        } catch (IOException none) {
            return false;
        }
    }

    /**
     * Opens the journal of a study, or begins one.
     *
     * @param file the file
     * @param study what tells this study from any other
     * @param lines writes and reads what was finished
     * @throws UnusableStudy if the file belongs to something else, is damaged, or another run is at work on it
     * @throws IOException if it cannot be read or written
     */
    public static <T> StudyJournal<T> open(Path file, List<String> study, JournalLines<T> lines)
            throws UnusableStudy, IOException {
        if (Files.exists(file, LinkOption.NOFOLLOW_LINKS) && !Files.isRegularFile(file, LinkOption.NOFOLLOW_LINKS)) {
            throw new UnusableStudy(shown(file) + " is not an ordinary file");
        }
        FileChannel channel =
                FileChannel.open(file, StandardOpenOption.CREATE, StandardOpenOption.READ, StandardOpenOption.WRITE);
        try {
            lock(file, channel);
            return opened(file, channel, study, lines);
        } catch (UnusableStudy | IOException refused) {
            channel.close();
            throw refused;
        }
    }

    private static void lock(Path file, FileChannel channel) throws UnusableStudy, IOException {
        boolean locked;
        try {
            locked = channel.tryLock() != null;
        } catch (OverlappingFileLockException own) {
            locked = false;
        }
        if (!locked) {
            throw new UnusableStudy("another run is at work on " + shown(file));
        }
    }

    private static <T> StudyJournal<T> opened(Path file, FileChannel channel, List<String> study, JournalLines<T> lines)
            throws UnusableStudy, IOException {
        String own = CsvLine.of(study);
        String head = own + SummedLine.header(lines.header());
        if (channel.size() > LARGEST) {
            throw new UnusableStudy(
                    shown(file) + " is larger than 1 GiB, more than is read back: remove it or name another output");
        }
        byte[] bytes = Files.readAllBytes(file);
        String text = new String(bytes, StandardCharsets.UTF_8);
        if (!text.startsWith(head)) {
            if (!head.startsWith(text)) {
                if (text.startsWith(own + lines.header())) {
                    throw new UnusableStudy(
                            shown(file)
                                    + " was begun by an older Darkrim, whose lines have no check sum: end it with that one, or remove it to begin anew");
                }
                throw text.startsWith(own) ? damaged(file, 2) : otherStudy(file, text, study);
            }
            channel.truncate(0);
            write(channel, head);
            return new StudyJournal<>(file, channel, lines, List.of());
        }
        int whole = text.lastIndexOf(END) + END.length();
        List<T> found = new ArrayList<>();
        int line = 2;
        for (int from = head.length(); from < whole; ) {
            int to = text.indexOf(END, from) + END.length();
            line++;
            try {
                found.add(lines.read(SummedLine.read(text.substring(from, to)), found.size() + 1));
            } catch (RuntimeException notAnEntry) {
                // Whatever a reader of text throws: the line was not written by us.
                throw damaged(file, line);
            }
            from = to;
        }
        channel.truncate(text.substring(0, whole).getBytes(StandardCharsets.UTF_8).length);
        channel.position(channel.size());
        return new StudyJournal<>(file, channel, lines, found);
    }

    private static UnusableStudy otherStudy(Path file, String text, List<String> study) {
        int end = text.indexOf(END);
        if (end < 0) {
            return foreign(file);
        }
        List<String> other;
        try {
            other = CsvLine.fields(text.substring(0, end));
        } catch (RuntimeException notOurs) {
            return foreign(file);
        }
        if (!other.get(0).equals(study.get(0))) {
            return foreign(file);
        }
        List<String> differing = new ArrayList<>(other);
        differing.removeAll(study);
        String how = differing.isEmpty()
                ? "fewer options"
                : differing.stream().limit(12).map(Wording::shortened).collect(Collectors.joining("; "));
        return new UnusableStudy(shown(file) + " belongs to another study (" + how
                + "): run that one to its end, remove the file, or name another output");
    }

    private static UnusableStudy foreign(Path file) {
        return new UnusableStudy(shown(file) + " does not belong to this study: remove it or name another output");
    }

    private static UnusableStudy damaged(Path file, int line) {
        return new UnusableStudy(shown(file) + " is damaged in line " + line + ": remove it to begin anew");
    }

    private static String shown(Path file) {
        return Wording.oneLine(file.toString());
    }

    private static void write(FileChannel channel, String text) throws IOException {
        ByteBuffer bytes = ByteBuffer.wrap(text.getBytes(StandardCharsets.UTF_8));
        while (bytes.hasRemaining()) {
            channel.write(bytes);
        }
    }

    @Override
    public List<T> found() {
        return found;
    }

    @Override
    public void append(T entry) throws IOException {
        write(channel, SummedLine.of(lines.line(entry)));
        channel.force(false);
    }

    /** Removes the file: the study has come to its end. */
    public void remove() throws IOException {
        channel.close();
        Files.deleteIfExists(file);
    }

    @Override
    public void close() throws IOException {
        channel.close();
    }
}
