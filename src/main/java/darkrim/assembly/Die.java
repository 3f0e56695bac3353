package darkrim.assembly;

import darkrim.diagnostic.Place;
import darkrim.geom.Placement;
import java.util.List;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/**
 * A detector die in layout coordinates: three rectangles in its active plane, four corners each, in the same order.
 *
 * @param name path such as {@code mosaic/die[1,2]}
 * @param place where its part stands in the layout file
 * @param active the light-sensitive area, mm
 * @param pixelArray the whole pixel array with its reference pixels, mm
 * @param outline the die itself, mm: its edge faces begin here
 */
public record Die(String name, Place place, List<Vector3D> active, List<Vector3D> pixelArray, List<Vector3D> outline) {
    /** Copies the lists. */
    public Die {
        active = List.copyOf(active);
        pixelArray = List.copyOf(pixelArray);
        outline = List.copyOf(outline);
    }

    /** In place, under the name of its part. */
    Die placed(String part, Placement placement, Place partPlace) {
        return new Die(
                part + "/" + name,
                partPlace,
                placed(active, placement),
                placed(pixelArray, placement),
                placed(outline, placement));
    }

    private static List<Vector3D> placed(List<Vector3D> corners, Placement placement) {
        return corners.stream()
                .map(corner -> Triangle.placedCorner(placement, corner))
                .toList();
    }
}
