package darkrim.study.irradiance;

import darkrim.light.Reflector;
import darkrim.scene.Scene;
import darkrim.scene.Surface;
import darkrim.study.way.Way;
import darkrim.study.way.WaySearch;
import darkrim.trace.FacetTree;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/**
 * A ray that carries light to a surface, for drawing: straight from the pupil, or by the surface and the part of its finish that reflects most of
 * what arrives. For use by one thread.
 */
public final class ExampleRay {
    /** Rays that are tried. */
    private static final int TRIES = 300_000;
    /** Of so many that carry light the one that carries most is taken: one that hardly does would mislead. */
    private static final int FOUND = 40;

    private final CheckedLight checked;
    private final Scene scene;
    private final WaySearch search;

    /**
     * @param checked what a check found
     */
    public ExampleRay(CheckedLight checked) {
        this.checked = checked;
        scene = checked.scene();
        search = new WaySearch(scene, FacetTree.build(scene.corners(), scene.copyPlanes(), scene.bound()));
    }

    /** A ray straight from the pupil: its two ends, mm. Empty where none is known. */
    public Optional<List<Vector3D>> direct(Surface receiver) {
        return Optional.of(checked.surfaces().get(receiver.index()).ray()).filter(ends -> !ends.isEmpty());
    }

    /** A ray by the strongest way of once-reflected light: on the pupil, where it is reflected, where it arrives, mm. */
    public Optional<List<Vector3D>> reflected(Surface receiver) {
        return checked.surfaces()
                .get(receiver.index())
                .strongest()
                .flatMap(by -> strongest(receiver, by))
                .map(way -> List.of(way.onPupil(), way.reflected(), way.arrives()));
    }

    private Optional<Way> strongest(Surface receiver, Reflector by) {
        Surface via = scene.surfaces().get(by.surface());
        return search.find(receiver, via, by.part(), FOUND, TRIES, () -> false).stream()
                .max(Comparator.comparingDouble(Way::carried));
    }
}
