package darkrim.light;

import darkrim.scene.Scene;
import java.util.Arrays;
import java.util.HashMap;
import java.util.Map;
import java.util.TreeMap;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/**
 * What can send once-reflected light to a receiver: {@link Senders} that are {@link Facing} it. Among them the planes of flat mirrors, whose
 * image of the pupil is sampled unless there are many. Immutable.
 */
final class Reflectors {
    /** Above this number of planes a sample that picks one image at random is worse than a gathered ray. */
    private static final int MOST_IMAGES = 64;

    private final double[] planes;
    private final int[] planeNumbers;
    private final double largest;

    /**
     * Finds them for a receiver.
     *
     * @param lift how far starts are lifted from a face, mm
     */
    Reflectors(Scene scene, Senders senders, Receiver receiver, double lift) {
        Facing facing = new Facing(scene, receiver, lift);
        Mirrors mirrors = new Mirrors(scene, senders, facing);
        planeNumbers = mirrors.areMany() ? new int[0] : mirrors.planeNumbers();
        planes = new double[4 * planeNumbers.length];
        double image = 0;
        for (int i = 0; i < planeNumbers.length; i++) {
            image = Math.max(image, mirrors.largestOf.get(planeNumbers[i]));
            int facet = mirrors.facetOf.get(planeNumbers[i]);
            Vector3D normal = scene.normal(facet);
            planes[4 * i] = normal.getX();
            planes[4 * i + 1] = normal.getY();
            planes[4 * i + 2] = normal.getZ();
            planes[4 * i + 3] = normal.dot(scene.corner(facet, 0));
        }
        double followed = planeNumbers.length == 0 ? mirrors.strongest : mirrors.strongestNearPupil;
        largest = (largestScattered(scene, senders, facing) + Math.PI * followed + planeNumbers.length * image)
                / scene.referenceIrradiance();
    }

    /** The mirrors that face a receiver, by plane. Of more than {@link #MOST_IMAGES} planes only the strongest mirror matters. */
    private static final class Mirrors {
        private final Map<Integer, Integer> facetOf = new TreeMap<>();
        private final Map<Integer, Double> largestOf = new HashMap<>();
        private double strongest;
        private double strongestNearPupil;

        Mirrors(Scene scene, Senders senders, Facing facing) {
            for (int i = 0; i < senders.count(); i++) {
                double mirror = senders.mirror(i);
                if (mirror > 0 && (!areMany() || mirror > strongest) && mayGet(scene, senders, i, facing)) {
                    strongest = Math.max(strongest, mirror);
                    if (senders.isNearPupil(i)) {
                        strongestNearPupil = Math.max(strongestNearPupil, mirror);
                    }
                    facetOf.putIfAbsent(scene.plane(senders.facet(i)), senders.facet(i));
                    largestOf.merge(scene.plane(senders.facet(i)), senders.mirrorSample(i), Math::max);
                }
            }
        }

        boolean areMany() {
            return facetOf.size() > MOST_IMAGES;
        }

        int[] planeNumbers() {
            return facetOf.keySet().stream().mapToInt(Integer::intValue).toArray();
        }
    }

    private static double largestScattered(Scene scene, Senders senders, Facing facing) {
        for (int sender : senders.brightestFirst()) {
            if (mayGet(scene, senders, sender, facing)) {
                return senders.scatteredSample(sender);
            }
        }
        return 0;
    }

    private static boolean mayGet(Scene scene, Senders senders, int sender, Facing facing) {
        return facing.mayGet(
                senders.facet(sender),
                scene.surfaces().get(senders.surface(sender)).back());
    }

    /** No sample of once-reflected light can be larger than this, relative irradiance. */
    double largestSample() {
        return largest;
    }

    /** Number of planes whose image is sampled. */
    int imageCount() {
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
        return Arrays.binarySearch(planeNumbers, planeNumber) >= 0;
    }
}
