package darkrim.view.parts;

import darkrim.scene.Scene;
import darkrim.trace.Ray;
import darkrim.view.camera.SightLine;
import java.util.Optional;
import java.util.function.IntPredicate;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/** Finds what a line of sight meets, by the same tree that light is traced with: exact also where facets are many and thin. */
public final class Picker {
    /** Layers that one line may pass unseen, far more than any layout has. */
    private static final int MOST_LAYERS = 10_000;

    private final Stage stage;
    private final Ray ray = new Ray();

    /**
     * @param stage what is picked from
     */
    public Picker(Stage stage) {
        this.stage = stage;
    }

    /**
     * What a line meets first.
     *
     * @param line the line
     * @param shown whether a surface is shown, by its number
     * @param section the plane beyond which nothing is shown, if there is one
     */
    public Optional<Hit> first(SightLine line, IntPredicate shown, Optional<Section> section) {
        Scene scene = stage.scene();
        Vector3D direction = line.direction();
        double from = 0;
        double to = Double.POSITIVE_INFINITY;
        boolean entersByPlane = false;
        if (section.isPresent()) {
            double beyond = section.get().beyond(line.origin());
            double along = direction.dot(section.get().outward());
            if (beyond > 0 && along >= 0) {
                return Optional.empty();
            }
            if (beyond > 0) {
                from = beyond / -along;
                entersByPlane = true;
            } else if (along > 0) {
                to = -beyond / along;
            }
        }
        double start = from;
        int plane = Ray.NO_PLANE;
        for (int layer = 0; layer < MOST_LAYERS; layer++) {
            Vector3D origin = line.at(from);
            ray.set(
                    origin.getX(),
                    origin.getY(),
                    origin.getZ(),
                    direction.getX(),
                    direction.getY(),
                    direction.getZ(),
                    to - from,
                    plane);
            int facet = stage.tree().nearest(ray);
            if (facet < 0) {
                return Optional.empty();
            }
            from += ray.distance();
            int met = scene.surfaceMet(facet, direction.getX(), direction.getY(), direction.getZ());
            if (met != Scene.INSIDE && shown.test(met)) {
                return Optional.of(new Hit(
                        Optional.of(met), facet, scene.surfaces().get(met).name(), line.at(from), from));
            }
            if (met == Scene.INSIDE && entersByPlane && shown.test(scene.frontSurface(facet))) {
                // The first thing met is a solid's inside: the line entered it through the cut face.
                return Optional.of(
                        new Hit(Optional.empty(), facet, solid(scene.frontSurface(facet)), line.at(start), start));
            }
            entersByPlane &= met == Scene.INSIDE;
            plane = scene.plane(facet);
        }
        return Optional.empty();
    }

    private String solid(int surface) {
        for (int i = 0; i < stage.solids().size(); i++) {
            for (int number : stage.solids().get(i)) {
                if (number == surface) {
                    return stage.names().get(i);
                }
            }
        }
        return stage.scene().surfaces().get(surface).name();
    }
}
