package darkrim.light;

import darkrim.scene.Surface;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/** Where light is measured. */
public sealed interface Receiver {
    /** Name of the random stream; the same for the same place in every revision. */
    String name();

    /**
     * The mean over a surface and, where it has a map, over each of its cells.
     *
     * @param surface the surface
     */
    record OnSurface(Surface surface) implements Receiver {
        @Override
        public String name() {
            return surface.name();
        }
    }

    /**
     * One point.
     *
     * @param name name of its random stream
     * @param position where it is, mm
     * @param normal the direction it faces, unit length
     */
    record AtPoint(String name, Vector3D position, Vector3D normal) implements Receiver {}
}
