/**
 * Files that keep what a study has finished, so that it can go on after an interruption, and files that appear whole
 * or not at all.
 *
 * <p>In: entries of a study, one by one as they are finished. Out: the same entries after an interruption, to the
 * last bit. Main types: {@code StudyJournal} is the file, {@code JournalLines} how a study writes and reads its
 * entries, {@code CsvLine} the one place that quotes and escapes CSV, {@code FreshFile} what a file is before it is whole.
 *
 * <p>It must not know: what the entries mean. Begin to read: {@code StudyJournal}.
 */
package darkrim.study.journal;
