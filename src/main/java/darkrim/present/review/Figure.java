package darkrim.present.review;

/**
 * A picture in a review.
 *
 * @param png the picture, a PNG file
 * @param caption what it shows
 */
record Figure(byte[] png, String caption) {
    @Override
    public boolean equals(Object other) {
        return this == other;
    }

    @Override
    public int hashCode() {
        return System.identityHashCode(this);
    }
}
