package darkrim.present;

import darkrim.layout.Layout;
import darkrim.layout.Shape;
import java.util.List;

/** Which layout a result is about. */
public final class LayoutWords {
    private static final int SHORT_HASH = 16;

    private LayoutWords() {}

    /** Title and revision and, of a layout that is cooled, which shape. */
    public static String title(Layout layout) {
        String revision = layout.revision().isEmpty() ? "" : ", revision " + layout.revision();
        return Printable.of(layout.title() + revision) + shape(layout);
    }

    /** Which shape of a layout that is cooled it is, after its title: {@code ; cold shape, at 80 K}; otherwise nothing. */
    public static String shape(Layout layout) {
        return layout.cooldown()
                .map(each -> (each.isCold() ? "; cold shape, at " : "; warm shape, as drawn at ")
                        + Figures.limit(each.temperature()) + " K")
                .orElse("");
    }

    /** The file with the beginning of its hash; a layout built in code has none. */
    public static String file(Layout layout) {
        String hash = layout.source().sha256();
        String shown = hash.substring(0, Math.min(SHORT_HASH, hash.length()));
        return Printable.of(layout.source().name()) + (hash.isEmpty() ? "" : ", SHA-256 " + shown + "...");
    }

    /** A line for each mesh file, with its unit and the beginning of its hash. */
    static List<String> meshes(Layout layout) {
        return layout.parts().stream()
                .filter(part -> part.shape() instanceof Shape.Mesh)
                .map(part -> (Shape.Mesh) part.shape())
                .map(mesh -> "mesh     " + Printable.of(mesh.file().name()) + ", " + made(mesh) + ", SHA-256 "
                        + mesh.file().sha256().substring(0, SHORT_HASH) + "...")
                .distinct()
                .toList();
    }

    private static String made(Shape.Mesh mesh) {
        return mesh.file()
                .meshing()
                .map(meshing -> "facets by " + Printable.of(meshing.program()) + " within "
                        + Figures.atMost(meshing.tolerance()) + " mm (measured: "
                        + Figures.atMost(meshing.deviation()) + " mm)")
                .orElse("unit of " + Figures.limit(mesh.unit()) + " mm");
    }
}
