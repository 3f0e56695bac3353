package darkrim.present.map;

import darkrim.study.journal.CsvLine;
import java.util.List;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/** Maps as comma-separated values (RFC 4180): a line for each cell that is not beside the outline of its surface. */
public final class MapCsv {
    private MapCsv() {}

    /** All maps, with a header that names the units. */
    public static String of(List<LightMap> maps) {
        String unit = maps.isEmpty() || maps.get(0).unit().unit().isEmpty()
                ? ""
                : " [" + maps.get(0).unit().unit() + "]";
        StringBuilder text = new StringBuilder(CsvLine.of(List.of(
                "surface",
                "light",
                "column",
                "row",
                "x [mm]",
                "y [mm]",
                "z [mm]",
                "area [mm2]",
                (unit.isEmpty() ? "relative irradiance" : "irradiance") + unit,
                "standard error" + unit)));
        for (LightMap map : maps) {
            for (int row = 0; row < map.grid().rows(); row++) {
                for (int column = 0; column < map.grid().columns(); column++) {
                    int cell = column + map.grid().columns() * row;
                    if (!map.map().cells().isEmpty(cell)) {
                        text.append(line(map, column, row, map.map().cells().area(cell)));
                    }
                }
            }
        }
        return text.toString();
    }

    private static String line(LightMap map, int column, int row, double area) {
        Vector3D at = map.middle(column, row);
        return CsvLine.of(List.of(
                map.surface(),
                map.kind().words(),
                String.valueOf(column + 1),
                String.valueOf(row + 1),
                CsvLine.number(at.getX() + 0.0),
                CsvLine.number(at.getY() + 0.0),
                CsvLine.number(at.getZ() + 0.0),
                CsvLine.number(area),
                CsvLine.number(map.value(column, row)),
                CsvLine.number(map.error(column, row))));
    }
}
