package darkrim.view.files;

/**
 * A picture.
 *
 * @param width width, pixels
 * @param height height, pixels
 * @param argb colours as {@code 0xaarrggbb}, row by row from above; not copied
 */
@SuppressWarnings("ArrayRecordComponent") // Passed on once, never compared.
public record Pixels(int width, int height, int[] argb) {}
