package darkrim.view.window;

import darkrim.view.camera.Box;
import darkrim.view.camera.Camera;
import darkrim.view.camera.SightLine;
import darkrim.view.look.Look;
import darkrim.view.parts.Hit;
import darkrim.view.parts.Picker;
import darkrim.view.parts.Stage;
import darkrim.view.work.ViewModel;
import java.util.Optional;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/** What lies under a place of the view, in pixels of the view. */
final class Eye {
    private final ViewModel model;
    private final SceneView scene;
    private Optional<Stage> known = Optional.empty();
    private Optional<Picker> picker = Optional.empty();

    Eye(ViewModel model, SceneView scene) {
        this.model = model;
        this.scene = scene;
    }

    double width() {
        return Math.max(1, scene.node().getWidth());
    }

    double height() {
        return Math.max(1, scene.node().getHeight());
    }

    /** From the same direction, so that a box fills the view. */
    Camera fitted(Camera camera, Box box) {
        return camera.fitted(box, width() / height());
    }

    /** What is met first there of what is shown. */
    Optional<Hit> at(double x, double y) {
        Optional<Stage> stage = model.content().stage();
        if (stage.isEmpty()) {
            return Optional.empty();
        }
        if (!known.equals(stage)) {
            known = stage;
            picker = stage.map(Picker::new);
        }
        Look look = model.look();
        Stage now = stage.get();
        double reach = 4 * now.box().radius()
                + now.box().centre().distance(look.camera().focus());
        SightLine line = look.camera().through(x, y, width(), height(), reach);
        return picker.orElseThrow()
                .first(
                        line,
                        surface ->
                                look.shows(now.scene().surfaces().get(surface).name()),
                        look.section());
    }

    /** Where a point of space is in the view, pixels, with its distance in front of the eye. */
    Vector3D project(Vector3D point) {
        return model.look().camera().project(point, width(), height());
    }

    /** The corner of a surface that lies within a few pixels of a hit, or the hit itself. */
    Vector3D snapped(Hit hit, double pixels) {
        Vector3D best = hit.point();
        if (hit.surface().isPresent()) {
            double[] edges = model.content()
                    .stage()
                    .orElseThrow()
                    .edges()
                    .get(hit.surface().get());
            Vector3D seen = project(hit.point());
            double nearest = pixels;
            for (int at = 0; at < edges.length; at += 3) {
                Vector3D corner = Vector3D.of(edges[at], edges[at + 1], edges[at + 2]);
                Vector3D there = project(corner);
                double away = Math.hypot(there.getX() - seen.getX(), there.getY() - seen.getY());
                if (away < nearest) {
                    nearest = away;
                    best = corner;
                }
            }
        }
        return best;
    }
}
