package darkrim.present;

import darkrim.study.advice.Blackness;
import java.util.List;

/** Of advice: how black each finish must be. */
final class BlacknessSection {
    private BlacknessSection() {}

    static void write(Page page, List<Blackness> blackness) {
        if (blackness.isEmpty()) {
            return;
        }
        page.heading("How black it must be, all else as it is now");
        Table table = new Table()
                .names("requirement")
                .names("finish")
                .numbers("reflectance")
                .words("fails above")
                .numbers("share of the light");
        for (Blackness each : blackness) {
            table.row(
                    Printable.of(each.requirement()),
                    Printable.of(each.finish()),
                    Figures.three(each.reflectance()),
                    words(each),
                    Figures.percent(Math.min(1, each.share())));
        }
        page.block(table.text());
    }

    private static String words(Blackness each) {
        if (each.anyWillDo()) {
            return "never, even at 1";
        }
        if (each.noneWillDo()) {
            return "fails whatever it is: other finishes alone give too much";
        }
        return Figures.three(each.most()) + "  (" + Figures.atLeast(each.low()) + " to "
                + (each.high() > 1 ? "1" : Figures.atMost(each.high())) + ")";
    }
}
