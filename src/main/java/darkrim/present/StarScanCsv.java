package darkrim.present;

import darkrim.light.Estimate;
import darkrim.study.journal.CsvLine;
import darkrim.study.star.StarCell;
import darkrim.study.star.StarPosition;
import darkrim.study.star.StarScanResult;
import java.util.ArrayList;
import java.util.List;

/**
 * A star scan as comma-separated values (RFC 4180): a line for each position that was looked at and each cell that is
 * proved to send nothing.
 */
public final class StarScanCsv {
    private StarScanCsv() {}

    /** All positions, with a header that names the units. */
    public static String of(StarScanResult result) {
        StringBuilder text = new StringBuilder();
        List<String> head = new ArrayList<>(List.of(
                "x [mm]",
                "y [mm]",
                "cell x [mm]",
                "cell y [mm]",
                "cell width [mm]",
                "share",
                "standard error",
                "at most",
                "samples",
                "evidence"));
        result.receivers().forEach(each -> head.add("share onto " + each.name()));
        result.receivers().forEach(each -> head.add("image on " + each.name()));
        line(text, head);
        for (StarCell cell : result.cells()) {
            if (cell.proved()) {
                List<String> cells = new ArrayList<>(List.of(String.valueOf(cell.x()), String.valueOf(cell.y())));
                place(cells, cell);
                cells.addAll(List.of("0", "0", "0", "0", "proved"));
                result.receivers().forEach(each -> cells.add("0"));
                result.receivers().forEach(each -> cells.add(""));
                line(text, cells);
            }
            for (StarPosition at : cell.positions()) {
                List<String> cells = new ArrayList<>(List.of(String.valueOf(at.x()), String.valueOf(at.y())));
                place(cells, cell);
                Estimate total = at.tally().total();
                cells.add(String.valueOf(total.mean()));
                cells.add(String.valueOf(total.standardError()));
                cells.add(String.valueOf(result.bound().upper(at)));
                cells.add(String.valueOf(total.samples()));
                cells.add("sampled");
                at.tally().once().forEach(each -> cells.add(String.valueOf(each.mean())));
                at.tally().direct().forEach(each -> cells.add(String.valueOf(each.mean())));
                line(text, cells);
            }
        }
        return text.toString();
    }

    private static void place(List<String> cells, StarCell cell) {
        cells.add(String.valueOf(cell.x()));
        cells.add(String.valueOf(cell.y()));
        cells.add(String.valueOf(cell.width()));
    }

    private static void line(StringBuilder text, List<String> cells) {
        text.append(CsvLine.of(cells));
    }
}
