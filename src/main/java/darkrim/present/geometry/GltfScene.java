package darkrim.present.geometry;

import darkrim.layout.Layout;
import darkrim.present.LayoutWords;
import darkrim.present.Printable;
import darkrim.present.picture.ColourScale;
import darkrim.present.picture.LightUnit;
import darkrim.study.irradiance.DarkProof;
import darkrim.study.irradiance.LightKind;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;

/**
 * A scene as binary glTF 2.0 (ISO/IEC 12113): a node for each part and, below it, for each surface, with its name and its values; colours of light are those
 * of its corners. Lengths are metres and y is up, as glTF demands: the root turns the layout's z there. Coordinates have single precision.
 */
public final class GltfScene {
    private static final JsonMapper MAPPER = JsonMapper.builder().build();
    private static final int GREY = 0xffb9bec4;
    private static final int MAGIC = 0x46546c67;
    private static final int JSON = 0x4e4f534a;
    private static final int BINARY = 0x004e4942;
    private static final int FLOAT = 5126;
    private static final int UNSIGNED_SHORT = 5123;
    private static final int VERTICES = 34962;
    private static final double METRES = 1e-3;
    private static final double HALF_ROOT = Math.sqrt(0.5);

    private final List<LitFaces> faces;
    private final Optional<Shown> shown;
    private final ByteBuffer data;
    private final ObjectNode root = MAPPER.createObjectNode();
    private final ArrayNode nodes = root.putArray("nodes");
    private final ArrayNode meshes = root.putArray("meshes");
    private final ArrayNode accessors = root.putArray("accessors");

    /**
     * How light is shown.
     *
     * @param kind which light
     * @param scale its colours
     * @param unit its unit
     */
    public record Shown(LightKind kind, ColourScale scale, LightUnit unit) {}

    private GltfScene(List<LitFaces> faces, Optional<Shown> shown) {
        this.faces = faces;
        this.shown = shown;
        int corners =
                3 * faces.stream().mapToInt(each -> each.triangles().size()).sum();
        data = ByteBuffer.allocate(20 * corners).order(ByteOrder.LITTLE_ENDIAN);
    }

    /**
     * The file.
     *
     * @param faces what is shown, at least one triangle
     * @param shown how light is shown; empty for plain grey parts
     * @param layout the layout
     * @param version version of the program
     */
    public static byte[] of(List<LitFaces> faces, Optional<Shown> shown, Layout layout, String version) {
        return new GltfScene(faces, shown).written(layout, version);
    }

    private byte[] written(Layout layout, String version) {
        ObjectNode asset = root.putObject("asset");
        asset.put("version", "2.0").put("generator", "Darkrim " + version);
        ObjectNode extras = asset.putObject("extras");
        extras.put("title", LayoutWords.title(layout)).put("layout", LayoutWords.file(layout));
        shown.ifPresent(each -> extras.put("light", each.kind().words())
                .put("quantity", each.unit().quantity())
                .put("unit", each.unit().unit().isEmpty() ? "1" : each.unit().unit())
                .put("darkest_colour", each.scale().least())
                .put("lightest_colour", each.scale().most())
                .put("spacing", each.scale().spacing().name().toLowerCase(java.util.Locale.ROOT)));
        root.putArray("extensionsUsed").add("KHR_materials_unlit");
        root.put("scene", 0);
        root.putArray("scenes").addObject().putArray("nodes").add(0);
        ObjectNode material = root.putArray("materials").addObject().put("name", "light");
        ObjectNode metal = material.putObject("pbrMetallicRoughness");
        metal.put("metallicFactor", 0).put("roughnessFactor", 1);
        material.putObject("extensions").putObject("KHR_materials_unlit");
        parts(layout);
        int positions = 12 * data.position() / 20;
        ArrayNode views = root.putArray("bufferViews");
        view(views, 0, positions, 12);
        view(views, positions, data.position() - positions, 8);
        root.putArray("buffers").addObject().put("byteLength", data.position());
        return file(MAPPER.writeValueAsBytes(root));
    }

    private static void view(ArrayNode views, int from, int length, int stride) {
        views.addObject()
                .put("buffer", 0)
                .put("byteOffset", from)
                .put("byteLength", length)
                .put("byteStride", stride)
                .put("target", VERTICES);
    }

    private void parts(Layout layout) {
        ObjectNode top = nodes.addObject().put("name", Printable.of(layout.title()));
        top.putArray("rotation").add(-HALF_ROOT).add(0).add(0).add(HALF_ROOT);
        ArrayNode below = top.putArray("children");
        Map<String, ArrayNode> byPart = new LinkedHashMap<>();
        int at = 0;
        for (LitFaces face : faces) {
            if (!face.triangles().isEmpty()) {
                ArrayNode children = byPart.computeIfAbsent(face.part(), part -> {
                    below.add(nodes.size());
                    return nodes.addObject().put("name", part).putArray("children");
                });
                children.add(nodes.size());
                nodes.addObject().put("name", face.surface().name()).put("mesh", meshes.size());
                mesh(face, at);
                at += 3 * face.triangles().size();
            }
        }
        // All positions come first, then all colours.
        faces.forEach(this::positions);
        faces.forEach(this::colours);
    }

    private void mesh(LitFaces face, int firstCorner) {
        ObjectNode mesh = meshes.addObject().put("name", face.surface().name());
        ObjectNode primitive = mesh.putArray("primitives").addObject().put("material", 0);
        primitive.putObject("attributes").put("POSITION", accessors.size()).put("COLOR_0", accessors.size() + 1);
        int count = 3 * face.triangles().size();
        ObjectNode positions = accessors
                .addObject()
                .put("bufferView", 0)
                .put("byteOffset", 12 * firstCorner)
                .put("componentType", FLOAT)
                .put("count", count)
                .put("type", "VEC3");
        extremes(face, positions);
        accessors
                .addObject()
                .put("bufferView", 1)
                .put("byteOffset", 8 * firstCorner)
                .put("componentType", UNSIGNED_SHORT)
                .put("normalized", true)
                .put("count", count)
                .put("type", "VEC4");
        ObjectNode extras = mesh.putObject("extras");
        extras.put("finish", face.surface().finish().name());
        shown.ifPresent(each -> {
            double value = face.map().mean(each.kind()) * each.unit().perRelative();
            double error = face.map().meanError(each.kind()) * each.unit().perRelative();
            if (Double.isFinite(value)) {
                extras.put("mean", value);
            }
            if (Double.isFinite(error)) {
                extras.put("standard_error", error);
            }
            if (each.kind() == LightKind.DIRECT && face.map().proof() != DarkProof.NONE) {
                extras.put("proof", face.map().proof().words());
            }
        });
    }

    private static void extremes(LitFaces face, ObjectNode accessor) {
        float[] least = {Float.POSITIVE_INFINITY, Float.POSITIVE_INFINITY, Float.POSITIVE_INFINITY};
        float[] most = {Float.NEGATIVE_INFINITY, Float.NEGATIVE_INFINITY, Float.NEGATIVE_INFINITY};
        for (List<Vector3D> triangle : face.triangles()) {
            for (Vector3D corner : triangle) {
                double[] place = corner.toArray();
                for (int axis = 0; axis < 3; axis++) {
                    least[axis] = Math.min(least[axis], metres(place[axis]));
                    most[axis] = Math.max(most[axis], metres(place[axis]));
                }
            }
        }
        ArrayNode low = accessor.putArray("min");
        ArrayNode high = accessor.putArray("max");
        for (int axis = 0; axis < 3; axis++) {
            low.add(least[axis]);
            high.add(most[axis]);
        }
    }

    private static float metres(double millimetres) {
        return (float) (millimetres * METRES + 0.0);
    }

    private void positions(LitFaces face) {
        for (List<Vector3D> triangle : face.triangles()) {
            for (Vector3D corner : triangle) {
                data.putFloat(metres(corner.getX()))
                        .putFloat(metres(corner.getY()))
                        .putFloat(metres(corner.getZ()));
            }
        }
    }

    private void colours(LitFaces face) {
        for (int triangle = 0; triangle < face.triangles().size(); triangle++) {
            int cell = face.cells().get(triangle);
            int argb = shown.map(each -> each.scale()
                            .argb(face.map().value(each.kind(), cell)
                                    * each.unit().perRelative()))
                    .orElse(GREY);
            for (int corner = 0; corner < 3; corner++) {
                data.putShort(linear(argb >> 16)).putShort(linear(argb >> 8)).putShort(linear(argb));
                data.putShort((short) 0xffff);
            }
        }
    }

    /** Colours of corners are linear in glTF, those of the scale are sRGB (IEC 61966-2-1). */
    private static short linear(int eightBits) {
        double coded = (eightBits & 255) / 255.0;
        double linear = coded <= 0.04045 ? coded / 12.92 : StrictMath.pow((coded + 0.055) / 1.055, 2.4);
        return (short) Math.round(65_535 * linear);
    }

    private byte[] file(byte[] json) {
        int padded = (json.length + 3) / 4 * 4;
        int length = data.position();
        ByteBuffer all = ByteBuffer.allocate(12 + 8 + padded + 8 + length).order(ByteOrder.LITTLE_ENDIAN);
        all.putInt(MAGIC).putInt(2).putInt(all.capacity());
        all.putInt(padded).putInt(JSON).put(json);
        all.put(" ".repeat(padded - json.length).getBytes(StandardCharsets.US_ASCII));
        all.putInt(length).putInt(BINARY).put(data.flip());
        return all.array();
    }
}
