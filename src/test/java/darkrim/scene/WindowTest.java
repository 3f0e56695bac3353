package darkrim.scene;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import darkrim.geom.Frame;
import darkrim.geom.Polygon;
import darkrim.geom.Ring;
import darkrim.reference.Validation;
import darkrim.reflection.Fresnel;
import java.util.Optional;
import java.util.OptionalDouble;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.apache.commons.rng.UniformRandomProvider;
import org.apache.commons.rng.simple.RandomSource;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;

@ExtendWith(Validation.class)
class WindowTest {
    private static final Window GLASS = plain(20, 4, 1.5);

    private static Window plain(double bottom, double thickness, double index) {
        return new Window("window", bottom, thickness, index, OptionalDouble.empty(), OptionalDouble.empty(), 1);
    }

    /** d = t sin a (1 - cos a / sqrt(n2 - sin2 a)), across the ray: Born and Wolf's plane plate (from memory). */
    @Test
    void aRayIsDisplacedAsAPlanePlateDisplacesIt() {
        for (double degrees = 0; degrees < 89; degrees += 4) {
            double a = Math.toRadians(degrees);
            double sine = Math.sin(a);
            double expected = 4 * sine * (1 - Math.cos(a) / Math.sqrt(1.5 * 1.5 - sine * sine));
            double straight = 70 * Math.tan(a);
            double displaced = (straight - GLASS.aside(70, Math.tan(a))) * Math.cos(a);
            Validation.requireExact(
                    "L01 %02.0f deg".formatted(degrees),
                    "displacement of a ray by 4 mm of n = 1.5, mm",
                    "t sin a (1 - cos a / sqrt(n2 - sin2 a)): Born and Wolf, Principles of Optics, plane plate (from memory)",
                    expected,
                    "the window's law",
                    displaced,
                    1e-12 * (1 + straight));
        }
    }

    /** Focus shift of a plane plate near the axis: t (1 - 1 / n). */
    @Test
    void nearTheAxisThePupilSeemsNearerByTheFocusShift() {
        assertThat(GLASS.shift()).isCloseTo(4 - 4 / 1.5, within(1e-15));
        assertThat(GLASS.aside(70, 1e-4) / 1e-4).isCloseTo(70 - GLASS.shift(), within(1e-6));
        assertThat(GLASS.solidAngle(70, 0)).isCloseTo(1 / Math.pow(70 - GLASS.shift(), 2), within(1e-15));
    }

    @Test
    void theSlopeFoundLeadsToTheDistanceAskedFor() {
        UniformRandomProvider random = RandomSource.XO_RO_SHI_RO_128_PP.create(4);
        for (int i = 0; i < 10_000; i++) {
            Window window = plain(1, 0.1 + 20 * random.nextDouble(), 1 + 3 * random.nextDouble());
            double height = window.thickness() + 100 * random.nextDouble() + 0.01;
            double aside = 300 * random.nextDouble();
            assertThat(window.aside(height, window.slope(height, aside))).isCloseTo(aside, within(1e-11 * (1 + aside)));
        }
    }

    /** The solid angle against the difference quotient of 2 pi (1 - cos a) over pi r2. */
    @Test
    void theSolidAngleIsThatOfThinRings() {
        for (double slope = 0.05; slope < 5; slope *= 1.3) {
            double h = 1e-5 * slope;
            double low = slope - h;
            double high = slope + h;
            double solid = 2 * (1 / Math.sqrt(1 + low * low) - 1 / Math.sqrt(1 + high * high));
            double area = Math.pow(GLASS.aside(70, high), 2) - Math.pow(GLASS.aside(70, low), 2);
            assertThat(GLASS.solidAngle(70, slope) * area / solid).isCloseTo(1, within(1e-7));
        }
    }

    @Test
    void whatAStraightLineExceedsNeverFallsAndIsItsDistanceFromTheWay() {
        double last = 0;
        for (double slope = 0; slope < 10; slope += 0.01) {
            double excess = GLASS.excess(slope);
            assertThat(excess).isGreaterThanOrEqualTo(last);
            assertThat((70 - GLASS.shift()) * slope - GLASS.aside(70, slope)).isCloseTo(excess, within(1e-11));
            last = excess;
        }
    }

    /** T = (1 - R) / (1 + R) and 2 R / (1 + R), for each polarisation; R from the law that finishes have. */
    @Test
    void withoutAbsorptionAPlatePassesAndThrowsBackWhatTwoFacesDo() {
        Fresnel face = Fresnel.of(1.5);
        for (double cosine = 0.01; cosine <= 1; cosine += 0.01) {
            double s = face.s(cosine);
            double p = face.p(cosine);
            double passes = ((1 - s) / (1 + s) + (1 - p) / (1 + p)) / 2;
            assertThat(GLASS.transmittance(cosine)).isCloseTo(passes, within(1e-12));
            assertThat(GLASS.reflectance(cosine)).isCloseTo(s / (1 + s) + p / (1 + p), within(1e-12));
            assertThat(GLASS.transmittance(cosine) + GLASS.reflectance(cosine)).isCloseTo(1, within(1e-12));
        }
        assertThat(GLASS.transmittance(1)).isCloseTo(0.96 / 1.04, within(1e-15));
    }

    /** Light is followed to and fro between the faces; what is left of it in the plate is less than 1e-15. */
    @Test
    void whatPassesIsThrownBackAndIsAbsorbedIsAll() {
        Window filter = new Window("filter", 5, 2, 1.8, OptionalDouble.of(0.1), OptionalDouble.of(0.3), 0.6);
        for (double cosine : new double[] {1, 0.8, 0.5, 0.2}) {
            double within = Math.sqrt(1 - (1 - cosine * cosine) / (1.8 * 1.8));
            double leaves = Math.pow(0.6, 1 / within);
            double inside = 0.9;
            double back = 0.1;
            double through = 0;
            double absorbed = 0;
            boolean up = true;
            while (inside > 1e-16) {
                absorbed += inside * (1 - leaves);
                inside *= leaves;
                double face = up ? 0.3 : 0.1;
                if (up) {
                    through += inside * (1 - face);
                } else {
                    back += inside * (1 - face);
                }
                inside *= face;
                up = !up;
            }
            assertThat(filter.transmittance(cosine)).isCloseTo(through, within(1e-14));
            assertThat(filter.reflectance(cosine)).isCloseTo(back, within(1e-14));
            assertThat(through + back + absorbed).isCloseTo(1, within(1e-14));
        }
    }

    /** Shares of what comes back after k round trips: (1 - r1)2 r1^(k-1) r2^k, or r1. Each differs by more than 5 sigma in 1 of 10^6 runs. */
    @Test
    void roundTripsAreDrawnAsOftenAsLightComesByThem() {
        Window coated = new Window("coated", 5, 2, 1.8, OptionalDouble.of(0.3), OptionalDouble.of(0.5), 1);
        UniformRandomProvider random = RandomSource.XO_RO_SHI_RO_128_PP.create(11);
        int count = 200_000;
        int[] drawn = new int[5];
        for (int i = 0; i < count; i++) {
            drawn[Math.min(4, coated.roundTrips(0.7, random.nextDouble(), random.nextDouble()))]++;
        }
        double all = coated.reflectance(0.7);
        double[] expected = {0.3 / all, 0.245 / all, 0.03675 / all, 0.0055125 / all};
        for (int k = 0; k < expected.length; k++) {
            double sigma = Math.sqrt(expected[k] * (1 - expected[k]) / count);
            assertThat((double) drawn[k] / count).isCloseTo(expected[k], within(5 * sigma));
        }
    }

    /** Ways from every corner and point between to the rim and the inside meet the covering pupil on their straight line. */
    @Test
    void theCoveringPupilHoldsTheStraightLineOfEveryWay() {
        Frame down =
                new Frame(Vector3D.of(1, 2, 40), Vector3D.Unit.PLUS_X, Vector3D.Unit.MINUS_Y, Vector3D.Unit.MINUS_Z);
        Window thick = plain(12, 15, 2.4);
        UniformRandomProvider random = RandomSource.XO_RO_SHI_RO_128_PP.create(5);
        for (Pupil pupil : new Pupil[] {new Pupil(new Ring(12, 5), down), new Pupil(Polygon.rectangle(20, 8), down)}) {
            double[] corners = {-20, -10, 0, 20, -15, 3, 5, 30, 11};
            Beam beam = Beam.of(pupil).through(thick);
            Pupil seems = ApparentPupil.covering(beam, corners).pupil();
            double[] at = new double[2];
            double farthest = 0;
            for (int i = 0; i < 20_000; i++) {
                double a = random.nextDouble();
                double b = random.nextDouble() * (1 - a);
                Vector3D point = Vector3D.of(-20, -10, 0)
                        .multiply(a)
                        .add(Vector3D.of(20, -15, 3).multiply(b))
                        .add(Vector3D.of(5, 30, 11).multiply(1 - a - b));
                pupil.outline().place(random.nextDouble(), random.nextDouble(), at);
                Vector3D from = pupil.frame().at(at[0], at[1]);
                double height = from.getZ() - point.getZ();
                double aside = Math.hypot(from.getX() - point.getX(), from.getY() - point.getY());
                double slope = thick.slope(height, aside);
                Vector3D way = Vector3D.of(
                        slope * (from.getX() - point.getX()) / aside, slope * (from.getY() - point.getY()) / aside, 1);
                assertThat(beam.origin(point, way).distance(from)).isLessThan(1e-9);
                Vector3D on = point.add(way.multiply(height - thick.shift()));
                double u = seems.frame().inU(on);
                double v = seems.frame().inV(on);
                assertThat(seems.outline().contains(u, v)).isTrue();
                farthest = Math.max(farthest, Math.hypot(u - at[0], v - at[1]));
            }
            // The bound is not idle: lines miss the paraxial image of their points by much of it.
            assertThat(farthest).isGreaterThan(0.5);
        }
    }

    @Test
    void aBeamWithoutWindowCoversItself() {
        Beam beam = Beam.of(new Pupil(
                Ring.disc(3),
                new Frame(Vector3D.of(0, 0, 9), Vector3D.Unit.PLUS_X, Vector3D.Unit.MINUS_Y, Vector3D.Unit.MINUS_Z)));
        assertThat(ApparentPupil.covering(beam, new double[] {0, 0, 0, 1, 0, 0, 0, 1, 0}))
                .isSameAs(beam);
        assertThat(beam.window()).isEqualTo(Optional.empty());
    }
}
