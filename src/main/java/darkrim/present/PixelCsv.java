package darkrim.present;

import darkrim.light.Estimate;
import darkrim.study.journal.CsvLine;
import darkrim.study.pixel.PixelSight;
import darkrim.study.pixel.PixelView;
import darkrim.study.pixel.SeenThing;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** What pixels see as comma-separated values (RFC 4180): a line for each point and thing that it sees. */
public final class PixelCsv {
    private static final List<String> HEADER = List.of(
            "point",
            "chosen",
            "seen",
            "kind",
            "rays",
            "projected solid angle [sr]",
            "standard error [sr]",
            "struck [sr]",
            "standard error of struck [sr]",
            "once reflected [relative irradiance]",
            "standard error of once reflected",
            "temperature [K]",
            "emitted [photons/s]",
            "standard error of emitted [photons/s]",
            "emitted [W]",
            "reflected [photons/s]",
            "standard error of reflected [photons/s]",
            "reflected [W]",
            "area [mm2]");

    private PixelCsv() {}

    /** All points, with a header that names the units. Cells about warm light are empty where the layout says nothing of temperatures. */
    public static String of(PixelView view) {
        StringBuilder text = new StringBuilder(CsvLine.of(HEADER));
        for (PixelSight sight : view.sights()) {
            for (SeenThing thing : sight.things()) {
                text.append(CsvLine.of(cells(view, sight, thing)));
            }
        }
        return text.toString();
    }

    private static List<String> cells(PixelView view, PixelSight sight, SeenThing thing) {
        List<String> cells = new ArrayList<>(List.of(
                sight.place().point().text(),
                sight.place().why().words(),
                thing.name(),
                thing.kind().name().toLowerCase(Locale.ROOT),
                String.valueOf(thing.rays())));
        add(cells, thing.seen());
        add(cells, thing.lit());
        add(cells, thing.onceReflected());
        if (view.warmth().isPresent()) {
            cells.add(CsvLine.number(thing.kelvin()));
            add(cells, thing.emitted().photons());
            cells.add(CsvLine.number(thing.emitted().watts().mean()));
            add(cells, thing.reflected().photons());
            cells.add(CsvLine.number(thing.reflected().watts().mean()));
        } else {
            cells.addAll(List.of("", "", "", "", "", "", ""));
        }
        cells.add(CsvLine.number(sight.area()));
        return cells;
    }

    private static void add(List<String> cells, Estimate estimate) {
        cells.add(CsvLine.number(estimate.mean()));
        cells.add(CsvLine.number(estimate.standardError()));
    }
}
