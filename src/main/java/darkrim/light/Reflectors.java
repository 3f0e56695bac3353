package darkrim.light;

import darkrim.scene.Scene;
import darkrim.scene.Surface;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/**
 * What can send once-reflected light to a receiver: surfaces that are not known to be dark and have a part in front of it. Among them the
 * planes of flat mirrors, whose image of the pupil is sampled unless there are many. Immutable.
 */
final class Reflectors {
    /** Above this number of planes a sample that picks one image at random is worse than a gathered ray. */
    private static final int MOST_IMAGES = 64;

    private final double[] planes;
    private final int[] planeNumbers;
    private final boolean[] byImage;
    private final double largest;

    /**
     * Finds them for a receiver.
     *
     * @param lit by surface number, whether direct light may reach it
     */
    Reflectors(Scene scene, PupilSource pupil, boolean[] lit, Receiver receiver) {
        Map<Integer, Integer> facetOfPlane = new TreeMap<>();
        Map<Integer, Double> mirrorSample = new HashMap<>();
        double diffuse = 0;
        double anyMirror = 0;
        double mirrorNearPupil = 0;
        for (Surface surface : scene.surfaces()) {
            if (lit[surface.index()] && surface.finish().reflectance() > 0) {
                for (int f = surface.firstFacet(); f < surface.firstFacet() + surface.facetCount(); f++) {
                    if (isInFront(scene, receiver, surface, f)) {
                        double sample = pupil.largestSample(leastHeight(scene, pupil, f));
                        diffuse = Math.max(diffuse, surface.finish().diffuse() * sample);
                        if (surface.finish().mirror() > 0) {
                            double followed = surface.finish().mirror() * Math.PI;
                            anyMirror = Math.max(anyMirror, followed);
                            if (pupil.fillsTheSky(Math.max(0, leastHeight(scene, pupil, f)))) {
                                mirrorNearPupil = Math.max(mirrorNearPupil, followed);
                            }
                            facetOfPlane.putIfAbsent(scene.plane(f), f);
                            mirrorSample.merge(scene.plane(f), surface.finish().mirror() * sample, Math::max);
                        }
                    }
                }
            }
        }
        List<Integer> kept = facetOfPlane.size() > MOST_IMAGES ? List.of() : List.copyOf(facetOfPlane.keySet());
        byImage = new boolean[scene.planeCount()];
        planes = new double[4 * kept.size()];
        planeNumbers = new int[kept.size()];
        double image = 0;
        for (int i = 0; i < planeNumbers.length; i++) {
            planeNumbers[i] = kept.get(i);
            byImage[planeNumbers[i]] = true;
            image = Math.max(image, mirrorSample.get(planeNumbers[i]));
            int facet = facetOfPlane.get(planeNumbers[i]);
            Vector3D normal = scene.normal(facet);
            planes[4 * i] = normal.getX();
            planes[4 * i + 1] = normal.getY();
            planes[4 * i + 2] = normal.getZ();
            planes[4 * i + 3] = normal.dot(scene.corner(facet, 0));
        }
        double followed = kept.isEmpty() ? anyMirror : mirrorNearPupil;
        largest = (diffuse + followed + planeNumbers.length * image) / scene.referenceIrradiance();
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
        return byImage[planeNumber];
    }

    /** Whether a corner of the facet lies in front of the receiver and a corner of the receiver in front of the facet's surface. */
    private static boolean isInFront(Scene scene, Receiver receiver, Surface surface, int facet) {
        Vector3D normal = scene.normal(facet).multiply(surface.back() ? -1 : 1);
        if (receiver instanceof Receiver.AtPoint at) {
            return faces(at.position(), at.normal(), scene, facet) && sees(scene, facet, normal, at.position());
        }
        Surface on = ((Receiver.OnSurface) receiver).surface();
        boolean mayReceive = false;
        boolean maySend = false;
        for (int g = on.firstFacet(); g < on.firstFacet() + on.facetCount() && !(mayReceive && maySend); g++) {
            Vector3D facing = scene.normal(g).multiply(on.back() ? -1 : 1);
            mayReceive |= faces(scene.corner(g, 0), facing, scene, facet);
            for (int k = 0; k < 3; k++) {
                maySend |= sees(scene, facet, normal, scene.corner(g, k));
            }
        }
        return mayReceive && maySend;
    }

    private static boolean faces(Vector3D point, Vector3D facing, Scene scene, int facet) {
        for (int k = 0; k < 3; k++) {
            if (scene.corner(facet, k).subtract(point).dot(facing) > 0) {
                return true;
            }
        }
        return false;
    }

    private static boolean sees(Scene scene, int facet, Vector3D normal, Vector3D point) {
        return point.subtract(scene.corner(facet, 0)).dot(normal) > 0;
    }

    private static double leastHeight(Scene scene, PupilSource pupil, int facet) {
        double least = Double.POSITIVE_INFINITY;
        for (int k = 0; k < 3; k++) {
            Vector3D corner = scene.corner(facet, k);
            least = Math.min(least, pupil.height(corner.getX(), corner.getY(), corner.getZ()));
        }
        return least;
    }
}
