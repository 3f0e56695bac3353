package darkrim.present;

import darkrim.light.Estimate;
import darkrim.light.Reflector;
import darkrim.scene.Surface;
import darkrim.study.star.AvoidanceZone;
import darkrim.study.star.NamedStar;
import darkrim.study.star.StarCell;
import darkrim.study.star.StarPosition;
import darkrim.study.star.StarScanResult;
import darkrim.study.star.StarScanSettings;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;
import org.apache.commons.geometry.euclidean.twod.Vector2D;

/**
 * A star scan as plain text.
 *
 * @param version version of the program
 */
public record StarScanReport(String version) {
    private static final int PATHS = 5;
    private static final int AREAS = 12;

    /** The report, lines ended by a line feed. */
    public String of(StarScanResult result) {
        Page page = new Page();
        page.paragraph(LayoutWords.title(result.layout()));
        page.paragraph(sentence(result));
        page.space();
        page.line("file       " + LayoutWords.file(result.layout()));
        page.line("program    Darkrim " + version + ", seed " + result.seed());
        page.line("looked at  " + Figures.counted(result.positions(), "position") + ", "
                + Figures.count(
                        (long) result.settings().across() * result.settings().across())
                + " samples or more each, cells down to "
                + Figures.length(result.cells().stream()
                        .mapToDouble(cell -> cell.width())
                        .min()
                        .orElse(0))
                + " mm");
        page.line("region     x " + Figures.limit(result.region().fromX()) + " to "
                + Figures.limit(result.region().toX()) + " mm, y "
                + Figures.limit(result.region().fromY()) + " to "
                + Figures.limit(result.region().toY()) + " mm");
        brightest(page, result);
        zone(page, result.zone());
        named(page, result);
        notes(page, result);
        return page.text();
    }

    private static String sentence(StarScanResult result) {
        String level = Figures.limit(result.settings().level());
        String stopped = result.stopped() ? "The scan was stopped before its end. " : "";
        if (result.zone().areas().isEmpty()) {
            return stopped + "No star in the region sends more than " + level
                    + " of its flux to the receivers after one reflection, at the stated confidence for each position.";
        }
        return stopped + "Stars within " + Figures.three(result.zone().area())
                + " mm2 of the region send, or may send, more" + " than " + level
                + " of their flux to the receivers after one reflection.";
    }

    private static void brightest(Page page, StarScanResult result) {
        page.heading("The brightest position");
        Optional<StarPosition> found = result.brightest().filter(position -> position.share() > 0);
        if (found.isEmpty()) {
            page.paragraph("No once-reflected light was found.");
            return;
        }
        StarPosition at = found.get();
        page.paragraph("A star at x " + Figures.length(at.x()) + " mm, y " + Figures.length(at.y()) + " mm sends "
                + share(at.tally().total()) + " of its flux to the receivers after one reflection.");
        page.space();
        Table onto = new Table().names("onto").numbers("share of the flux").numbers("straight, its image");
        IntStream.range(0, result.receivers().size())
                .boxed()
                .sorted(Comparator.comparingDouble(
                        i -> -at.tally().once().get(i).mean()))
                .limit(PATHS)
                .forEach(i -> onto.row(
                        Printable.of(result.receivers().get(i).name()),
                        share(at.tally().once().get(i)),
                        Figures.three(at.tally().direct().get(i).mean())));
        page.block(onto.text());
        page.space();
        Table by = new Table().names("thrown by").words("part").numbers("share of the flux");
        at.tally().by().entrySet().stream()
                .sorted(Comparator.comparingDouble((Map.Entry<Reflector, Estimate> each) ->
                        -each.getValue().mean()))
                .limit(PATHS)
                .forEach(each -> by.row(
                        Printable.of(result.scene()
                                .surfaces()
                                .get(each.getKey().surface())
                                .name()),
                        each.getKey().part().word(),
                        share(each.getValue())));
        page.block(by.text());
    }

    private static void zone(Page page, AvoidanceZone zone) {
        if (zone.areas().isEmpty()) {
            return;
        }
        page.heading("Where no star of this brightness must stand");
        Table table = new Table()
                .numbers("piece")
                .numbers("x from, mm")
                .numbers("to")
                .numbers("y from, mm")
                .numbers("to")
                .numbers("mm2")
                .numbers("holes");
        for (int i = 0; i < Math.min(AREAS, zone.areas().size()); i++) {
            AvoidanceZone.Area area = zone.areas().get(i);
            List<Vector2D> outline = area.outline();
            table.row(
                    String.valueOf(i + 1),
                    Figures.length(
                            outline.stream().mapToDouble(c -> c.getX()).min().orElse(0)),
                    Figures.length(
                            outline.stream().mapToDouble(c -> c.getX()).max().orElse(0)),
                    Figures.length(
                            outline.stream().mapToDouble(c -> c.getY()).min().orElse(0)),
                    Figures.length(
                            outline.stream().mapToDouble(c -> c.getY()).max().orElse(0)),
                    Figures.three(area.size()),
                    String.valueOf(area.holes().size()));
        }
        page.block(table.text());
        if (zone.areas().stream().limit(AREAS).anyMatch(each -> !each.holes().isEmpty())) {
            page.line("A piece with a hole goes around it: stars may stand in the hole.");
        }
        if (zone.areas().size() > AREAS) {
            page.line((zone.areas().size() - AREAS) + " further pieces; --json holds all corners");
        }
    }

    private static void named(Page page, StarScanResult result) {
        if (result.named().isEmpty()) {
            return;
        }
        page.heading("Stars of the layout");
        Table table = new Table()
                .names("star")
                .numbers("x, mm")
                .numbers("y, mm")
                .numbers("share after one reflection")
                .numbers("W")
                .numbers("W/m2");
        double square = result.receivers().stream().mapToDouble(Surface::area).sum() * 1e-6;
        for (NamedStar each : result.named()) {
            Estimate share = each.tally().total();
            Optional<Double> flux = each.star().flux();
            double bound = result.bound().upper(each);
            table.row(
                    Printable.of(each.star().name()),
                    Figures.length(each.star().focus().getX()),
                    Figures.length(each.star().focus().getY()),
                    share.mean() > 0 ? share(share) : "< " + Figures.atMost(bound),
                    flux.map(watts -> power(share, watts, bound)).orElse("-"),
                    flux.map(watts -> power(share, watts / square, bound)).orElse("-"));
        }
        page.block(table.text());
    }

    /** A share in another unit; where no sample found any, what it is less than. */
    static String power(Estimate share, double unit, double bound) {
        return share.mean() > 0 ? Figures.three(unit * share.mean()) : "< " + Figures.atMost(unit * bound);
    }

    private static void notes(Page page, StarScanResult result) {
        page.heading("How sure this is");
        if (result.refined() && !result.stopped()) {
            page.paragraph(
                    "Every piece of every surface that could throw light has a position at which a star was aimed at it; elsewhere"
                            + " the map was made finer where it changes.");
        }
        if (result.cells().stream().anyMatch(StarCell::proved)) {
            page.paragraph("Where no light of a star can reach such a surface, a share of 0 is proved.");
        }
        page.paragraph("The zone is made of upper bounds: a cell belongs to it if, at a confidence of "
                + Figures.confidence(result.bound().confidence())
                + " for each position, its share may exceed the level; each cell is widened by half its side. This is"
                + " sampled, not proved.");
        if (result.beyond()) {
            page.paragraph(
                    "CAUTION: stars beyond the region might send light to the receivers too, and were not looked at;"
                            + " --within looks there.");
        }
        if (!result.refined()) {
            page.paragraph(
                    "CAUTION: the map was not made as fine as asked everywhere, and bands may have been missed, since "
                            + Figures.count(result.settings().mostPositions())
                            + " positions were not enough; coarse cells count in full. --within looks at less, --most-positions"
                            + " allows more.");
        }
        long beyond = result.beyondSamples();
        if (beyond > 0) {
            long across = result.acrossNeeded();
            page.paragraph("CAUTION: the level is so low that "
                    + Figures.count(result.settings().mostSamples())
                    + " samples, the most there were, cannot say of " + Figures.counted(beyond, "position")
                    + " that it is kept: they count as above it, whatever was found there."
                    + (across <= StarScanSettings.MOST_ACROSS ? " --samples " + across * across + " would do." : ""));
        }
        page.paragraph(
                "Light after more than one reflection, diffraction and what the optics in front of the pupil scatter"
                        + " are not in it.");
    }

    private static String share(Estimate estimate) {
        return Figures.withError(estimate.mean(), estimate.standardError());
    }
}
