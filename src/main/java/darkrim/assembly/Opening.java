package darkrim.assembly;

import darkrim.diagnostic.Place;
import darkrim.geom.Placement;
import java.util.List;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/**
 * An opening of a plate in layout coordinates, as four loops of corners from the pupil's side to the detector's. Loops have as many corners
 * each; round openings are polygons around the circle.
 *
 * @param name path such as {@code lid/opening[1,2]}
 * @param place where its plate stands in the layout file
 * @param sides one name a side, such as {@code +x} or {@code 3}, as its walls are named; side i runs from corner i to the next; empty names
 *     where the opening is round
 * @param pupilFace where it meets the face of the plate nearer the pupil
 * @param landNearPupil the end of the land nearer the pupil; the land is the smallest cross-section, and without a bevel the whole wall
 * @param landNearDetector the end of the land nearer the detector; the same as the other end for an edge without a land
 * @param detectorFace where it meets the face of the plate nearer the detector
 */
public record Opening(
        String name,
        Place place,
        List<String> sides,
        List<Vector3D> pupilFace,
        List<Vector3D> landNearPupil,
        List<Vector3D> landNearDetector,
        List<Vector3D> detectorFace) {

    /** Copies the lists. */
    public Opening {
        sides = List.copyOf(sides);
        pupilFace = List.copyOf(pupilFace);
        landNearPupil = List.copyOf(landNearPupil);
        landNearDetector = List.copyOf(landNearDetector);
        detectorFace = List.copyOf(detectorFace);
    }

    /** The four loops, from the pupil's side to the detector's. */
    public List<List<Vector3D>> loops() {
        return List.of(pupilFace, landNearPupil, landNearDetector, detectorFace);
    }

    /** Middle of the smallest cross-section at its end nearer the pupil, mm: the mean of its corners. */
    public Vector3D centre() {
        return middle(landNearPupil);
    }

    /** In place, under the name of its part. What is turned upside down shows its other end to the pupil. */
    Opening placed(String part, Placement placement, Place partPlace) {
        List<List<Vector3D>> moved = loops().stream()
                .map(loop -> loop.stream()
                        .map(corner -> Triangle.placedCorner(placement, corner))
                        .toList())
                .toList();
        boolean upright = middle(moved.get(0)).getZ() >= middle(moved.get(3)).getZ();
        return new Opening(
                part + "/" + name,
                partPlace,
                sides,
                moved.get(upright ? 0 : 3),
                moved.get(upright ? 1 : 2),
                moved.get(upright ? 2 : 1),
                moved.get(upright ? 3 : 0));
    }

    private static Vector3D middle(List<Vector3D> loop) {
        Vector3D.Sum sum = Vector3D.Sum.create();
        loop.forEach(sum::add);
        return sum.get().multiply(1.0 / loop.size());
    }
}
