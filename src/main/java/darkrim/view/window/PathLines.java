package darkrim.view.window;

import darkrim.study.way.Way;
import darkrim.view.look.Look;
import darkrim.view.work.Content;
import darkrim.view.work.Judged;
import darkrim.view.work.SurfaceFacts;
import java.util.List;

/** Ways of light as lines in space. */
final class PathLines {
    /** Their colour: none of the scale's, and none of a verdict's. */
    static final int COLOUR = 0xff00838f;

    private PathLines() {}

    /**
     * Lines from the pupil by the reflecting points to the receiver, and straight rays from the pupil.
     *
     * @return six coordinates a line, mm
     */
    static double[] of(List<Way> ways, List<Judged.Line> straight) {
        double[] lines = new double[12 * ways.size() + 6 * straight.size()];
        for (int i = 0; i < ways.size(); i++) {
            PupilLines.put(lines, 12 * i, ways.get(i).onPupil());
            PupilLines.put(lines, 12 * i + 3, ways.get(i).reflected());
            PupilLines.put(lines, 12 * i + 6, ways.get(i).reflected());
            PupilLines.put(lines, 12 * i + 9, ways.get(i).arrives());
        }
        for (int i = 0; i < straight.size(); i++) {
            PupilLines.put(lines, 12 * ways.size() + 6 * i, straight.get(i).from());
            PupilLines.put(lines, 12 * ways.size() + 6 * i + 3, straight.get(i).to());
        }
        return lines;
    }

    /** The rays that are known to reach the selected surface straight from the pupil, or from the source that is shown. */
    static List<Judged.Line> straight(Look look, Content content) {
        return look.selected()
                .flatMap(name -> content.light(look.source(), name))
                .map(SurfaceFacts::rays)
                .orElse(List.of());
    }
}
