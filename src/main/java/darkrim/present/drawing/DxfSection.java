package darkrim.present.drawing;

import darkrim.present.Figures;
import darkrim.present.LayoutWords;
import darkrim.present.Printable;
import darkrim.study.section.CutBody;
import darkrim.study.section.LayoutSection;
import darkrim.study.section.LimitingEdge;
import darkrim.study.section.SectionMargin;
import darkrim.study.section.SectionRay;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.apache.commons.geometry.euclidean.twod.Vector2D;

/**
 * Writes a section as DXF with the entities of release 12, which every CAD program reads: the section itself in mm, 1:1, in its own coordinates, a layer
 * for each part, each kind of ray, the pupil, the landings, the dimensions and the words. Rays run all the way from the pupil.
 */
public final class DxfSection {
    private static final String WINDOW = "WINDOW";
    private static final int[] COLOURS = {5, 30, 6, 3, 1, 4, 8, 200};

    private final LayoutSection section;
    private final DxfText out = new DxfText();
    private final Map<String, String> layers = new LinkedHashMap<>();

    private DxfSection(LayoutSection section) {
        this.section = section;
    }

    /** The section as text. */
    public static String of(LayoutSection section, SectionSheet.Imprint imprint) {
        return new DxfSection(section).written(imprint);
    }

    private String written(SectionSheet.Imprint imprint) {
        for (CutBody body : section.bodies()) {
            layers.computeIfAbsent(body.part(), part -> DxfText.layer("PART-" + part, layers.values()));
        }
        out.header(section.bounds().orElse(new double[] {0, 0, 0, 0}));
        out.lineTypes();
        List<String> others = new ArrayList<>(List.of("PUPIL", "LANDINGS", "DIMENSIONS", "WORDS"));
        if (section.plate().isPresent()) {
            others.add(0, WINDOW);
        }
        out.beginLayers(layers.size() + SectionRay.Kind.values().length + others.size());
        int colour = 0;
        for (String layer : layers.values()) {
            out.layer(layer, COLOURS[colour++ % COLOURS.length], "CONTINUOUS");
        }
        for (SectionRay.Kind kind : SectionRay.Kind.values()) {
            out.layer(
                    layer(kind),
                    kind == SectionRay.Kind.LIGHT_ENDS ? 1 : kind == SectionRay.Kind.CHIEF ? 8 : 5,
                    type(kind));
        }
        for (String layer : others) {
            out.layer(layer, 7, "CONTINUOUS");
        }
        out.endLayers();
        out.beginEntities();
        section.bodies().forEach(this::body);
        section.plate().ifPresent(this::plate);
        rays();
        widths();
        words(imprint);
        return out.end();
    }

    private void body(CutBody body) {
        String layer = layers.get(body.part());
        body.outlines().forEach(outline -> out.polyline(layer, outline, true));
        body.lines().forEach(line -> out.polyline(layer, line, false));
    }

    /** Both faces of the window, as far as parts and rays go to the sides. */
    private void plate(double[] heights) {
        double[] bounds = section.bounds().orElse(new double[] {0, 0, 0, 0}).clone();
        for (SectionRay ray : section.rays()) {
            for (Vector3D point : ray.course()) {
                double across = section.plane().seen(point).getX();
                bounds[0] = Math.min(bounds[0], across);
                bounds[2] = Math.max(bounds[2], across);
            }
        }
        for (double height : heights) {
            out.line(WINDOW, Vector2D.of(bounds[0], height), Vector2D.of(bounds[2], height));
        }
    }

    private static String layer(SectionRay.Kind kind) {
        return "RAYS-" + kind.name().replace('_', '-');
    }

    private static String type(SectionRay.Kind kind) {
        return switch (kind) {
            case LIGHT_ENDS -> "CONTINUOUS";
            case CHIEF -> "DASHDOT";
            case PUPIL_WHOLE -> "DASHED";
        };
    }

    private void rays() {
        section.pupil()
                .ifPresent(rim -> out.line(
                        "PUPIL",
                        section.plane().seen(rim.left()),
                        section.plane().seen(rim.right())));
        double size = 0.05;
        for (SectionRay ray : section.rays()) {
            Vector2D to = section.plane().seen(ray.to());
            List<Vector2D> course =
                    ray.course().stream().map(section.plane()::seen).toList();
            if (course.size() == 2) {
                out.line(layer(ray.kind()), course.get(0), to);
            } else {
                out.polyline(layer(ray.kind()), course, false);
            }
            out.point("LANDINGS", to);
            // Landings lie close together: each kind has a line of its own below them.
            int row = switch (ray.kind()) {
                case LIGHT_ENDS -> 1;
                case CHIEF -> 2;
                case PUPIL_WHOLE -> 3;
            };
            out.text(
                    "LANDINGS",
                    to.add(Vector2D.of(0, -1.6 * size * row)),
                    size,
                    ray.kind().words() + " " + Figures.length(to.getX()) + ", " + Figures.length(to.getY()) + " on "
                            + ray.surface());
        }
    }

    private void widths() {
        Map<String, LimitingEdge> first = new LinkedHashMap<>();
        for (LimitingEdge edge : section.edges()) {
            LimitingEdge other = first.putIfAbsent(edge.name(), edge);
            if (other != null && edge.profile().size() > 1) {
                Vector2D a = other.narrowest().add(Vector2D.of(0, 2));
                Vector2D b = edge.narrowest().add(Vector2D.of(0, 2));
                out.line("DIMENSIONS", other.narrowest(), a);
                out.line("DIMENSIONS", edge.narrowest(), b);
                out.line("DIMENSIONS", a, b);
                out.text(
                        "DIMENSIONS",
                        a.lerp(b, 0.5).add(Vector2D.of(0, 0.3)),
                        1,
                        Figures.length(Math.abs(a.getX() - b.getX())));
            }
        }
    }

    private void words(SectionSheet.Imprint imprint) {
        double[] bounds = section.bounds().orElse(new double[] {0, 0, 0, 0});
        double y = bounds[1] - 6;
        List<String> head = List.of(
                LayoutWords.title(section.layout()),
                "Section " + section.plane().words() + "; mm, 1:1",
                LayoutWords.file(section.layout()),
                "Darkrim " + imprint.version() + ", seed " + imprint.seed()
                        + imprint.date().map(date -> ", " + date).orElse(""));
        for (String line : head) {
            out.text("WORDS", Vector2D.of(bounds[0], y), 1.5, Printable.of(line));
            y -= 2.5;
        }
        for (SectionMargin margin : section.margins()) {
            out.text("WORDS", Vector2D.of(bounds[0], y), 1, words(margin));
            y -= 1.7;
        }
    }

    private static String words(SectionMargin margin) {
        if (margin instanceof SectionMargin.OfSurface surface) {
            return "margin " + (surface.isUnexplained() ? ">= " : "") + Figures.margin(surface.millimetres()) + "  "
                    + surface.words();
        }
        SectionMargin.OfEdge edge = (SectionMargin.OfEdge) margin;
        return edge.edge().words() + ": room outward "
                + edge.outward().map(DetailViews::shown).orElse("-") + ", inward "
                + edge.inward().map(DetailViews::shown).orElse("-");
    }
}
