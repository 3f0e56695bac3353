package darkrim.present;

import darkrim.assembly.MeshFlawWords;
import darkrim.assembly.MeshShape;
import darkrim.geom.mesh.MeshFlaw;
import darkrim.layout.Part;
import darkrim.layout.Shape;
import darkrim.study.FaceListing;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/**
 * The faces of parts as plain text: a table for each part, and for meshes what was found wrong.
 *
 * @param verbose whether long tables are shown whole
 */
public record FaceReport(boolean verbose) {
    private static final int MOST_ROWS = 60;

    /** The report, lines ended by a line feed. */
    public String of(FaceListing listing) {
        Page page = new Page();
        page.paragraph(LayoutWords.title(listing.layout()));
        page.line("file     " + LayoutWords.file(listing.layout()));
        listing.faces().forEach((part, faces) -> part(page, listing, part, faces));
        return page.text();
    }

    private void part(Page page, FaceListing listing, Part part, List<FaceListing.Line> faces) {
        page.heading("Part " + Printable.of(part.name()) + ": " + Figures.counted(faces.size(), "face") + " (mm, mm2)");
        MeshShape mesh = listing.meshes().get(part.name());
        if (mesh != null) {
            mesh(page, (Shape.Mesh) part.shape(), mesh);
        }
        Table table = new Table()
                .words("face")
                .numbers("area")
                .numbers("centre")
                .numbers("faces")
                .numbers("from")
                .numbers("to");
        int most = verbose || faces.size() <= MOST_ROWS ? faces.size() : MOST_ROWS;
        List<FaceListing.Line> shown = new ArrayList<>(faces);
        if (mesh != null) {
            // The order of a file says nothing.
            shown.sort(Comparator.comparingDouble(line -> -line.area()));
        }
        for (FaceListing.Line line : shown.subList(0, most)) {
            table.row(
                    Printable.of(line.name()),
                    Figures.three(line.area()),
                    point(line.centre()),
                    line.normal().map(FaceReport::direction).orElse("around"),
                    point(line.low()),
                    point(line.high()));
        }
        page.block(table.text());
        if (most < faces.size()) {
            page.line("... and " + (faces.size() - most) + " more (--verbose shows all)");
        }
    }

    private static void mesh(Page page, Shape.Mesh shape, MeshShape mesh) {
        int open = mesh.mended().openShells();
        int shells = mesh.mended().shellCount();
        String volume = open == 0
                ? ", volume " + Figures.three(mesh.mended().mesh().volume()) + " mm3"
                : ", of which " + open + " open";
        page.paragraph(Printable.of(shape.file().name()) + ": "
                + Figures.counted(mesh.mended().mesh().facetCount(), "facet") + ", "
                + Figures.counted(shells, "shell") + volume + "; SHA-256 "
                + shape.file().sha256().substring(0, 16) + "...");
        for (MeshFlaw flaw : mesh.mended().flaws()) {
            page.paragraph("- ", "  ", (flaw.kind().mended() ? "mended: " : "") + MeshFlawWords.of(flaw));
        }
        page.space();
    }

    private static String point(Vector3D p) {
        return Figures.length(p.getX()) + ", " + Figures.length(p.getY()) + ", " + Figures.length(p.getZ());
    }

    private static String direction(Vector3D n) {
        return String.format(Locale.ROOT, "%.2f, %.2f, %.2f", n.getX() + 0.0, n.getY() + 0.0, n.getZ() + 0.0)
                .replace("-0.00", "0.00");
    }
}
