package darkrim.present.review;

/** A picture in a review, with what it shows. */
final class Figure {
    private final byte[] png;
    private final String caption;

    /**
     * @param png the picture, a PNG file; not copied
     * @param caption what it shows
     */
    Figure(byte[] png, String caption) {
        this.png = png;
        this.caption = caption;
    }

    /** Writes it on a page as wide as its class says. */
    void write(Markup page, String size) {
        page.open("figure", "class", size).picture(png, "image/png", caption);
        page.open("figcaption").names(caption).close().close();
    }
}
