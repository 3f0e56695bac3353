package darkrim.light;

import darkrim.scene.Scene;
import java.util.HashMap;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;

/**
 * What can send once-reflected light to a receiver: {@link Senders} that are {@link Facing} it. Among them the planes of flat mirrors, whose
 * image of the pupil is sampled unless there are many. Immutable.
 */
final class Reflectors {
    private final ImagePlanes images;
    private final double largest;

    /**
     * Finds them for a receiver.
     *
     * @param lift how far starts are lifted from a face, mm
     */
    Reflectors(Scene scene, Senders senders, Receiver receiver, double lift) {
        Facing facing = new Facing(scene, receiver, lift);
        Mirrors mirrors = new Mirrors(scene, senders, facing);
        // Through a window the image of the pupil is not that of a flat outline: mirrors are followed instead.
        images = new ImagePlanes(scene, scene.beam().window().isPresent() ? new TreeMap<>() : mirrors.facetOf);
        double image = 0;
        for (int i = 0; i < images.count(); i++) {
            image = Math.max(image, mirrors.largestOf.get(images.number(i)));
        }
        double followed = images.count() == 0 ? mirrors.strongest : mirrors.strongestNearPupil;
        largest = (largestScattered(scene, senders, facing) + Math.PI * followed + images.count() * image)
                / scene.referenceIrradiance();
    }

    /** The mirrors that face a receiver, by plane. Of more than {@link ImagePlanes#MOST} planes only the strongest mirror matters. */
    private static final class Mirrors {
        private final SortedMap<Integer, Integer> facetOf = new TreeMap<>();
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
            return facetOf.size() > ImagePlanes.MOST;
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

    /** The planes whose image is sampled, at points where the pupil does not fill the sky. */
    ImagePlanes images() {
        return images;
    }
}
