package darkrim.light;

import static org.assertj.core.api.Assertions.assertThat;

import darkrim.layout.Requirement.LightClass;
import darkrim.reflection.Reflection;
import darkrim.reflection.Samples;
import darkrim.sampling.SamplePoints;
import darkrim.scene.Scene;
import darkrim.scene.Surface;
import darkrim.verdict.ConfidenceSequence;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledIfSystemProperty;

/** Points drawn by links give what points drawn evenly give, and no sample is larger than is said. */
class LightLinksTest {
    private record Comparison(int count, double squares, List<String> apart, int linked) {}

    /** Some 50 comparisons or more; at 5 standard errors a false alarm in 6e-5 of all seeds, and the mean square leaves 1 +- 0.5 in 1e-3 or less. */
    @Test
    void linksFindTheSameLight() {
        requireTheSame(1, 8, 12_000, 5, 40);
    }

    /** 200 layouts; the number beyond 3 standard errors must be that of the normal law, 0.27 %, at most three times. */
    @Test
    @EnabledIfSystemProperty(named = "long", matches = "true")
    void linksFindTheSameLightIn200Layouts() {
        Comparison all = compare(1, 200, 50_000, 3);
        assertThat(all.count()).isGreaterThan(1000);
        assertThat(all.apart().size()).isLessThan((int) (3 * 0.0027 * all.count()) + 3);
        assertThat(all.squares() / all.count()).isBetween(0.85, 1.15);
    }

    private static void requireTheSame(long from, int count, int samples, double errors, int atLeast) {
        Comparison all = compare(from, count, samples, errors);
        assertThat(all.apart()).isEmpty();
        assertThat(all.linked()).isPositive();
        assertThat(all.count()).isGreaterThan(atLeast);
        assertThat(all.squares() / all.count()).isBetween(0.5, 1.5);
    }

    private static Comparison compare(long from, int count, int samples, double errors) {
        List<Reflection> finishes = Samples.all().map(Samples.Named::reflection).toList();
        int compared = 0;
        int linked = 0;
        double squares = 0;
        List<String> apart = new ArrayList<>();
        for (long seed = from; seed < from + count; seed++) {
            Scene open = new RandomScenes(seed).open(8);
            Scene scene = seed % 3 == 0 ? FinishedScenes.refinished(open, finishes) : open;
            Transport transport = Transport.of(scene, seed);
            Transport plain = transport.withoutLinks();
            for (Surface surface : scene.surfaces()) {
                Receiver at = new Receiver.OnSurface(surface);
                boolean has = transport.largestSample(at, LightClass.ONCE_REFLECTED)
                        < plain.largestSample(at, LightClass.ONCE_REFLECTED);
                linked += has ? 1 : 0;
                for (SamplePoints.Kind kind : has ? SamplePoints.Kind.values() : new SamplePoints.Kind[0]) {
                    int whole = samples - samples % 128;
                    Estimate one = transport
                            .batch(at, LightClass.ONCE_REFLECTED, 0, whole, kind)
                            .irradiance();
                    Estimate other = plain.batch(
                                    at, LightClass.ONCE_REFLECTED, 1, 2 * whole, SamplePoints.Kind.INDEPENDENT)
                            .irradiance();
                    if (!(other.standardError() < 0.1 * other.mean())) {
                        continue;
                    }
                    double z = (one.mean() - other.mean()) / Math.hypot(one.standardError(), other.standardError());
                    squares += z * z;
                    compared++;
                    if (Math.abs(z) > errors) {
                        apart.add(seed + " " + surface.name() + " " + kind + ": " + one + " against " + other);
                    }
                }
            }
        }
        return new Comparison(compared, squares, apart, linked);
    }

    /**
     * 1,000 repeats of 2,048 samples: the stated error covers the mean at the rate of the normal law (of 16 groups: Student's with 15 degrees of
     * freedom, 67 %) to 5 standard errors of that rate, and a bound at a risk of 5 % fails in no more than 5 %.
     */
    @Test
    @EnabledIfSystemProperty(named = "long", matches = "true")
    void errorsAndBoundsCoverAtTheStatedRate() {
        Scene scene = new RandomScenes(3).open(8);
        Transport transport = Transport.of(scene, 3);
        for (Surface surface : scene.surfaces()) {
            Receiver at = new Receiver.OnSurface(surface);
            for (SamplePoints.Kind kind : SamplePoints.Kind.values()) {
                List<Estimate> repeats = new ArrayList<>();
                Estimate all = Estimate.none(0);
                for (int i = 0; i < 1000; i++) {
                    Estimate one = transport
                            .batch(at, LightClass.ONCE_REFLECTED, i, 2048, kind)
                            .irradiance();
                    repeats.add(one);
                    all = all.and(one);
                }
                // Rare light is not normal after so few samples.
                if (!(all.variance() < 30 * all.mean() * all.mean())) {
                    continue;
                }
                double mean = all.mean();
                ConfidenceSequence bounds = new ConfidenceSequence(0.1);
                long covered = repeats.stream()
                        .filter(one -> Math.abs(one.mean() - mean) <= one.standardError())
                        .count();
                long outside = repeats.stream()
                        .filter(one -> bounds.lower(one, 1) > mean || bounds.upper(one, 1) < mean)
                        .count();
                assertThat(covered / 1000.0).as("%s %s", surface.name(), kind).isBetween(0.60, 0.76);
                assertThat(outside).as("%s %s", surface.name(), kind).isLessThanOrEqualTo(50);
            }
        }
    }

    @Test
    void noSampleIsLargerThanTheLargest() {
        for (long seed = 1; seed <= 6; seed++) {
            Scene scene = new RandomScenes(seed).open(8);
            Transport transport = Transport.of(scene, seed);
            for (Surface surface : scene.surfaces()) {
                Receiver at = new Receiver.OnSurface(surface);
                double largest = transport.largestSample(at, LightClass.ONCE_REFLECTED) * (1 + 1e-9);
                for (int i = 0; i < 100; i++) {
                    assertThat(transport
                                    .batch(at, LightClass.ONCE_REFLECTED, i, 1)
                                    .irradiance()
                                    .mean())
                            .as("%s %s", seed, surface.name())
                            .isLessThanOrEqualTo(largest);
                }
            }
        }
    }
}
