package darkrim.present;

/** Something that a report is written on from top to bottom: headings, paragraphs, lines and tables. Every text may hold words of a layout. */
public interface Prose {
    /** A heading. */
    void heading(String words);

    /** A line as it is. */
    void line(String words);

    /** A line of space. */
    void space();

    /** Words wrapped to the width that there is. */
    default void paragraph(String words) {
        paragraph("", "", words);
    }

    /** Words wrapped to the width that there is; the first line begins with one text, those that follow with another. */
    void paragraph(String first, String next, String words);

    /** A table. */
    void table(Table table);

    /** How a reader gets to see a long list whole, a few words. */
    String whole();
}
