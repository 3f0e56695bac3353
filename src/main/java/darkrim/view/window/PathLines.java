package darkrim.view.window;

import darkrim.study.way.Way;
import java.util.List;

/** Ways of light as lines in space. */
final class PathLines {
    /** Their colour: none of the scale's, and none of a verdict's. */
    static final int COLOUR = 0xff00838f;

    private PathLines() {}

    /** Six coordinates a line, mm: from the pupil to the reflecting point, and on to the receiver. */
    static double[] of(List<Way> ways) {
        double[] lines = new double[12 * ways.size()];
        for (int i = 0; i < ways.size(); i++) {
            PupilLines.put(lines, 12 * i, ways.get(i).onPupil());
            PupilLines.put(lines, 12 * i + 3, ways.get(i).reflected());
            PupilLines.put(lines, 12 * i + 6, ways.get(i).reflected());
            PupilLines.put(lines, 12 * i + 9, ways.get(i).arrives());
        }
        return lines;
    }
}
