package darkrim.cli;

import darkrim.study.vanes.VaneText;
import java.util.ArrayList;
import java.util.List;

/**
 * Whether the lengths and angles of a {@link PlaceVanesCommand} go together; absent ones are null. Diameters and lengths in mm.
 *
 * @param wall inner diameter of the wall, one or two
 * @param edge diameter of the edges, one or two, or null
 * @param depth depth of the vanes, or null
 * @param length length of the wall
 * @param base height of its base
 * @param detector diameter of the detector
 * @param entrance diameter of the entrance
 * @param offAxis angle, degrees, or null
 * @param first height of the first vane, or null
 * @param clearance radial clearance
 */
record VaneOptionCheck(
        List<Double> wall,
        List<Double> edge,
        Double depth,
        double length,
        double base,
        double detector,
        double entrance,
        Double offAxis,
        Double first,
        double clearance) {
    /** How far the edges stand out: one of these must be given. */
    static final List<String> EDGE = List.of("--edge-diameter D", "--depth T");
    /** From where on the wall is to be hidden: one of these must be given. */
    static final List<String> REACH = List.of("--off-axis ANGLE", "--first Z");

    /** Everything that is wrong, one sentence each. */
    List<String> problems() {
        List<String> problems = new ArrayList<>();
        if (wall.size() > 2) {
            problems.add("--wall-diameter: expected one diameter or two, got " + wall.size());
        }
        if (edge != null && edge.size() > 2) {
            problems.add("--edge-diameter: expected one diameter or two, got " + edge.size());
        }
        addChoice(EDGE, edge, depth, problems);
        addChoice(REACH, offAxis, first, problems);
        if (offAxis != null && offAxis >= 90) {
            problems.add("--off-axis: expected an angle below 90 degrees, got " + number(offAxis));
        }
        addLength("--length", length, problems);
        addLength("--detector-diameter", detector, problems);
        addLength("--entrance-diameter", entrance, problems);
        if (first != null && !(first > base && first < base + length)) {
            problems.add("--first: " + number(first) + " mm lies outside the wall, which goes from " + number(base)
                    + " to " + number(base + length) + " mm");
        }
        if (problems.isEmpty()) {
            addWidths(problems);
        }
        return problems;
    }

    /** Of two options that say the same in two ways exactly one must be given. */
    private static void addChoice(List<String> choice, Object given, Object otherGiven, List<String> problems) {
        if (given == null && otherGiven == null) {
            problems.add(WrongUse.missing(choice));
        } else if (given != null && otherGiven != null) {
            problems.add(String.join(" and ", choice) + " exclude each other, expected one of them");
        }
    }

    private static void addLength(String option, double length, List<String> problems) {
        if (!(length > 0)) {
            problems.add(option + ": expected more than 0 mm, got " + number(length));
        }
    }

    private void addWidths(List<String> problems) {
        double[] ends = {wall.get(0), wall.get(wall.size() - 1)};
        String[] places = {"at the base", "at the entrance"};
        for (int i = 0; i < 2; i++) {
            double narrow = depth == null ? edge.get(i == 0 ? 0 : edge.size() - 1) : ends[i] - 2 * depth;
            if (!(narrow > 0)) {
                problems.add("the vanes leave no opening " + places[i] + ", expected less depth");
            } else if (!(narrow + 2 * clearance < ends[i])) {
                problems.add("the edges, " + number(narrow) + " mm wide " + places[i]
                        + ", do not stand out from the wall of " + number(ends[i])
                        + " mm by more than the clearance, expected narrower edges");
            }
        }
        if (entrance > ends[1]) {
            problems.add("--entrance-diameter: " + number(entrance) + " mm is wider than the wall there, "
                    + number(ends[1]) + " mm");
        }
        // Below the base the wall is taken to go on: a detector wider than it there would see the wall from outside.
        double atDetector = ends[0] - (ends[1] - ends[0]) * base / length;
        if (detector + 2 * clearance > Math.min(ends[0], atDetector)) {
            problems.add("--detector-diameter: " + number(detector)
                    + " mm and the clearance are wider than the wall, drawn on to the detector, "
                    + number(Math.min(ends[0], atDetector)) + " mm");
        }
    }

    private static String number(double value) {
        return VaneText.number(value);
    }
}
