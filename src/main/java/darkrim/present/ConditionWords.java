package darkrim.present;

import darkrim.layout.Requirement;
import darkrim.layout.Requirement.LightClass;

/** What a requirement asks, in words. */
final class ConditionWords {
    private ConditionWords() {}

    /** Short, for a column: {@code direct none}, {@code reflected <= 2e-5}, {@code pupil >= 0.999}. */
    static String brief(Requirement.Condition condition) {
        if (condition instanceof Requirement.AtMost most) {
            String cells = most.per() == Requirement.Per.CELL ? " a cell" : "";
            return (most.light() == LightClass.DIRECT ? "direct" : "reflected") + " <= " + Figures.limit(most.limit())
                    + cells;
        }
        if (condition instanceof Requirement.PupilSeen seen) {
            return "pupil >= " + Figures.limit(seen.share());
        }
        return "direct none";
    }

    /** A sentence's end: {@code get no direct light}. */
    static String asked(Requirement.Condition condition) {
        if (condition instanceof Requirement.AtMost most) {
            String over = most.per() == Requirement.Per.CELL ? " on any cell of the map" : " on the mean";
            return "get at most " + Figures.limit(most.limit()) + " of "
                    + (most.light() == LightClass.DIRECT ? "direct" : "once-reflected") + " light" + over;
        }
        if (condition instanceof Requirement.PupilSeen seen) {
            return "see at least " + Figures.percent(seen.share()) + " of the pupil on the mean";
        }
        return "get no direct light";
    }
}
