package darkrim.light;

import darkrim.reflection.Reflection;
import darkrim.sampling.Streams;
import darkrim.scene.Incidence;
import darkrim.scene.Scene;
import darkrim.scene.Surface;
import darkrim.trace.FacetTree;
import darkrim.trace.StartPoints;
import java.util.Arrays;
import java.util.Comparator;
import java.util.stream.IntStream;
import org.apache.commons.rng.UniformRandomProvider;

/**
 * The facets that can send once-reflected light to anything: those of surfaces that reflect and are not known to be dark. Each counts once for
 * every surface that it has. Immutable.
 */
final class Senders {
    /** With more senders than this, none is looked at: it would take longer than what it saves. */
    private static final int MOST_LOOKED_AT = 4096;

    /** Looks at the pupil from a sender. */
    private static final int LOOKS = 32;

    private final int[] facets;
    private final int[] surfaces;
    private final double[] scattered;
    private final double[] mirror;
    private final double[] samples;
    private final boolean[] nearPupil;
    private final double[] litShares;
    private final int[] brightestFirst;

    /**
     * @param lit by surface number, whether direct light may reach it
     */
    Senders(Scene scene, FacetTree tree, StartPoints starts, PupilSource pupil, Streams streams, boolean[] lit) {
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
        litShares = new double[count];
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
        if (count <= MOST_LOOKED_AT) {
            lookAtPupil(scene, new DirectLight(scene, tree, pupil), starts, streams);
        } else {
            Arrays.fill(litShares, 1);
        }
        brightestFirst = IntStream.range(0, count)
                .filter(i -> scattered[i] > 0)
                .boxed()
                .sorted(Comparator.comparingDouble(i -> -scattered[i]))
                .mapToInt(Integer::intValue)
                .toArray();
    }

    private void lookAtPupil(Scene scene, DirectLight direct, StartPoints starts, Streams streams) {
        double[] placed = new double[3];
        UniformRandomProvider random = streams.stream("light on senders", 0);
        for (int i = 0; i < facets.length; i++) {
            int facet = facets[i];
            boolean back = scene.surfaces().get(surfaces[i]).back();
            double side = back ? -1 : 1;
            double sum = 0;
            for (int k = 0; k < LOOKS; k++) {
                double root = Math.sqrt(random.nextDouble());
                starts.place(facet, 1 - root, root * random.nextDouble(), !back, placed);
                sum += direct.sample(
                        random,
                        placed[0],
                        placed[1],
                        placed[2],
                        side * scene.normal(facet, 0),
                        side * scene.normal(facet, 1),
                        side * scene.normal(facet, 2),
                        scene.plane(facet));
            }
            litShares[i] = sum * scene.referenceIrradiance() / LOOKS / samples[i];
        }
    }

    /** How many there are. */
    int count() {
        return facets.length;
    }

    /** About how much direct light a sender gets of what the largest sample says; a rough sample that may be 0 where some light comes. */
    double litShare(int sender) {
        return litShares[sender];
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

    static double leastHeight(Scene scene, PupilSource pupil, int facet) {
        double least = Double.POSITIVE_INFINITY;
        for (int k = 0; k < 3; k++) {
            least = Math.min(
                    least,
                    pupil.height(scene.corner(facet, k, 0), scene.corner(facet, k, 1), scene.corner(facet, k, 2)));
        }
        return least;
    }
}
