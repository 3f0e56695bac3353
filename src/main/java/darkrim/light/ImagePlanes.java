package darkrim.light;

import darkrim.scene.Scene;
import java.util.Arrays;
import java.util.SortedMap;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/** The planes of flat mirrors whose image of the pupil is sampled. Immutable. */
final class ImagePlanes {
    /** Above this number of planes a sample that picks one image at random is worse than a gathered ray. */
    static final int MOST = 64;

    private final double[] planes;
    private final int[] numbers;

    /**
     * @param facetOf for the scene's number of each plane a facet in it; none are kept if there are more than {@link #MOST}
     */
    ImagePlanes(Scene scene, SortedMap<Integer, Integer> facetOf) {
        numbers = facetOf.size() > MOST
                ? new int[0]
                : facetOf.keySet().stream().mapToInt(Integer::intValue).toArray();
        planes = new double[4 * numbers.length];
        for (int i = 0; i < numbers.length; i++) {
            int facet = facetOf.get(numbers[i]);
            Vector3D normal = scene.normal(facet);
            planes[4 * i] = normal.getX();
            planes[4 * i + 1] = normal.getY();
            planes[4 * i + 2] = normal.getZ();
            planes[4 * i + 3] = normal.dot(scene.corner(facet, 0));
        }
    }

    /** How many there are. */
    int count() {
        return numbers.length;
    }

    /** The scene's number of the i-th plane. */
    int number(int i) {
        return numbers[i];
    }

    /** Component k of the i-th plane: unit normal (0 to 2) and offset (3). */
    double plane(int i, int k) {
        return planes[4 * i + k];
    }

    /** Height of a point above the i-th plane, on the side of its normal, mm. */
    double height(int i, double x, double y, double z) {
        return planes[4 * i] * x + planes[4 * i + 1] * y + planes[4 * i + 2] * z - planes[4 * i + 3];
    }

    /** Which of them a plane of the scene is; less than 0 if none. */
    int index(int planeNumber) {
        return Arrays.binarySearch(numbers, planeNumber);
    }

    /** Whether a plane of the scene is among them. */
    boolean has(int planeNumber) {
        return index(planeNumber) >= 0;
    }
}
