package darkrim.study;

import darkrim.assembly.Assembly;
import darkrim.assembly.Face;
import darkrim.assembly.MeshShape;
import darkrim.assembly.PartName;
import darkrim.assembly.Triangle;
import darkrim.diagnostic.Finding;
import darkrim.diagnostic.Findings;
import darkrim.diagnostic.UnusableInput;
import darkrim.layout.Layout;
import darkrim.layout.LayoutReader;
import darkrim.layout.LayoutReading;
import darkrim.layout.Part;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/**
 * The faces of the parts of a layout, in place, and the meshes among the parts.
 *
 * @param layout the layout
 * @param faces the faces of each part, in the order of the layout
 * @param meshes the meshes by name of the part
 * @param findings what is wrong with the layout; requirements and finish rules are not looked at
 */
public record FaceListing(
        Layout layout, Map<Part, List<Line>> faces, Map<String, MeshShape> meshes, List<Finding> findings) {
    /** A face whose facets together face this share of its area in one direction has a direction. */
    private static final double DIRECTED = 0.05;

    /**
     * A face.
     *
     * @param name its name
     * @param area its area, mm2
     * @param centre the middle of its area, mm
     * @param normal the direction that it faces on the whole, unit length; absent where it goes around
     * @param low least coordinates, mm
     * @param high greatest coordinates, mm
     */
    public record Line(
            String name, double area, Vector3D centre, Optional<Vector3D> normal, Vector3D low, Vector3D high) {}

    /**
     * Lists the faces of a layout file.
     *
     * @param file the file
     * @param part name of the only part to list, of which nothing is listed where there is no such part; all if absent
     * @param warm whether a layout that is cooled is listed in its shape as drawn
     * @throws UnusableInput if a part cannot be read or built
     */
    public static FaceListing of(Path file, Optional<String> part, boolean warm) throws UnusableInput {
        Findings findings = new Findings();
        LayoutReading reading = LayoutReader.read(file);
        if (reading.layout().isEmpty() || !reading.partsComplete()) {
            throw new UnusableInput(reading.findings());
        }
        Layout read = reading.layout().get();
        Layout whole = warm ? read.warm() : read;
        List<Part> parts = whole.parts().stream()
                .filter(each -> part.isEmpty() || each.name().equals(part.get()))
                .toList();
        // Requirements may name faces that only this listing tells of.
        Layout layout = whole.with(withHolders(parts, whole)).partsOnly();
        Assembly assembly = Assembly.of(layout, findings);
        Map<Part, List<Line>> lines = new LinkedHashMap<>();
        for (Part each : parts) {
            List<Line> own = new ArrayList<>();
            assembly.bodies().stream()
                    .filter(body -> PartName.of(body.name()).equals(each.name()))
                    .forEach(body -> body.faces().forEach(face -> own.add(line(face))));
            lines.put(each, own);
            if (own.isEmpty()) {
                throw new UnusableInput(findings.sorted());
            }
        }
        return new FaceListing(layout, lines, assembly.meshes(), findings.sorted());
    }

    /** The parts and all that hold them, in the order of the layout: where a part is when it is cold depends on them. */
    private static List<Part> withHolders(List<Part> parts, Layout whole) {
        Set<String> names = new LinkedHashSet<>();
        List<String> left = new ArrayList<>(parts.stream().map(Part::name).toList());
        while (!left.isEmpty()) {
            String name = left.remove(left.size() - 1);
            if (names.add(name)) {
                whole.parts().stream()
                        .filter(each -> each.name().equals(name))
                        .flatMap(each -> each.mounting().stream())
                        .flatMap(each -> each.heldBy().stream())
                        .forEach(left::add);
            }
        }
        return whole.parts().stream()
                .filter(each -> names.contains(each.name()))
                .toList();
    }

    private static Line line(Face face) {
        double area = 0;
        Vector3D moment = Vector3D.ZERO;
        Vector3D sum = Vector3D.ZERO;
        double[] box = new double[6];
        for (int k = 0; k < 6; k++) {
            box[k] = k < 3 ? Double.POSITIVE_INFINITY : Double.NEGATIVE_INFINITY;
        }
        for (Triangle facet : face.triangles()) {
            double own = facet.area();
            area += own;
            sum = sum.add(facet.doubledNormal().multiply(0.5));
            moment = moment.add(facet.a().add(facet.b()).add(facet.c()).multiply(own / 3));
            for (Vector3D corner : List.of(facet.a(), facet.b(), facet.c())) {
                double[] coordinates = corner.toArray();
                for (int k = 0; k < 3; k++) {
                    box[k] = Math.min(box[k], coordinates[k]);
                    box[3 + k] = Math.max(box[3 + k], coordinates[k]);
                }
            }
        }
        return new Line(
                face.name(),
                area,
                moment.multiply(1 / area),
                sum.norm() > DIRECTED * area ? Optional.of(sum.normalize()) : Optional.empty(),
                Vector3D.of(box[0], box[1], box[2]),
                Vector3D.of(box[3], box[4], box[5]));
    }
}
