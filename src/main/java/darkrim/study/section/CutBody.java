package darkrim.study.section;

import darkrim.geom.Polygon;
import java.util.List;
import org.apache.commons.geometry.euclidean.twod.Vector2D;

/**
 * What a plane cuts of one body.
 *
 * @param part name of its part
 * @param body name of the body
 * @param solid whether it encloses material; a sheet is cut in lines
 * @param outlines closed outlines, mm, material to the left: an outer one counter-clockwise, a hole clockwise
 * @param lines where a sheet is cut, and what stays open of a mesh that does not close, mm
 * @param surfaces names of the surfaces that are cut
 */
public record CutBody(
        String part,
        String body,
        boolean solid,
        List<List<Vector2D>> outlines,
        List<List<Vector2D>> lines,
        List<String> surfaces) {
    /** Copies the lists. */
    public CutBody {
        outlines = outlines.stream().map(List::copyOf).toList();
        lines = lines.stream().map(List::copyOf).toList();
        surfaces = List.copyOf(surfaces);
    }

    /** Area of the cut face, mm2; 0 for a sheet. */
    public double area() {
        return outlines.stream().mapToDouble(Polygon::signedArea).sum();
    }

    /** Length of all cut lines, mm, outlines and open lines. */
    public double length() {
        double sum = 0;
        for (List<Vector2D> outline : outlines) {
            for (int i = 0; i < outline.size(); i++) {
                sum += outline.get(i).distance(outline.get((i + 1) % outline.size()));
            }
        }
        for (List<Vector2D> line : lines) {
            for (int i = 1; i < line.size(); i++) {
                sum += line.get(i - 1).distance(line.get(i));
            }
        }
        return sum;
    }
}
