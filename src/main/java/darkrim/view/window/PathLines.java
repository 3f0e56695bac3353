package darkrim.view.window;

/** Ways of light as lines in space. */
final class PathLines {
    /** Their colour: none of the scale's, and none of a verdict's. */
    static final int COLOUR = 0xff00838f;

    private PathLines() {}
}
