package darkrim.present.table;

import static darkrim.present.table.DataTable.column;
import static darkrim.present.table.DataTable.row;

import darkrim.light.Estimate;
import darkrim.light.Obstruction;
import darkrim.study.PointSight;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/** What hides the pupil from a point, as a table. */
public final class PointTable {
    private PointTable() {}

    /** A row for each thing that hides some of the pupil, what hides most first. */
    public static DataTable of(PointSight sight, String version) {
        Obstruction found = sight.obstruction();
        List<List<Object>> rows = new ArrayList<>();
        found.by()
                .forEach((blocker, count) -> rows.add(line(
                        sight.scene().surfaces().get(blocker.surface()).name(),
                        blocker.fromInside() ? "surface, met from inside its part" : "surface",
                        found.share(count))));
        if (found.beyondField() > 0) {
            rows.add(line("", "beyond the field limit", found.share(found.beyondField())));
        }
        if (found.behind() > 0) {
            rows.add(line("", "behind the surface itself", found.share(found.behind())));
        }
        rows.sort(Comparator.comparingDouble((List<Object> each) -> (Double) each.get(2))
                .reversed());
        Map<String, Object> about = DataTable.about(sight.layout(), version);
        Vector3D at = sight.at().position();
        about.put("seed", sight.seed());
        about.put("surface", sight.at().surface().name());
        about.put("u", sight.at().u());
        about.put("v", sight.at().v());
        about.put("point_mm", List.of(at.getX() + 0.0, at.getY() + 0.0, at.getZ() + 0.0));
        about.put("share_of_pupil_exact", sight.exactShare());
        about.put("share_of_pupil_sampled", sight.share().mean());
        about.put("relative_irradiance_exact", sight.exactIrradiance());
        about.put("samples", found.samples());
        about.put("stopped", sight.stopped());
        return new DataTable(
                "what hides the pupil",
                about,
                List.of(column("surface"), column("what"), column("share of the pupil"), column("standard error")),
                rows);
    }

    private static List<Object> line(String surface, String what, Estimate share) {
        return row(surface, what, share.mean(), share.standardError());
    }
}
