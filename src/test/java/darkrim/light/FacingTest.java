package darkrim.light;

import static org.assertj.core.api.Assertions.assertThat;

import darkrim.diagnostic.Place;
import darkrim.geom.Frame;
import darkrim.geom.Ring;
import darkrim.layout.Requirement.LightClass;
import darkrim.scene.Beam;
import darkrim.scene.Finish;
import darkrim.scene.Pupil;
import darkrim.scene.Scene;
import darkrim.scene.SceneBuilder;
import darkrim.scene.Surface;
import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.util.concurrent.TimeUnit;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What faces what, against the plain comparison of every facet with every facet. */
class FacingTest {
    /** Heights below this may go either way, mm: a start is lifted by 2^-47 of the bound, and a sixteenth of that is not counted. */
    private static final double EITHER_WAY = 1e-11;

    private static final double LIFT = 2e-12;

    private static final long MOST_SECONDS = 20;

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6})
    void theTreeFindsWhatTheComparisonOfAllPairsFinds(long seed) {
        Scene scene = new RandomScenes(seed).open(25);
        int facing = 0;
        int apart = 0;
        for (Surface on : scene.surfaces()) {
            Facing tree = new Facing(scene, new Receiver.OnSurface(on), LIFT);
            for (Surface from : scene.surfaces()) {
                for (int f = from.firstFacet(); f < from.firstFacet() + from.facetCount(); f++) {
                    double least = Math.min(highestInFrontOf(scene, on, f), highestSeenFrom(scene, from, f, on));
                    boolean found = tree.mayGet(f, from.back());
                    facing += found ? 1 : 0;
                    apart += found ? 0 : 1;
                    if (Math.abs(least) > EITHER_WAY) {
                        assertThat(found)
                                .as("%s gets from facet %d of %s", on.name(), f, from.name())
                                .isEqualTo(least > 0);
                    }
                }
            }
        }
        assertThat(facing).isGreaterThan(1000);
        assertThat(apart).isGreaterThan(1000);
    }

    /** Greatest height of a corner of a facet above a facet of the receiver, mm. */
    private static double highestInFrontOf(Scene scene, Surface on, int facet) {
        double highest = Double.NEGATIVE_INFINITY;
        for (int g = on.firstFacet(); g < on.firstFacet() + on.facetCount(); g++) {
            for (int k = 0; k < 3; k++) {
                highest = Math.max(highest, height(scene, on, g, scene.corner(facet, k)));
            }
        }
        return highest;
    }

    /** Greatest height of a corner of the receiver above a facet of a surface, mm. */
    private static double highestSeenFrom(Scene scene, Surface from, int facet, Surface on) {
        double highest = Double.NEGATIVE_INFINITY;
        for (int g = on.firstFacet(); g < on.firstFacet() + on.facetCount(); g++) {
            for (int k = 0; k < 3; k++) {
                highest = Math.max(highest, height(scene, from, facet, scene.corner(g, k)));
            }
        }
        return highest;
    }

    private static double height(Scene scene, Surface surface, int facet, Vector3D point) {
        Vector3D up = scene.normal(facet).multiply(surface.back() ? -1 : 1);
        return point.subtract(scene.corner(facet, 0)).dot(up);
    }

    /** Facets by facets would be 1e9 comparisons for each of the four surfaces and more than the time allowed, which other programs do not use up. */
    @Test
    void twoBowlsOfThirtyThousandFacetsAreFacedWithoutComparingAll() {
        ThreadMXBean processor = ManagementFactory.getThreadMXBean();
        long start = processor.getCurrentThreadCpuTime();
        SceneBuilder builder = new SceneBuilder();
        Finish grey = new Finish("grey", 0.3, 0.2);
        builder.sheet("bowl", grey, "bowl/back", grey, Place.IN_CODE);
        builder.sheet("dome", grey, "dome/back", grey, Place.IN_CODE);
        int around = 360;
        int rings = 45;
        for (int i = 0; i < rings; i++) {
            for (int j = 0; j < around; j++) {
                for (String name : new String[] {"bowl", "dome"}) {
                    double sign = name.equals("bowl") ? -1 : 1;
                    double up = sign < 0 ? 20 : -20;
                    Vector3D a = onSphere(i + 1.0, j, sign, up, rings, around);
                    Vector3D b = onSphere(i + 1.0, j + 1.0, sign, up, rings, around);
                    Vector3D c = onSphere(i + 2.0, j + 1.0, sign, up, rings, around);
                    Vector3D d = onSphere(i + 2.0, j, sign, up, rings, around);
                    builder.triangle(name, a, b, c).triangle(name, a, c, d);
                }
            }
        }
        Frame pupil = Frame.of(Vector3D.of(0, 0, 300), Vector3D.Unit.PLUS_X, Vector3D.Unit.MINUS_Y);
        Scene scene = builder.build(Beam.of(new Pupil(Ring.disc(20), pupil)));
        Transport transport = Transport.of(scene, 1);
        assertThat(scene.facetCount()).isEqualTo(4 * rings * around);
        for (Surface surface : scene.surfaces()) {
            Receiver receiver = new Receiver.OnSurface(surface);
            // Each sees the inside of the other and of itself; outside of both is nothing.
            boolean inside = surface.name().equals("dome") || surface.name().equals("bowl/back");
            assertThat(transport.largestSample(receiver, LightClass.ONCE_REFLECTED) > 0)
                    .as(surface.name())
                    .isEqualTo(inside);
            assertThat(transport
                            .batch(receiver, LightClass.ONCE_REFLECTED, 0, 2048)
                            .irradiance()
                            .samples())
                    .isEqualTo(2048);
        }
        assertThat(TimeUnit.NANOSECONDS.toSeconds(processor.getCurrentThreadCpuTime() - start))
                .as("seconds of the processor")
                .isLessThan(MOST_SECONDS);
    }

    /** A point of a sphere of 50 mm about a point of the axis, {@code ring} steps from its pole up to 60 degrees. */
    private static Vector3D onSphere(double ring, double step, double sign, double up, int rings, int around) {
        double fromPole = Math.PI / 3 * ring / (rings + 1);
        double angle = 2 * Math.PI * step / around;
        return Vector3D.of(
                50 * Math.sin(fromPole) * Math.cos(angle),
                50 * Math.sin(fromPole) * Math.sin(angle),
                up + sign * 50 * Math.cos(fromPole));
    }
}
