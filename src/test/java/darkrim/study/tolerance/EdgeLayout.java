package darkrim.study.tolerance;

import darkrim.diagnostic.UnusableInput;
import darkrim.study.LayoutFamily;
import java.nio.charset.StandardCharsets;

/**
 * A screen in the shadow of one edge, so that everything has a closed form. The pupil is a rectangle from x = -5 to 5 at a height of 100;
 * the edge of the baffle stands at x = e and at height h and covers all that is at larger x; the screen begins at x = -2 at height 0.
 */
public final class EdgeLayout {
    private static final double PUPIL = 100;
    private static final double HALF_PUPIL = 5;
    private static final double SCREEN = -2;
    /** With the edge at height 10 here and beyond light falls on the screen: e + (e + 5) / 9 = -2. */
    static final double LIMIT = -2.3;

    private EdgeLayout() {}

    /** With dimensions of which some must define {@code edge}, and further keys of the baffle. */
    public static LayoutFamily of(String dimensions, String keysOfBaffle) {
        String text = """
                title: One edge
                dimensions:
                %s
                beam:
                  pupil: {shape: rectangle, width: 10, height: 10, distance: 100}
                parts:
                  screen: {kind: rectangle, width: 4, depth: 4}
                  baffle:
                    kind: rectangle
                    width: 60
                    depth: 60
                    at: [edge + 30, 0, height]
                %s
                requirements:
                  dark: {surfaces: screen/front, direct: none}
                """.formatted(dimensions.indent(2), keysOfBaffle.indent(4));
        try {
            return LayoutFamily.of("edge.yaml", text.getBytes(StandardCharsets.UTF_8));
        } catch (UnusableInput unusable) {
            throw new IllegalStateException(unusable.findings().toString(), unusable);
        }
    }

    /** By how much the light stops short of the screen, mm in the plane of the screen; negative where it is lit. */
    static double inPlane(double edge, double height) {
        // The line from the far side of the pupil, x = -5, past the edge goes farthest.
        return SCREEN - (edge + (edge + HALF_PUPIL) * height / (PUPIL - height));
    }

    /** The margin: square to that line where the screen is dark, in the plane where it is lit. */
    static double margin(double edge, double height) {
        double run = (edge + HALF_PUPIL) / (PUPIL - height);
        double inPlane = inPlane(edge, height);
        return inPlane > 0 ? inPlane / Math.hypot(1, run) : inPlane;
    }
}
