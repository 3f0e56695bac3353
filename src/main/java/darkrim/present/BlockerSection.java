package darkrim.present;

import darkrim.light.Estimate;
import darkrim.light.Obstruction;
import darkrim.light.Obstruction.Blocker;
import darkrim.study.PointSight;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** What hides the pupil from a point, the one that hides most first. */
final class BlockerSection {
    private static final Rows ROWS = new Rows(20);

    private BlockerSection() {}

    /**
     * Something that hides a share of the pupil.
     *
     * @param name what it is
     * @param share how much it hides
     */
    record Hidden(String name, Estimate share) {}

    static void write(Page page, PointSight sight) {
        page.heading("What hides the pupil (the first thing in the way, from the point outward; sampled)");
        List<Hidden> all = hidden(sight);
        if (all.isEmpty()) {
            page.paragraph(
                    SightWords.isWhole(sight.exactShare())
                            ? "Nothing."
                            : "No line of " + Figures.count(sight.obstruction().samples())
                                    + " was stopped: what is hidden is too little for them to find.");
            return;
        }
        Table table = new Table().names("surface").numbers("share of the pupil, %");
        for (Hidden one : ROWS.shown(all)) {
            table.row(one.name(), percent(one.share()));
        }
        page.block(table.text());
        if (ROWS.left(all) > 0) {
            page.line("and " + Figures.counted(ROWS.left(all), "more surface") + " that hide less each");
        }
    }

    /** All that hides something, largest share first. */
    static List<Hidden> hidden(PointSight sight) {
        Obstruction found = sight.obstruction();
        List<Hidden> all = new ArrayList<>();
        found.by().forEach((blocker, count) -> all.add(new Hidden(name(sight, blocker), found.share(count))));
        if (found.beyondField() > 0) {
            all.add(new Hidden("(beyond the field limit)", found.share(found.beyondField())));
        }
        if (found.behind() > 0) {
            all.add(new Hidden("(behind the surface itself)", found.share(found.behind())));
        }
        all.sort(Comparator.comparingDouble((Hidden one) -> one.share().mean()).reversed());
        return all;
    }

    private static String name(PointSight sight, Blocker blocker) {
        String name =
                Printable.of(sight.scene().surfaces().get(blocker.surface()).name());
        return blocker.fromInside() ? name + " (met from inside its part)" : name;
    }

    private static String percent(Estimate share) {
        return share.variance() == 0
                ? Figures.three(100 * share.mean())
                : Figures.withError(100 * share.mean(), 100 * share.standardError());
    }
}
