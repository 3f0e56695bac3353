package darkrim.present;

import darkrim.geom.Outline;
import darkrim.geom.Polygon;
import darkrim.geom.Ring;
import darkrim.shadow.RimStep;
import java.util.List;

/** Outlines in the pupil's plane as SVG path data in mm: straight stretches and arcs, none of them approximated. */
final class PupilPaths {
    private PupilPaths() {}

    /** The pupil itself. */
    static String of(Outline outline) {
        if (outline instanceof Ring ring) {
            return circle(ring.radius(), 1) + (ring.hole() > 0 ? circle(ring.hole(), 0) : "");
        }
        StringBuilder path = new StringBuilder();
        ((Polygon) outline)
                .corners()
                .forEach(corner -> path.append(path.isEmpty() ? 'M' : 'L').append(pair(corner.getX(), corner.getY())));
        return path.append('Z').toString();
    }

    /** What is seen. */
    static String of(List<List<RimStep>> rims) {
        StringBuilder path = new StringBuilder();
        for (List<RimStep> rim : rims) {
            path.append('M').append(pair(rim.get(0).fromU(), rim.get(0).fromV()));
            for (RimStep step : rim) {
                if (step.isStraight()) {
                    path.append('L');
                } else {
                    // No arc is longer than a quarter: the smaller of the two arcs between its ends is meant.
                    path.append('A')
                            .append(pair(step.radius(), step.radius()))
                            .append(step.turn() > 0 ? " 0 0 1 " : " 0 0 0 ");
                }
                path.append(pair(step.toU(), step.toV()));
            }
            path.append("Z\n");
        }
        return path.toString().strip();
    }

    /** A circle from two arcs; holes run the other way round, so that areas along the path add up. */
    private static String circle(double radius, int sweep) {
        String arc = "A" + pair(radius, radius) + " 0 0 " + sweep + " ";
        return "M" + pair(radius, 0) + arc + pair(-radius, 0) + arc + pair(radius, 0) + "Z";
    }

    private static String pair(double first, double second) {
        return Svg.number(first) + "," + Svg.number(second);
    }
}
