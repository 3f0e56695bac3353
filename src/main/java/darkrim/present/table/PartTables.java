package darkrim.present.table;

import static darkrim.present.table.DataTable.column;
import static darkrim.present.table.DataTable.row;

import darkrim.present.ListedFinish;
import darkrim.study.FaceListing;
import darkrim.study.vanes.VaneConstruction;
import darkrim.study.vanes.VaneProof;
import darkrim.study.vanes.VaneTask;
import darkrim.study.vanes.VaneText;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/** Tables of what parts are made of: faces, finishes, vanes. */
public final class PartTables {
    private static final double[] ANGLES = {0, 45, 60, 80};

    private PartTables() {}

    /** The faces of parts; a face that goes around faces nowhere. */
    public static DataTable faces(FaceListing listing, String version) {
        List<List<Object>> rows = new ArrayList<>();
        listing.faces()
                .forEach((part, faces) -> faces.forEach(face -> {
                    Vector3D normal = face.normal().orElse(null);
                    List<Object> line = row(part.name(), face.name(), face.area());
                    add(line, face.centre());
                    add(line, normal);
                    add(line, face.low());
                    add(line, face.high());
                    rows.add(line);
                }));
        List<DataTable.Column> columns =
                new ArrayList<>(List.of(column("part"), column("face"), column("area", "mm2")));
        for (String axis : List.of("x", "y", "z")) {
            columns.add(column("centre " + axis, "mm"));
        }
        for (String axis : List.of("x", "y", "z")) {
            columns.add(column("faces " + axis));
        }
        for (String end : List.of("from ", "to ")) {
            for (String axis : List.of("x", "y", "z")) {
                columns.add(column(end + axis, "mm"));
            }
        }
        return new DataTable("faces", DataTable.about(listing.layout(), version), columns, rows);
    }

    private static void add(List<Object> line, Vector3D point) {
        line.add(point == null ? null : (Object) (point.getX() + 0.0));
        line.add(point == null ? null : (Object) (point.getY() + 0.0));
        line.add(point == null ? null : (Object) (point.getZ() + 0.0));
    }

    /** Finishes by what they reflect. */
    public static DataTable finishes(List<ListedFinish> finishes, String version) {
        List<DataTable.Column> columns = new ArrayList<>(List.of(column("finish"), column("band")));
        for (double angle : ANGLES) {
            columns.add(column("reflectance at " + (int) angle + " deg"));
        }
        columns.add(column("mirror at 80 deg"));
        columns.add(column("what it is"));
        List<List<Object>> rows = new ArrayList<>();
        for (ListedFinish each : finishes) {
            List<Object> line = row(each.name(), each.band());
            for (double angle : ANGLES) {
                line.add(each.reflectance(angle));
            }
            line.add(each.reflection().mirror(StrictMath.cos(Math.toRadians(80))));
            line.add(each.what());
            rows.add(line);
        }
        Map<String, Object> about = new LinkedHashMap<>();
        about.put("program", "Darkrim " + version);
        return new DataTable("finishes", about, columns, rows);
    }

    /** Vanes that were placed, with the verdict on them. */
    public static DataTable vanes(VaneText text, VaneConstruction construction, VaneProof proof, String version) {
        VaneTask task = text.task();
        List<List<Object>> rows = new ArrayList<>();
        for (int i = 0; i < text.heights().size(); i++) {
            double z = text.heights().get(i);
            double hidden = construction.hiddenUpTo().get(i);
            rows.add(row(
                    i + 1,
                    z,
                    2 * task.edgeAt(z),
                    hidden < task.entranceHeight() ? (Object) hidden : (Object) task.entranceHeight()));
        }
        Map<String, Object> about = new LinkedHashMap<>();
        about.put("program", "Darkrim " + version);
        about.put("verdict", proof.holds() ? "pass" : proof.fails() ? "fail" : "undecided");
        about.put("first_lit_mm", construction.firstLit());
        return new DataTable(
                "vanes",
                about,
                List.of(
                        column("vane"),
                        column("edge height", "mm"),
                        column("edge diameter", "mm"),
                        column("hides the wall up to", "mm")),
                rows);
    }
}
