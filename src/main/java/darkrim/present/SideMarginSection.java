package darkrim.present;

import darkrim.shadow.OpeningMargin;
import darkrim.shadow.OpeningMargin.Extent;
import darkrim.shadow.OpeningMargin.Room;
import darkrim.study.CheckResult;
import darkrim.study.CooldownResult;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;

/** How far each side and corner of each opening can be moved: as judged, as drawn warm where that differs, and with the placement error taken off. */
final class SideMarginSection {
    /** What a lower bound says once more was taken off than it holds. */
    private static final String UNKNOWN = "not known";

    private SideMarginSection() {}

    static void write(Prose page, CheckResult result) {
        List<OpeningMargin> openings = result.margins().openings();
        if (openings.isEmpty()) {
            page.paragraph("No opening has a side whose margin was looked for.");
            return;
        }
        page.heading("Sides and corners of openings (mm)");
        List<OpeningMargin> warm =
                result.cooldown().map(CooldownResult::warmOpenings).orElse(List.of());
        Optional<Double> error = result.layout().placementError();
        Table table = new Table().names("opening").words("moved");
        columns(table, "outward", !warm.isEmpty(), error.isPresent());
        table.names("then lit");
        columns(table, "inward", !warm.isEmpty(), error.isPresent());
        table.names("then cut off");
        String last = "";
        for (OpeningMargin each : openings) {
            Optional<OpeningMargin> drawn = warm.stream()
                    .filter(other -> other.opening().equals(each.opening())
                            && other.extent() == each.extent()
                            && other.sides().equals(each.sides()))
                    .findFirst();
            Row row = new Row(table.heads().size());
            row.add(each.opening().equals(last) ? "" : Printable.of(each.opening()));
            row.add(moved(each));
            row.add(each, drawn, OpeningMargin::outward, !warm.isEmpty(), error);
            row.add(each, drawn, OpeningMargin::inward, !warm.isEmpty(), error);
            table.row(row.cells);
            last = each.opening();
        }
        page.table(table);
        page.paragraph(
                "How far that side, or those two or all together, can be moved with land and bevel, all else as it is: outward"
                        + " before the next surface gets light that must not, inward before a detector loses part of the pupil."
                        + " Negative: how far the other way to mend it; outward counts what this alone can make dark."
                        + (warm.isEmpty() ? "" : " Cold: as judged; warm: in the shape as drawn.")
                        + error.map(each -> " Less t: with the placement error t = " + Figures.length(each)
                                        + " mm a side taken off; negative means that the worst placement breaks it, '"
                                        + UNKNOWN
                                        + "' that less than t is proved and the true room may be more.")
                                .orElse(" The layout states no placement error, so none is taken off."));
    }

    private static void columns(Table table, String way, boolean cooled, boolean placed) {
        table.numbers(cooled ? way + " cold" : way);
        if (cooled) {
            table.numbers("warm");
        }
        if (placed) {
            table.numbers("less t");
        }
    }

    private static String moved(OpeningMargin margin) {
        return margin.extent() == Extent.WHOLE ? "all" : String.join(" ", margin.sides());
    }

    /**
     * A room in words.
     *
     * @param room the room
     * @param taken what is taken off it, mm
     */
    static String words(Room room, double taken) {
        double left = room.millimetres() - taken;
        // A bound below zero says nothing: the true room may hold what is taken off, or not.
        return room.atLeast() && left < 0 ? UNKNOWN : (room.atLeast() ? ">= " : "") + Figures.margin(left);
    }

    /** The cells of a row while they are gathered. */
    private static final class Row {
        private final String[] cells;
        private int count;

        Row(int length) {
            cells = new String[length];
        }

        void add(String cell) {
            cells[count++] = cell;
        }

        void add(
                OpeningMargin judged,
                Optional<OpeningMargin> drawn,
                Function<OpeningMargin, Optional<Room>> way,
                boolean cooled,
                Optional<Double> error) {
            Optional<Room> room = way.apply(judged);
            add(words(room, 0));
            if (cooled) {
                add(words(drawn.flatMap(way), 0));
            }
            error.ifPresent(taken -> add(words(room, taken)));
            add(Printable.of(room.map(Room::surface).orElse("")));
        }

        private static String words(Optional<Room> room, double taken) {
            return room.map(each -> SideMarginSection.words(each, taken)).orElse("-");
        }
    }
}
