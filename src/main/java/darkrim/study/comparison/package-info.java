/**
 * What one layout does to another.
 *
 * <p>In: two layout files. Out: a {@code Comparison}: what was {@code Changed} in the files, and what that did to
 * requirements, surfaces and light paths. Main types: {@code ComparisonStudy} checks both with the same random
 * numbers, {@code LayoutDifferences} finds what differs in the files, {@code PathLedger} matches light paths.
 *
 * <p>It must not know: which of the two is better: it says what fails in each. Begin to read: {@code
 * ComparisonStudy}.
 */
package darkrim.study.comparison;
