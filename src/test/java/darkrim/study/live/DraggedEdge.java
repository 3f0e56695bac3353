package darkrim.study.live;

import darkrim.diagnostic.UnusableInput;
import darkrim.study.LayoutFamily;
import java.nio.charset.StandardCharsets;

/**
 * A screen of 4 mm x 4 mm under a baffle whose edge is dragged, and a wall that throws light on the screen. The pupil is a square of 10 mm,
 * 100 mm above the screen.
 */
final class DraggedEdge {
    private static final double HALF_PUPIL = 5;
    private static final double PUPIL = 100;
    private static final double SCREEN = -2;
    /** Of the baffle above the screen, mm. */
    static final double HEIGHT = 10;

    static final String TEXT = """
            title: One edge
            dimensions:
              edge: -4 mm    # of the baffle
              far: {value: 60, tolerance: 0.1}
              at: edge + far / 2
              limit: 0.01
            finishes: {white: {diffuse: 0.8}}
            beam:
              pupil: {shape: rectangle, width: 10, height: 10, distance: 100}
            parts:
              screen: {kind: rectangle, width: 4, depth: 4}
              baffle: {kind: rectangle, width: far, depth: 60, at: [at, 0, 10]}
              wall: {kind: block, width: 2, depth: 20, height: 8, at: [-12, 0, 0], finish: white}
            requirements:
              dark: {surfaces: screen/front, direct: none}
              clean: {surfaces: screen/front, once_reflected: {at_most: limit}}
            """;

    private DraggedEdge() {}

    static LayoutFamily family() {
        try {
            return LayoutFamily.of("edge.yaml", TEXT.getBytes(StandardCharsets.UTF_8));
        } catch (UnusableInput unusable) {
            throw new IllegalStateException(unusable.findings().toString(), unusable);
        }
    }

    /** The margin of the screen, mm: square to the last line of light where it is dark, in its plane where it is lit. */
    static double margin(double edge) {
        // The line from the far side of the pupil, x = -5, past the edge goes farthest.
        double run = (edge + HALF_PUPIL) / (PUPIL - HEIGHT);
        double inPlane = SCREEN - (edge + run * HEIGHT);
        return inPlane > 0 ? inPlane / Math.hypot(1, run) : inPlane;
    }
}
