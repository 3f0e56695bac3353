package darkrim.present.geometry;

import darkrim.layout.Layout;
import darkrim.present.LayoutWords;
import darkrim.present.Printable;
import darkrim.present.picture.LightUnit;
import darkrim.study.irradiance.LightKind;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.Base64;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.IntToDoubleFunction;
import java.util.function.ToIntFunction;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/**
 * A scene as an unstructured grid of the XML files of VTK: a triangle for each cell, mm; its data are the number of its surface and the light on it, each
 * class with its standard error. A value that is not known is NaN. Numbers are written in base 64, so that no digit is lost.
 */
public final class VtuScene {
    private static final int TRIANGLE = 5;

    private final List<LitFaces> faces;
    private final int count;
    private final StringBuilder text = new StringBuilder();

    private VtuScene(List<LitFaces> faces) {
        this.faces = faces;
        count = faces.stream().mapToInt(each -> each.triangles().size()).sum();
    }

    /**
     * The file.
     *
     * @param faces what is in it
     * @param unit in what light is given; empty leaves light out
     * @param layout the layout
     * @param version version of the program
     */
    public static String of(List<LitFaces> faces, Optional<LightUnit> unit, Layout layout, String version) {
        VtuScene scene = new VtuScene(faces);
        scene.head(unit, layout, version);
        scene.cells();
        scene.text.append("<CellData>\n");
        scene.ints("surface", face -> face.surface().index());
        unit.ifPresent(each -> {
            for (LightKind kind : List.of(LightKind.DIRECT, LightKind.ONCE_REFLECTED)) {
                String name = kind.name().toLowerCase(Locale.ROOT);
                scene.light(name, each, false, kind);
                scene.light(name + "_error", each, true, kind);
            }
        });
        scene.text.append("</CellData>\n</Piece>\n</UnstructuredGrid>\n</VTKFile>\n");
        return scene.text.toString();
    }

    private void head(Optional<LightUnit> unit, Layout layout, String version) {
        text.append("<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n");
        comment(LayoutWords.title(layout));
        comment(LayoutWords.file(layout) + "; Darkrim " + version + "; lengths in mm"
                + unit.map(each -> "; " + each.quantity() + (each.unit().isEmpty() ? "" : " in " + each.unit()))
                        .orElse(""));
        text.append("<VTKFile type=\"UnstructuredGrid\" version=\"1.0\" byte_order=\"LittleEndian\"")
                .append(" header_type=\"UInt64\">\n<UnstructuredGrid>\n<Piece NumberOfPoints=\"")
                .append(3 * count)
                .append("\" NumberOfCells=\"")
                .append(count)
                .append("\">\n");
    }

    /** A comment, which must not hold two hyphens in a row. */
    private void comment(String words) {
        text.append("<!-- ").append(Printable.of(words).replace("-", "\u2010")).append(" -->\n");
    }

    private void cells() {
        ByteBuffer points = buffer(8 * 9 * count);
        for (LitFaces face : faces) {
            for (List<Vector3D> triangle : face.triangles()) {
                for (Vector3D corner : triangle) {
                    points.putDouble(corner.getX()).putDouble(corner.getY()).putDouble(corner.getZ());
                }
            }
        }
        text.append("<Points>\n");
        array("Float64", "Points", " NumberOfComponents=\"3\"", points);
        text.append("</Points>\n<Cells>\n");
        ByteBuffer corners = buffer(8 * 3 * count);
        ByteBuffer ends = buffer(8 * count);
        ByteBuffer types = buffer(count);
        for (int triangle = 0; triangle < count; triangle++) {
            corners.putLong(3L * triangle).putLong(3L * triangle + 1).putLong(3L * triangle + 2);
            ends.putLong(3L * triangle + 3);
            types.put((byte) TRIANGLE);
        }
        array("Int64", "connectivity", "", corners);
        array("Int64", "offsets", "", ends);
        array("UInt8", "types", "", types);
        text.append("</Cells>\n");
    }

    private void ints(String name, ToIntFunction<LitFaces> value) {
        ByteBuffer data = buffer(4 * count);
        for (LitFaces face : faces) {
            for (int triangle = 0; triangle < face.triangles().size(); triangle++) {
                data.putInt(value.applyAsInt(face));
            }
        }
        array("Int32", name, "", data);
    }

    private void light(String name, LightUnit unit, boolean error, LightKind kind) {
        ByteBuffer data = buffer(8 * count);
        for (LitFaces face : faces) {
            IntToDoubleFunction value =
                    cell -> error ? face.map().error(kind, cell) : face.map().value(kind, cell);
            for (int cell : face.cells()) {
                double found = value.applyAsDouble(cell) * unit.perRelative();
                data.putDouble(Double.isFinite(found) ? found : Double.NaN);
            }
        }
        array("Float64", name, "", data);
    }

    private static ByteBuffer buffer(int size) {
        return ByteBuffer.allocate(8 + size).order(ByteOrder.LITTLE_ENDIAN).putLong(size);
    }

    private void array(String type, String name, String more, ByteBuffer data) {
        byte[] bytes = new byte[data.flip().remaining()];
        data.get(bytes);
        text.append("<DataArray type=\"")
                .append(type)
                .append("\" Name=\"")
                .append(name)
                .append('"')
                .append(more)
                .append(" format=\"binary\">\n")
                .append(Base64.getEncoder().encodeToString(bytes))
                .append("\n</DataArray>\n");
    }
}
