/**
 * Results in words, tables and JSON. Reads results only and computes nothing that a verdict rests on.
 *
 * <p>In: results of studies. Out: text, HTML, tables and pictures as values. Main types: {@code TextReport} is
 * what a check prints, {@code Prose} what sections write on, {@code Table} a table of it, {@code Figures} how
 * numbers are written.
 *
 * <p>It must not know: how a result came about; it never measures. Begin to read: {@code TextReport}.
 */
package darkrim.present;
