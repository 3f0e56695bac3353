package darkrim.light;

import darkrim.scene.Scene;
import java.util.Arrays;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;

/**
 * What can send once-reflected light to a receiver: {@link Senders} that are {@link Facing} it. Among them the planes of flat mirrors, whose
 * image of the pupil is sampled unless there are many. Immutable.
 */
final class Reflectors {
    private final ImagePlanes images;
    private final double[] imageUpTo;
    private final double[] perChance;
    private final Optional<LightLinks> links;
    private final double largest;

    /**
     * Finds them for a receiver.
     *
     * @param lift how far starts are lifted from a face, mm
     * @param linking whether points may be drawn by links
     */
    Reflectors(Scene scene, Senders senders, Receiver receiver, double lift, boolean linking) {
        Facing facing = new Facing(scene, receiver, lift);
        Mirrors mirrors = new Mirrors(scene, senders, facing);
        // Through a window the image of the pupil is not that of a flat outline: mirrors are followed instead.
        images = new ImagePlanes(scene, scene.beam().window().isPresent() ? new TreeMap<>() : mirrors.facetOf);
        perChance = new double[images.count()];
        imageUpTo = new double[images.count()];
        double image = 0;
        for (int i = 0; i < images.count(); i++) {
            image += mirrors.largestOf.get(images.number(i));
            imageUpTo[i] = image;
        }
        for (int i = 0; i < images.count(); i++) {
            perChance[i] = image / mirrors.largestOf.get(images.number(i));
        }
        double followed = images.count() == 0 ? mirrors.strongest : mirrors.strongestNearPupil;
        double gathered = largestScattered(scene, senders, facing) + Math.PI * followed;
        // What is followed needs a ray that looks anywhere.
        boolean mayLink = linking && gathered > 0 && followed == 0;
        links = (mayLink ? LinkRefinement.of(scene, senders, receiver, facing, lift) : Optional.<LightLinks>empty())
                .filter(found -> found.largest() < gathered);
        largest = (links.map(LightLinks::largest).orElse(gathered) + image) / scene.referenceIrradiance();
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

    /** The links by which points are drawn; empty where points are drawn evenly and looked at from anywhere. */
    Optional<LightLinks> links() {
        return links;
    }

    /** The image at a share (0 to 1) of the largest samples of all: the more can come by an image, the more often it is picked. */
    int pickImage(double share) {
        int found = Arrays.binarySearch(imageUpTo, share * imageUpTo[imageUpTo.length - 1]);
        return Math.min(imageUpTo.length - 1, found >= 0 ? found + 1 : -found - 1);
    }

    /** One over the chance that an image is picked. */
    double perChance(int image) {
        return perChance[image];
    }

    /** The planes whose image is sampled, at points where the pupil does not fill the sky. */
    ImagePlanes images() {
        return images;
    }
}
