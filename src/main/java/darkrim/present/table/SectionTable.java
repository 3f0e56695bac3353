package darkrim.present.table;

import static darkrim.present.table.DataTable.column;
import static darkrim.present.table.DataTable.row;

import darkrim.shadow.OpeningMargin.Room;
import darkrim.study.section.LayoutSection;
import darkrim.study.section.LimitingEdge;
import darkrim.study.section.SectionMargin;
import darkrim.study.section.SectionPlane;
import darkrim.study.section.SectionRay;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.apache.commons.geometry.euclidean.twod.Vector2D;

/** The rays of a section as a table: which edge they pass, where they land, how far the edge can be moved. */
public final class SectionTable {
    private static final List<DataTable.Column> COLUMNS = List.of(
            column("edge"),
            column("side"),
            column("ray"),
            column("edge across", "mm"),
            column("edge up", "mm"),
            column("landing across", "mm"),
            column("landing up", "mm"),
            column("landing x", "mm"),
            column("landing y", "mm"),
            column("landing z", "mm"),
            column("lands on"),
            column("not drawn because"),
            column("room outward", "mm"),
            column("room outward is at least"),
            column("room inward", "mm"),
            column("room inward is at least"));

    private SectionTable() {}

    /**
     * A row for each ray, drawn or not; {@code across} and {@code up} are the coordinates of the section.
     *
     * @param section the section
     * @param seed seed of the check
     * @param version version of the program
     */
    public static DataTable of(LayoutSection section, long seed, String version) {
        List<List<Object>> rows = new ArrayList<>();
        for (SectionRay ray : section.rays()) {
            Vector2D seen = section.plane().seen(ray.to());
            rows.add(line(section, ray.edge(), ray.kind(), seen, ray.to(), ray.surface(), null));
        }
        for (LayoutSection.StoppedRay each : section.stopped()) {
            rows.add(line(section, each.edge(), each.kind(), null, null, null, each.reason()));
        }
        SectionPlane plane = section.plane();
        Map<String, Object> about = DataTable.about(section.layout(), version);
        about.put("seed", seed);
        about.put("plane", plane.words());
        about.put("across", plane.across());
        about.put("up", plane.up());
        return new DataTable("rays past edges", about, COLUMNS, rows);
    }

    private static List<Object> line(
            LayoutSection section,
            LimitingEdge edge,
            SectionRay.Kind kind,
            Vector2D seen,
            Vector3D to,
            String surface,
            String reason) {
        Vector2D at = edge.narrowest();
        List<Object> line = row(
                edge.name(),
                edge.side(),
                kind.name().toLowerCase(Locale.ROOT).replace('_', ' '),
                plain(at.getX()),
                plain(at.getY()),
                seen == null ? null : plain(seen.getX()),
                seen == null ? null : plain(seen.getY()),
                to == null ? null : plain(to.getX()),
                to == null ? null : plain(to.getY()),
                to == null ? null : plain(to.getZ()),
                surface,
                reason);
        Optional<SectionMargin.OfEdge> margin = section.margins().stream()
                .filter(SectionMargin.OfEdge.class::isInstance)
                .map(SectionMargin.OfEdge.class::cast)
                .filter(each -> each.edge().equals(edge))
                .findFirst();
        add(line, margin.flatMap(SectionMargin.OfEdge::outward));
        add(line, margin.flatMap(SectionMargin.OfEdge::inward));
        return line;
    }

    private static void add(List<Object> line, Optional<Room> room) {
        line.add(room.map(Room::millimetres).orElse(null));
        line.add(room.map(Room::atLeast).orElse(null));
    }

    /** Without a sign before 0. */
    private static Object plain(double value) {
        return value + 0.0;
    }
}
