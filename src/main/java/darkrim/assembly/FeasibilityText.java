package darkrim.assembly;

import java.util.Locale;

/** Says what a feasibility line found. */
final class FeasibilityText {
    private FeasibilityText() {}

    static String of(Feasibility line) {
        SideFeasibility side = line.tightest();
        double t = line.placementError();
        return line.opening() + " over " + line.die() + ": "
                + (line.holds() ? "holds as drawn" : line.fails() ? "does not hold as drawn" : "is not judged in full")
                + ". "
                + with(
                        "With %.3f mm of placement error direct light lands up to %.3f mm beyond the last active pixel on %s, past"
                                + " %s; the die ends at %.3f mm. ",
                        t, side.overspill(), side.side().label(), side.edge().words(), side.room())
                + vignetting(line)
                + with(
                        "Rule: h <= N (d - 2t), here h = %.3f mm and %.2f (%.3f - 2 x %.3f) = %.3f mm: %s%s.",
                        side.edgeHeight(),
                        side.fNumber(),
                        side.room(),
                        t,
                        side.ruleLimit(),
                        side.ruleHolds() ? "some opening can do both" : "no opening can do both",
                        line.placementStated() ? "" : " (no placement error is stated, taken as 0)");
    }

    private static String vignetting(Feasibility line) {
        if (line.vignettingMargin().isEmpty()) {
            return "Whether every active pixel sees the whole pupil is not judged here, since the opening is not convex. ";
        }
        double margin = line.vignettingMargin().get();
        return margin >= 0
                ? with(
                        "Past this opening alone every active pixel still sees the whole pupil, with %.3f mm to spare. ",
                        margin)
                : with(
                        "Active corners lose part of the pupil: the opening is %.3f mm a side too small there. ",
                        -margin);
    }

    private static String with(String format, Object... values) {
        return String.format(Locale.ROOT, format, values);
    }
}
