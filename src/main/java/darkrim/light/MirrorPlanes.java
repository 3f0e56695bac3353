package darkrim.light;

import darkrim.scene.Scene;
import darkrim.scene.Surface;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * The planes whose image of the pupil is sampled: flat mirrors, unless there are many. Light by any other mirror, and by points of a mirror
 * close to the pupil, is found by following the gathered ray on. Immutable.
 */
final class MirrorPlanes {
    /** Above this number a sample that picks one image at random is worse than a gathered ray. */
    private static final int MOST = 64;

    private final double[] planes;
    private final int[] planeNumbers;
    private final boolean[] byImage;
    private final double largest;

    private MirrorPlanes(double[] planes, int[] planeNumbers, boolean[] byImage, double largest) {
        this.planes = planes;
        this.planeNumbers = planeNumbers;
        this.byImage = byImage;
        this.largest = largest;
    }

    /** Finds the mirrors of a scene. */
    static MirrorPlanes of(Scene scene, PupilSource pupil) {
        Map<Integer, double[]> found = new HashMap<>();
        Map<Integer, Double> weights = new HashMap<>();
        for (Surface surface : scene.surfaces()) {
            if (surface.finish().mirror() > 0) {
                for (int f = surface.firstFacet(); f < surface.firstFacet() + surface.facetCount(); f++) {
                    double weight = surface.finish().mirror() * pupil.largestSample(leastHeight(scene, pupil, f));
                    weights.merge(scene.plane(f), weight, Math::max);
                    double[] plane = {
                        scene.normal(f, 0),
                        scene.normal(f, 1),
                        scene.normal(f, 2),
                        scene.normal(f, 0) * scene.corner(f, 0, 0)
                                + scene.normal(f, 1) * scene.corner(f, 0, 1)
                                + scene.normal(f, 2) * scene.corner(f, 0, 2)
                    };
                    found.putIfAbsent(scene.plane(f), plane);
                }
            }
        }
        List<Integer> kept = found.size() > MOST
                ? List.of()
                : found.keySet().stream().sorted().toList();
        boolean[] byImage = new boolean[scene.planeCount()];
        double[] planes = new double[4 * kept.size()];
        int[] numbers = new int[kept.size()];
        double largest = 0;
        for (int i = 0; i < numbers.length; i++) {
            numbers[i] = kept.get(i);
            byImage[numbers[i]] = true;
            System.arraycopy(found.get(numbers[i]), 0, planes, 4 * i, 4);
            largest = Math.max(largest, weights.get(numbers[i]));
        }
        return new MirrorPlanes(planes, numbers, byImage, numbers.length * largest);
    }

    private static double leastHeight(Scene scene, PupilSource pupil, int facet) {
        double least = Double.POSITIVE_INFINITY;
        for (int k = 0; k < 3; k++) {
            least = Math.min(
                    least,
                    pupil.height(scene.corner(facet, k, 0), scene.corner(facet, k, 1), scene.corner(facet, k, 2)));
        }
        return least;
    }

    /** Number of planes whose image is sampled. */
    int count() {
        return planeNumbers.length;
    }

    /** The scene's number of the i-th plane. */
    int planeNumber(int i) {
        return planeNumbers[i];
    }

    /** Component k of the i-th plane: unit normal (0 to 2) and offset (3). */
    double plane(int i, int k) {
        return planes[4 * i + k];
    }

    /** Whether light by mirrors in a plane is found through its image, at points where the pupil does not fill the sky. */
    boolean byImage(int planeNumber) {
        return byImage[planeNumber];
    }

    /** No sample by an image is larger than this, sr. */
    double largestSample() {
        return largest;
    }
}
