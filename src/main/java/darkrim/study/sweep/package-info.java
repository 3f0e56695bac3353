/**
 * Many points over ranges of named dimensions, where requirements change sides, and what lets an interrupted study
 * go on.
 *
 * <p>In: a layout file and {@code Variation}s of its dimensions. Out: a {@code SweepResult}: every {@code
 * SweepPoint} with its requirements, and the {@code Turn}s where one changes sides. Main types: {@code Design}
 * says which points, {@code SweepStudy} checks them and closes in, {@code SweepTable} makes lines of CSV, by which
 * a study goes on after an interruption (docs/decisions/0011).
 *
 * <p>It must not know: charts, and on which machine a point is worked out. Begin to read: {@code SweepStudy}.
 */
package darkrim.study.sweep;
