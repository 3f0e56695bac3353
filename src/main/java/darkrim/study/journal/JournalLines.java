package darkrim.study.journal;

/**
 * How the entries of a journal are written, a line each, and read back to the last bit.
 *
 * @param <T> an entry
 */
public interface JournalLines<T> {
    /** Names of the columns, as a line with its end. */
    String header();

    /** An entry as a line with its end. */
    String line(T entry);

    /**
     * Reads a line back.
     *
     * @param line the line with its end
     * @param number which entry it is, from 1
     * @throws IllegalArgumentException if it is not that entry
     */
    T read(String line, int number);
}
