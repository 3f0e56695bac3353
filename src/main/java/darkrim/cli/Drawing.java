package darkrim.cli;

import darkrim.scene.Scene;
import darkrim.study.NoSuchPoint;
import darkrim.study.irradiance.LitLayout;

/** One kind of picture that {@link DrawCommand} makes: what must be sampled for it, and how it is drawn. */
sealed interface Drawing permits PartsDrawing, FlatMapDrawing, SightDrawing {
    /** Samples of once-reflected light for each one of direct light: most of them find nothing. */
    int REFLECTED = 16;

    /**
     * Refuses what a scene does not have, before any work.
     *
     * @throws NoSuchPoint saying why
     */
    void check(Scene scene) throws NoSuchPoint;

    /** What must be sampled. */
    LitLayout.Fineness fineness();

    /** Whether a whole check comes first; otherwise proofs alone, where the picture shows neither verdicts nor whole surfaces. */
    boolean judged();

    /** What it shows, one line. */
    String what(LitLayout lit) throws NoSuchPoint;

    /** The picture, a PNG file. */
    byte[] png(LitLayout lit) throws NoSuchPoint;
}
