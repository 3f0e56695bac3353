package darkrim.study.comparison;

import darkrim.layout.Dimension;
import darkrim.layout.Distribution;
import darkrim.layout.Layout;
import darkrim.layout.Part;
import darkrim.layout.PlacementTolerance;
import darkrim.layout.Tolerance;
import darkrim.layout.form.Wording;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** Finds the tolerances in which dimensions and parts of two layouts differ that are in both. A check looks only at what is drawn. */
final class ToleranceDifferences {
    private static final List<String> AXES = List.of("x", "y", "z");

    private ToleranceDifferences() {}

    /**
     * @param found takes what differs
     * @param before the first layout
     * @param after the second
     */
    static void find(SettingDifferences found, Layout before, Layout after) {
        for (Dimension one : before.dimensions().values()) {
            Dimension two = after.dimensions().get(one.name());
            if (two != null) {
                String unit = switch (two.kind()) {
                    case LENGTH -> " mm";
                    case ANGLE -> " deg";
                    case NUMBER -> "";
                };
                found.compareOptional(
                        "tolerance of " + one.name(), one.tolerance(), two.tolerance(), each -> words(each, unit));
            }
        }
        for (Part one : before.parts()) {
            after.parts().stream()
                    .filter(two -> two.name().equals(one.name()))
                    .findFirst()
                    .ifPresent(two -> found.compareOptional(
                            "placement tolerance of " + one.name(),
                            one.tolerance(),
                            two.tolerance(),
                            ToleranceDifferences::words));
        }
    }

    private static String words(PlacementTolerance tolerance) {
        List<String> words = new ArrayList<>();
        add(words, "shift ", tolerance.shift(), " mm");
        add(words, "tilt ", tolerance.tilt(), " deg");
        return words.isEmpty() ? "nothing" : String.join("; ", words);
    }

    private static void add(List<String> words, String what, List<Tolerance> axes, String unit) {
        for (int i = 0; i < axes.size(); i++) {
            if (!axes.get(i).isNothing()) {
                words.add(what + AXES.get(i) + " " + words(axes.get(i), unit));
            }
        }
    }

    private static String words(Tolerance tolerance, String unit) {
        String size = tolerance.minus() == tolerance.plus()
                ? "+-" + Wording.number(tolerance.plus())
                : "-" + Wording.number(tolerance.minus()) + " +" + Wording.number(tolerance.plus());
        return size + unit + ", "
                + tolerance.distribution().name().toLowerCase(Locale.ROOT)
                + (tolerance.distribution() == Distribution.NORMAL
                        ? ", end at " + Wording.number(tolerance.sigmas()) + " sigma"
                        : "");
    }
}
