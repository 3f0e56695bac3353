package darkrim.hard;

import darkrim.layout.Requirement.LightClass;
import darkrim.light.Estimate;
import darkrim.light.ForwardTally;
import darkrim.light.ForwardTracer;
import darkrim.light.RandomScenes;
import darkrim.light.Receiver;
import darkrim.light.Transport;
import darkrim.scene.Scene;
import darkrim.scene.Surface;
import darkrim.shadow.Darkness;
import darkrim.shadow.DarknessProof;
import darkrim.shadow.ProofSettings;
import darkrim.shadow.VisiblePupil;
import darkrim.verdict.ConfidenceSequence;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.apache.commons.statistics.distribution.PoissonDistribution;

/**
 * Scenes by chance, each asked in two ways: {@code Ways SCENES SEED MINUTES}. Exact irradiance at points against samples there; light followed
 * forward against light gathered back, on whole surfaces; proofs of darkness against samples; the tree against all facets one by one. Prints one line.
 *
 * <p>Exit code 1 on a contradiction, or if more comparisons differ by over three standard errors than chance gives one time in a million. A
 * contradiction is: a ray that reaches what is proved dark; samples where the exact value is nothing, or an exact value outside the empirical
 * Bernstein bounds at a risk of 1e-10; another facet or blocker by the tree than by the loop. False alarms: below 1e-6 for the counts, where the
 * means are normal, and 1e-10 for each comparison.
 */
public final class Ways {
    private static final int RAYS_AT_A_POINT = 2_048;
    /** Of one batch few pairs of rays may differ, and the error that they tell is then itself uncertain: several are taken together. */
    private static final int BATCHES_AT_A_POINT = 16;

    private static final int RAYS_BACK = 8_192;
    private static final int PACKETS = 40_000;
    /** A mean of fewer hits, or misses, is not normal. */
    private static final double HITS = 200;
    /** Nor is that of fewer packets, which differ in weight. */
    private static final double PACKETS_DUE = 800;

    private static final double RISK = 1e-10;
    /** Share of a normal variable beyond three standard errors, both sides. */
    private static final double BEYOND = 0.0026998;

    private int scenes;
    private int exactCompared;
    private int exactBeyond;
    private int forwardCompared;
    private int forwardBeyond;
    private int proved;
    private long traced;
    private final List<String> contradictions = new ArrayList<>();

    private Ways() {}

    /** Tries scenes until there are enough or the time is over. */
    public static void main(String[] arguments) {
        int most = Integer.parseInt(arguments[0]);
        long seed = Long.parseLong(arguments[1]);
        long end = System.nanoTime() + (long) (Double.parseDouble(arguments[2]) * 60e9);
        Ways ways = new Ways();
        SplittableRandom seeds = new SplittableRandom(seed);
        while (ways.scenes < most && System.nanoTime() < end) {
            ways.compare(seeds.nextLong());
        }
        ways.contradictions.forEach(System.out::println);
        System.out.println(ways);
        System.exit(ways.isSound() ? 0 : 1);
    }

    private boolean isSound() {
        return contradictions.isEmpty()
                && scenes > 0
                && isLikely(exactBeyond, exactCompared)
                && isLikely(forwardBeyond, forwardCompared);
    }

    /** Whether so many, or more, are beyond three standard errors more often than once in a million. */
    private static boolean isLikely(int beyond, int compared) {
        return beyond == 0 || PoissonDistribution.of(BEYOND * compared).survivalProbability(beyond - 1) > 1e-6;
    }

    @Override
    public String toString() {
        return String.format(
                Locale.ROOT,
                "%d layouts; beyond 3 standard errors: exact and sampled %d of %d (expected %.1f), forward and backward %d of %d"
                        + " (expected %.1f); %d surfaces proved dark, %,d rays by tree and loop; contradictions: %d",
                scenes,
                exactBeyond,
                exactCompared,
                BEYOND * exactCompared,
                forwardBeyond,
                forwardCompared,
                BEYOND * forwardCompared,
                proved,
                traced,
                contradictions.size());
    }

    private void compare(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        Scene scene = new RandomScenes(seed).open(1 + random.nextInt(8));
        Transport transport = Transport.of(scene, seed);
        VisiblePupil visible = new VisiblePupil(scene, transport.tree());
        DarknessProof proof = new DarknessProof(scene, transport.tree(), new ProofSettings(0.01, 2_000, 1e-6));
        ForwardTally forward = new ForwardTracer(scene, transport.tree(), seed).trace(PACKETS, 2);
        for (Surface surface : scene.surfaces()) {
            atAPoint(seed, scene, transport, visible, surface, random);
            Estimate direct = back(transport, surface, LightClass.DIRECT);
            if (proof.of(surface) instanceof Darkness.Dark) {
                proved++;
                if (direct.mean() > 0 || forward.irradiance(surface, 0).mean() > 0) {
                    contradictions.add(seed + " " + surface.name() + ": proved dark, and lit");
                }
            }
            bothWays(surface, forward, 0, direct);
            bothWays(surface, forward, 1, back(transport, surface, LightClass.ONCE_REFLECTED));
        }
        traced +=
                FacetLoop.compare(scene, transport.tree(), random, 100, what -> contradictions.add(seed + " " + what));
        scenes++;
    }

    private static Estimate back(Transport transport, Surface surface, LightClass light) {
        return transport
                .batch(new Receiver.OnSurface(surface), light, 0, RAYS_BACK)
                .irradiance();
    }

    private void atAPoint(
            long seed,
            Scene scene,
            Transport transport,
            VisiblePupil visible,
            Surface surface,
            SplittableRandom random) {
        int f = surface.firstFacet() + random.nextInt(surface.facetCount());
        double root = Math.sqrt(random.nextDouble());
        double share = random.nextDouble();
        Vector3D up = surface.back() ? scene.normal(f).negate() : scene.normal(f);
        Vector3D point = Vector3D.Sum.create()
                .addScaled(1 - root, scene.corner(f, 0))
                .addScaled(root * (1 - share), scene.corner(f, 1))
                .addScaled(root * share, scene.corner(f, 2))
                // Lifted, so that the facet itself and its neighbours in the plane lie behind the point.
                .addScaled(1e-12 * scene.bound(), up)
                .get();
        double exact = visible.from(point, up).irradiance() / scene.referenceIrradiance();
        // Random numbers go by the name: points of one name would differ from the exact value together.
        Receiver receiver = new Receiver.AtPoint("point of " + surface.name(), point, up);
        Estimate got = IntStream.range(0, BATCHES_AT_A_POINT)
                .mapToObj(batch -> transport
                        .batch(receiver, LightClass.DIRECT, batch, RAYS_AT_A_POINT)
                        .irradiance())
                .reduce(Estimate::and)
                .orElseThrow();
        ConfidenceSequence bounds = new ConfidenceSequence(RISK);
        if ((got.mean() > 0 && exact < 1e-15)
                || exact < bounds.lower(got, 1) - 1e-12
                || exact > bounds.upper(got, 1) + 1e-12) {
            contradictions.add(seed + " " + surface.name() + " at " + point + ": exact " + exact + ", sampled " + got);
        }
        double hits = RAYS_AT_A_POINT * got.mean() / got.largest();
        // As many in each batch.
        if (hits > HITS && hits < RAYS_AT_A_POINT - HITS && got.standardError() > 1e-9) {
            exactCompared++;
            exactBeyond += Math.abs(got.mean() - exact) > 3 * got.standardError() ? 1 : 0;
        }
    }

    private void bothWays(Surface surface, ForwardTally forward, int reflections, Estimate back) {
        Estimate there = forward.irradiance(surface, reflections);
        // Enough packets must be due for their mean to be normal; judged by the other way alone.
        double due = back.mean() * surface.area() * there.samples() / forward.emitted();
        if (due < PACKETS_DUE || back.standardError() > 0.05 * back.mean()) {
            return;
        }
        forwardCompared++;
        double error = Math.hypot(there.standardError(), back.standardError());
        forwardBeyond += Math.abs(there.mean() - back.mean()) > 3 * error ? 1 : 0;
    }
}
