/**
 * The review file: what was found of a layout, with pictures, as one page for a browser and as a document to
 * print.
 *
 * <p>In: a {@code study.review.Review} and its {@code Imprint}. Out: a page of HTML that refers to nothing outside
 * itself, and a PDF. Main types: {@code ReviewPage}, {@code ReviewPdf}; {@code HtmlProse} is what the sections of
 * a report write on, so that page and terminal say the same.
 *
 * <p>It must not know: studies: whatever it shows is in the review already. Begin to read: {@code ReviewPage}.
 */
package darkrim.present.review;
