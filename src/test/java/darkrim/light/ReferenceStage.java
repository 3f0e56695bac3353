package darkrim.light;

import static darkrim.reference.ReferenceCase.vector;

import darkrim.reference.ReferenceScalar;
import darkrim.scene.Beam;
import darkrim.scene.Finish;
import darkrim.scene.Scene;
import darkrim.scene.SceneBuilder;
import darkrim.scene.Surface;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import tools.jackson.databind.JsonNode;

/** The things of a case, built up into a scene. */
final class ReferenceStage {
    private final JsonNode geometry;
    private final ReferenceMove move;
    private final SceneBuilder builder = new SceneBuilder();
    private final ReferenceFacets facets;

    /**
     * @param scalar the case
     * @param move where it is moved to
     */
    ReferenceStage(ReferenceScalar scalar, ReferenceMove move) {
        this.geometry = scalar.from().geometry();
        this.move = move;
        this.facets = new ReferenceFacets(builder, move);
        if (geometry.has("blockers")) {
            int number = 0;
            for (JsonNode blocker : geometry.get("blockers")) {
                number++;
                facets.addBlocker("blocker " + number, blocker);
            }
        }
    }

    /** Adds a surface of the case under the name of its key, unless it is a point. */
    ReferenceStage with(String key, Finish finish) {
        if (!geometry.get(key).get("type").asString().startsWith("point")) {
            facets.add(key, finish, geometry.get(key));
        }
        return this;
    }

    /** The builder, for what a case describes in its own way. */
    SceneBuilder builder() {
        return builder;
    }

    /** The scene under a beam. */
    Scene under(Beam beam) {
        return builder.build(beam);
    }

    /**
     * The receiver that stands under a key: a surface added before, or the point of the scalar.
     *
     * @param lift how far a point is moved along its normal, mm
     */
    Receiver receiver(Scene scene, String key, ReferenceScalar scalar, double lift) {
        JsonNode node = geometry.get(key);
        if (!node.get("type").asString().startsWith("point")) {
            return new Receiver.OnSurface(surface(scene, key));
        }
        JsonNode position = node.has("position")
                ? node.get("position")
                : node.get("positions").get(scalar.index());
        JsonNode facing =
                node.has("normal") ? node.get("normal") : node.get("normals").get(scalar.index());
        Vector3D normal = vector(facing).normalize();
        Vector3D lifted = vector(position).add(normal.multiply(lift));
        return new Receiver.AtPoint(scalar.id(), move.point(lifted), move.direction(normal));
    }

    /** A surface added before. */
    static Surface surface(Scene scene, String key) {
        return scene.surface(key).orElseThrow();
    }
}
