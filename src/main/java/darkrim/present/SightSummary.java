package darkrim.present;

import darkrim.study.PointSight;
import java.util.List;

/** What a point sees of the pupil in a few lines. */
public final class SightSummary {
    private static final int MOST = 4;

    private SightSummary() {}

    /** How much of the pupil is seen, exact, such as {@code sees 43.2 % of the pupil}. */
    public static String share(PointSight sight) {
        return SightWords.verdict(sight.exactShare());
    }

    /** What hides the rest, sampled, the one that hides most first, one a line; empty where nothing was found to hide it. */
    public static List<String> hidden(PointSight sight) {
        List<BlockerSection.Hidden> all = BlockerSection.hidden(sight);
        List<String> lines = new java.util.ArrayList<>();
        for (BlockerSection.Hidden one : all.subList(0, Math.min(MOST, all.size()))) {
            lines.add(SightWords.percent(one.share().mean()) + "  " + one.name());
        }
        if (all.size() > MOST) {
            lines.add("and " + Figures.counted(all.size() - MOST, "more surface") + " that hide less each");
        }
        return List.copyOf(lines);
    }
}
