package darkrim.present.picture;

import java.util.List;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/**
 * From where parts are looked at, as large as they fit.
 *
 * @param from the direction
 * @param perspective whether near parts appear larger; otherwise lengths can be measured in the picture
 * @param seen points that must be seen, mm; at least one
 * @param magnification how much larger than they fit
 */
public record View(ViewDirection from, boolean perspective, List<Vector3D> seen, double magnification) {
    /** Copies the list. */
    public View {
        seen = List.copyOf(seen);
    }

    /** The camera for a picture of a width over height. */
    public Camera camera(double aspect) {
        Camera fitted = perspective ? Camera.perspective(from, seen, aspect) : Camera.parallel(from, seen, aspect);
        return fitted.magnified(magnification);
    }
}
