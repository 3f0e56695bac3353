package darkrim.shadow;

import static org.assertj.core.api.Assertions.assertThat;

import darkrim.assembly.ShippedLayouts;
import darkrim.layout.Requirement.LightClass;
import darkrim.light.Estimate;
import darkrim.light.RandomScenes;
import darkrim.light.Receiver;
import darkrim.light.Transport;
import darkrim.scene.Scene;
import darkrim.scene.Surface;
import darkrim.verdict.ConfidenceSequence;
import java.nio.file.Path;
import java.util.SplittableRandom;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Test;

/**
 * Sampled and exact direct irradiance agree: two ways that share no code but the scene and the tree.
 *
 * <p>At points by chance of every surface, the sampled mean of many rays is held against the exact irradiance of what the point sees, in
 * empirical Bernstein bounds at a risk of 1e-10, exact for any distribution: over less than 100,000 points a false alarm in 1e5 runs. All
 * points together show a bias that none shows alone: the sum of the differences over its standard error is normal (central limit theorem
 * over 1e4 points or more; 5 standard errors, 6e-7). The mean over a surface is held against the mean of the exact values at points by
 * chance, each in empirical Bernstein bounds at the same risk.
 */
class SampledAgainstExactTest {
    private static final double RISK = 1e-10;

    private static final int ROUND = 2_000;

    private int points;
    private int lit;
    private int surfaces;
    private double sum;
    private double variance;

    @Test
    void onEverySurfaceOfEveryShippedLayout() {
        for (Path file : ShippedLayouts.files()) {
            Scene scene = ShippedLayouts.scene(file);
            // Under a window the exact pupil is a larger one that holds the true one: WindowProofTest compares there.
            if (scene.beam().window().isEmpty()) {
                // Round parts have so many facets that a point costs a thousand times as much; few will do, of many
                // surfaces.
                boolean round = scene.facetCount() > ROUND;
                compare(scene, file.getFileName().toString(), round ? 2 : 8, 1_000, round ? 0 : 20_000);
            }
        }
        assertThat(lit).isGreaterThan(200);
        assertThat(surfaces).isGreaterThan(50);
        assertThat(Math.abs(sum)).isLessThanOrEqualTo(5 * Math.sqrt(variance));
    }

    @Test
    void onEverySurfaceOf500RandomScenes() {
        for (long seed = 1; seed <= 500; seed++) {
            compare(new RandomScenes(seed).open(2 + (int) (seed % 4)), "seed " + seed, 3, 400, 0);
        }
        assertThat(points).isGreaterThan(20_000);
        assertThat(lit).isGreaterThan(3_000);
        assertThat(Math.abs(sum)).isLessThanOrEqualTo(5 * Math.sqrt(variance));
    }

    private void compare(Scene scene, String name, int pointsEach, int rays, int surfaceRays) {
        Transport transport = Transport.of(scene, 7);
        VisiblePupil visible = new VisiblePupil(scene, transport.tree());
        SplittableRandom random = new SplittableRandom(name.hashCode());
        for (Surface surface : scene.surfaces()) {
            for (int i = 0; i < pointsEach; i++) {
                atAPoint(scene, transport, visible, surface, rays, random, name);
            }
            if (surfaceRays > 0) {
                Estimate whole = transport
                        .batch(new Receiver.OnSurface(surface), LightClass.DIRECT, 0, surfaceRays)
                        .irradiance();
                overTheSurface(exact(scene, visible, surface, 400, random), whole, name + " " + surface.name());
            }
        }
    }

    /** Compares at one point. */
    private void atAPoint(
            Scene scene,
            Transport transport,
            VisiblePupil visible,
            Surface surface,
            int rays,
            SplittableRandom random,
            String name) {
        int f = facet(scene, surface, random);
        Vector3D up = surface.back() ? scene.normal(f).negate() : scene.normal(f);
        // Lifted, so that the facet itself and its neighbours in the plane lie behind the point.
        Vector3D point = TestParts.point(scene, f, random).add(up.multiply(1e-12 * scene.bound()));
        double exact = visible.from(point, up).irradiance() / scene.referenceIrradiance();
        points++;
        Estimate got = transport
                .batch(new Receiver.AtPoint("point " + points, point, up), LightClass.DIRECT, 0, rays)
                .irradiance();
        ConfidenceSequence bounds = new ConfidenceSequence(RISK);
        assertThat(exact)
                .as("%s, %s at %s: sampled %s", name, surface.name(), point, got)
                .isBetween(bounds.lower(got, 1) - 1e-12, bounds.upper(got, 1) + 1e-12);
        // A point that sees nothing must get nothing, and the other way round no ray may come where none is seen.
        assertThat(got.mean() > 0 && exact < 1e-15)
                .as("%s, %s at %s: sampled %s, exact %s", name, surface.name(), point, got, exact)
                .isFalse();
        lit += exact > 0 ? 1 : 0;
        sum += got.mean() - exact;
        variance += got.variance() / rays;
    }

    /** The exact irradiance at points by chance of a surface, relative. */
    private static Estimate exact(
            Scene scene, VisiblePupil visible, Surface surface, int count, SplittableRandom random) {
        double mean = 0;
        double squares = 0;
        for (int i = 0; i < count; i++) {
            int f = facet(scene, surface, random);
            Vector3D up = surface.back() ? scene.normal(f).negate() : scene.normal(f);
            Vector3D point = TestParts.point(scene, f, random).add(up.multiply(1e-12 * scene.bound()));
            double value = visible.from(point, up).irradiance() / scene.referenceIrradiance();
            double step = value - mean;
            mean += step / (i + 1);
            squares += step * (value - mean);
        }
        return new Estimate(count, mean, squares / (count - 1), 0);
    }

    private void overTheSurface(Estimate exact, Estimate whole, String what) {
        ConfidenceSequence bounds = new ConfidenceSequence(RISK);
        // The irradiance of a point is the mean of samples there, so it is not larger than the largest of them.
        Estimate bounded = new Estimate(exact.samples(), exact.mean(), exact.variance(), whole.largest());
        surfaces += exact.mean() > 0 ? 1 : 0;
        assertThat(bounds.lower(bounded, 1)).as(what).isLessThanOrEqualTo(bounds.upper(whole, 1));
        assertThat(bounds.upper(bounded, 1)).as(what).isGreaterThanOrEqualTo(bounds.lower(whole, 1));
    }

    private static int facet(Scene scene, Surface surface, SplittableRandom random) {
        double left = surface.area() * random.nextDouble();
        int f = surface.firstFacet();
        while (f + 1 < surface.firstFacet() + surface.facetCount() && left > scene.facetArea(f)) {
            left -= scene.facetArea(f);
            f++;
        }
        return f;
    }
}
