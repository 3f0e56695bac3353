package darkrim.present.json;

import darkrim.layout.Layout;
import darkrim.light.Estimate;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import tools.jackson.core.JacksonException;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** A file that {@code check --json} wrote, found to be the result of a certain layout; docs/result.schema.json describes it. */
public final class SavedResult {
    private static final int FORMAT_VERSION = 1;
    private static final long LARGEST = 1L << 29;

    private SavedResult() {}

    /** Why a file cannot be used; the message is for the user, one line without the name of the file. */
    public static final class Unusable extends Exception {
        private static final long serialVersionUID = 1L;

        Unusable(String why) {
            super(why);
        }

        /** A file that begins as it should and lacks something. */
        public static Unusable notWhole() {
            return new Unusable("the file is not whole, expected a result that 'darkrim check --json' wrote");
        }
    }

    /**
     * Reads a result.
     *
     * @param file the file
     * @param layout the layout that it must be the result of, byte for byte, in the shape that it has
     * @throws Unusable if the file cannot be read, is no such result, or that of another layout or shape
     */
    public static JsonNode read(Path file, Layout layout) throws Unusable {
        JsonNode root;
        try {
            if (Files.exists(file) && !Files.isRegularFile(file)) {
                // A device may never end, a pipe never begin.
                throw new Unusable(
                        "the file is not an ordinary one, expected a result that 'darkrim check --json' wrote");
            }
            if (Files.size(file) > LARGEST) {
                throw new Unusable(
                        "the file has more than 512 MiB, expected a result that 'darkrim check --json' wrote");
            }
            root = JsonMapper.shared().readTree(Files.readAllBytes(file));
        } catch (IOException unreadable) {
            throw new Unusable("the file cannot be read, expected a result that 'darkrim check --json' wrote");
        } catch (JacksonException broken) {
            throw new Unusable("the file is not JSON, expected a result that 'darkrim check --json' wrote");
        }
        if (root.path("format_version").asInt(0) != FORMAT_VERSION
                || !root.path("surfaces").isArray()
                || !root.path("requirements").isArray()) {
            throw new Unusable(
                    "expected a result that 'darkrim check --json' wrote, of format version " + FORMAT_VERSION);
        }
        if (!root.at("/layout/sha256").asString("").equals(layout.source().sha256())) {
            throw new Unusable("this is the result of another layout or of another state of this one (SHA-256 differs),"
                    + " expected one that 'darkrim check --json' wrote for the layout as it is now");
        }
        String shape = root.at("/layout/shape").asString("");
        if (!shape.equals(Optional.ofNullable(ResultDocument.shape(layout)).orElse(""))) {
            throw new Unusable("this is the result of the " + shape + " shape, expected that of the other"
                    + " (--warm looks at the warm shape)");
        }
        return root;
    }

    /** A sampled mean. The variance follows from the standard error; what is null is not known. */
    public static Estimate estimate(JsonNode node) {
        long samples = node.path("samples").asLong();
        double error = node.path("standard_error").asDouble(0);
        return new Estimate(
                samples, node.path("mean").asDouble(0), error * error * samples, number(node.path("largest_sample")));
    }

    /** A number; infinite where it is null. */
    public static double number(JsonNode node) {
        return node.isNumber() ? node.asDouble() : Double.POSITIVE_INFINITY;
    }

    /** A point, mm. */
    public static Vector3D point(JsonNode list) {
        return Vector3D.of(
                list.get(0).asDouble(), list.get(1).asDouble(), list.get(2).asDouble());
    }
}
