package darkrim.present;

import darkrim.layout.Requirement;
import darkrim.layout.Requirement.LightClass;

/** What a requirement asks, in words. */
public final class ConditionWords {
    private ConditionWords() {}

    /** Short, for a column: {@code direct none}, {@code reflected <= 2e-5}, {@code pupil >= 0.999}. */
    public static String brief(Requirement.Condition condition) {
        if (condition instanceof Requirement.AtMost most) {
            String light = most.light() == LightClass.DIRECT ? "direct" : "reflected";
            return light
                    + (most.limit() == 0 ? " none" : " <= " + Figures.limit(most.limit()))
                    + (perCell(most) ? " a cell" : "");
        }
        if (condition instanceof Requirement.PupilSeen seen) {
            return "pupil >= " + Figures.limit(seen.share());
        }
        if (condition instanceof Requirement.Clearance clearance) {
            return "apart >= " + Figures.limit(clearance.atLeast()) + " mm";
        }
        return "direct none";
    }

    /** After many surfaces, or {@code should}: {@code get no direct light}. */
    static String asked(Requirement.Condition condition) {
        return verb(condition) + object(condition);
    }

    /** After one surface: {@code gets no direct light}. */
    static String found(Requirement.Condition condition) {
        return verb(condition) + "s" + object(condition);
    }

    private static String verb(Requirement.Condition condition) {
        return condition instanceof Requirement.Clearance
                ? "keep"
                : condition instanceof Requirement.PupilSeen ? "see" : "get";
    }

    private static String object(Requirement.Condition condition) {
        if (condition instanceof Requirement.AtMost most) {
            String light = (most.light() == LightClass.DIRECT ? "direct" : "once-reflected") + " light";
            return most.limit() == 0
                    ? " no " + light
                    : " at most " + Figures.limit(most.limit()) + " of " + light + ", the mean over the "
                            + (perCell(most) ? "cell" : "surface");
        }
        if (condition instanceof Requirement.PupilSeen seen) {
            return " at least " + Figures.limit(seen.share()) + " of the pupil from every point";
        }
        if (condition instanceof Requirement.Clearance clearance) {
            return " apart by at least " + Figures.limit(clearance.atLeast()) + " mm";
        }
        return " no direct light";
    }

    private static boolean perCell(Requirement.AtMost most) {
        return most.per() == Requirement.Per.CELL;
    }
}
