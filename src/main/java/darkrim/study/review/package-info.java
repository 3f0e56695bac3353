/**
 * Everything that is looked at for the review of a layout.
 *
 * <p>In: a layout file. Out: a {@code Review}: the check with its margins, maps, sections, ways of light that are
 * drawn, what differs from another layout, and hashes of all that was read, as values. Main types: {@code
 * ReviewStudy} gathers, {@code SectionChoice} and {@code PathChoice} pick what is drawn.
 *
 * <p>It must not know: pages, pictures and text: present.review has these. docs/decisions/0036 has the reasons.
 * Begin to read: {@code ReviewStudy}.
 */
package darkrim.study.review;
