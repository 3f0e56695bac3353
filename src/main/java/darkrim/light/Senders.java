package darkrim.light;

import darkrim.reflection.Reflection;
import darkrim.scene.Incidence;
import darkrim.scene.Scene;
import darkrim.scene.Surface;
import java.util.Comparator;
import java.util.stream.IntStream;

/**
 * The facets that can send once-reflected light to anything: those of surfaces that reflect and are not known to be dark. Each counts once for
 * every surface that it has. Immutable.
 */
final class Senders {
    private final int[] facets;
    private final int[] surfaces;
    private final double[] scattered;
    private final double[] mirror;
    private final double[] samples;
    private final boolean[] nearPupil;
    private final int[] brightestFirst;

    /**
     * @param lit by surface number, whether direct light may reach it
     */
    Senders(Scene scene, PupilSource pupil, boolean[] lit) {
        int count = 0;
        for (Surface surface : scene.surfaces()) {
            count += sends(surface, lit) ? surface.facetCount() : 0;
        }
        facets = new int[count];
        surfaces = new int[count];
        scattered = new double[count];
        mirror = new double[count];
        samples = new double[count];
        nearPupil = new boolean[count];
        int next = 0;
        for (Surface surface : scene.surfaces()) {
            for (int i = 0; i < surface.facetCount() && sends(surface, lit); i++, next++) {
                facets[next] = surface.firstFacet() + i;
                surfaces[next] = surface.index();
                double height = leastHeight(scene, pupil, facets[next]);
                samples[next] = pupil.largestSample(height);
                Reflection reflection = surface.finish().reflection();
                scattered[next] = largestScattered(reflection, samples[next]);
                mirror[next] = reflection.hasMirror() ? greatestMirror(scene, surface, facets[next]) : 0;
                nearPupil[next] = pupil.fillsTheSky(Math.max(0, height));
            }
        }
        brightestFirst = IntStream.range(0, count)
                .filter(i -> scattered[i] > 0)
                .boxed()
                .sorted(Comparator.comparingDouble(i -> -scattered[i]))
                .mapToInt(Integer::intValue)
                .toArray();
    }

    /** How many there are. */
    int count() {
        return facets.length;
    }

    /** Numbers of the senders that scatter, those with the largest {@link #scatteredSample} first. */
    int[] brightestFirst() {
        return brightestFirst;
    }

    /** The facet of a sender. */
    int facet(int sender) {
        return facets[sender];
    }

    /** The surface of a sender. */
    int surface(int sender) {
        return surfaces[sender];
    }

    /** No sample of all but its mirror part is larger, sr. */
    double scatteredSample(int sender) {
        return scattered[sender];
    }

    /** No reflectance of its mirror part is larger at the angles at which light from the pupil can strike it. */
    double mirror(int sender) {
        return mirror[sender];
    }

    /** No sample of its mirror part through the image of the pupil is larger, sr. */
    double mirrorSample(int sender) {
        return mirror[sender] * samples[sender];
    }

    /** Whether it lies so near the pupil that its mirror part may be found by following the gathered ray. */
    boolean isNearPupil(int sender) {
        return nearPupil[sender];
    }

    private static boolean sends(Surface surface, boolean[] lit) {
        return lit[surface.index()] && surface.finish().reflects();
    }

    /**
     * What scatters broadly is sampled by the pupil alone. Lobes are sampled by both, and each of the two samples is at most the BRDF over the sum of
     * both densities: over that of the pupil it is the BRDF times a sample of direct light, over that of the lobe its weight.
     */
    private static double largestScattered(Reflection reflection, double sample) {
        double lobes = Math.min(reflection.greatestLobe() * sample, reflection.greatestLobeWeight());
        return reflection.greatestBroad() * sample + 2 * Math.PI * lobes;
    }

    private static double greatestMirror(Scene scene, Surface surface, int facet) {
        Incidence incidence = Incidence.of(
                scene.covering().pupil(),
                scene.corner(facet, 0),
                scene.corner(facet, 1),
                scene.corner(facet, 2),
                surface.back() ? scene.normal(facet).negate() : scene.normal(facet));
        return surface.finish().reflection().greatestMirror(incidence.least(), incidence.most());
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
}
