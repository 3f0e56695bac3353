package darkrim.diagnostic;

/**
 * A place in a text file. It travels with every part and requirement up to the verdict, so that whoever reads a result finds the
 * line that caused it.
 *
 * @param file name of the file as the user gave it, or a word such as {@code <code>} for a layout built without a file
 * @param line line number, from 1; 0 where there is no line
 * @param column column number in code points, from 1; 0 where there is no column
 */
public record Place(String file, int line, int column) implements Comparable<Place> {
    /** The place of what was built in code, without a file. */
    public static final Place IN_CODE = new Place("<code>", 0, 0);

    @Override
    public int compareTo(Place other) {
        int byFile = file.compareTo(other.file);
        if (byFile != 0) {
            return byFile;
        }
        int byLine = Integer.compare(line, other.line);
        return byLine != 0 ? byLine : Integer.compare(column, other.column);
    }

    /** The form {@code file:line:column}; only the file where there is no line. */
    @Override
    public String toString() {
        return line == 0 ? file : file + ":" + line + ":" + column;
    }
}
