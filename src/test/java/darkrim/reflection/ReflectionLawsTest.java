package darkrim.reflection;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import darkrim.ChiSquare;
import java.util.List;
import java.util.stream.Stream;
import org.apache.commons.rng.UniformRandomProvider;
import org.apache.commons.rng.simple.RandomSource;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** What holds of every reflection: reciprocity, energy, bounds, and samplers that draw by their own density. */
class ReflectionLawsTest {
    private static final double[] ANGLES = {0, 20, 45, 70, 80, 88};

    static Stream<Samples.Named> all() {
        return Samples.all();
    }

    static Stream<Samples.Named> lobed() {
        return all().filter(each -> !each.reflection().lobes().isEmpty());
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("all")
    void bothDirectionsCanBeExchanged(Samples.Named each) {
        UniformRandomProvider random = RandomSource.XO_SHI_RO_256_PP.create(1);
        Reflection reflection = each.reflection();
        for (int i = 0; i < 2_000; i++) {
            double[] in = direction(random);
            double[] out = direction(random);
            double between = dot(in, out);
            assertThat(reflection.lobe(in[2], out[2], between)).isEqualTo(reflection.lobe(out[2], in[2], between));
            assertThat(reflection.broad(in[2], out[2])).isCloseTo(reflection.broad(out[2], in[2]), within(1e-14));
        }
    }

    /**
     * A furnace: what a surface sends one way when light of radiance 1 comes from everywhere is its reflectance for light from there (by
     * reciprocity); here by the middle rule over the disc of direction cosines, against the closed or panelled form.
     */
    @ParameterizedTest(name = "{0}")
    @MethodSource("all")
    void inAFurnaceItSendsItsReflectance(Samples.Named each) {
        for (double angle : ANGLES) {
            double out = StrictMath.cos(Math.toRadians(angle));
            double sine = Math.sqrt(1 - out * out);
            double sum = 0;
            int rings = 2_000;
            int turns = 240;
            // About the mirror direction, rings narrow toward it: u^3 as radius. The last ends where the disc does, or
            // beyond.
            for (int i = 0; i < rings; i++) {
                double inner = (1 + sine) * cube((double) i / rings);
                double outer = (1 + sine) * cube((i + 1.0) / rings);
                double radius = Math.sqrt((inner * inner + outer * outer) / 2);
                for (int j = 0; j < turns; j++) {
                    double turn = 2 * Math.PI * (j + 0.5) / turns;
                    double x = sine + radius * StrictMath.cos(turn);
                    double y = radius * StrictMath.sin(turn);
                    double in2 = 1 - x * x - y * y;
                    if (in2 > 0) {
                        double in = Math.sqrt(in2);
                        double scattered = each.reflection().lobe(in, out, in * out - sine * x)
                                + each.reflection().broad(in, out) / Math.PI;
                        sum += scattered * Math.PI * (outer * outer - inner * inner) / turns;
                    }
                }
            }
            double expected =
                    each.reflection().reflectance(out) - each.reflection().mirror(out);
            assertThat(sum).as("at %s deg", angle).isCloseTo(expected, within(2e-3 * expected + 1e-12));
        }
        assertThat(each.reflection().peak().reflectance()).isLessThanOrEqualTo(1 + 1e-9);
    }

    @Test
    void aCoatOverAWhiteBaseReflectsEverythingAtEveryAngle() {
        for (double n : new double[] {1, 1.3, 1.5, 2.5}) {
            for (double angle : ANGLES) {
                double got = Reflection.coat(n, 1).reflectance(StrictMath.cos(Math.toRadians(angle)));
                assertThat(got).as("n %s at %s deg", n, angle).isCloseTo(1, within(1e-9));
            }
        }
        assertThat(Reflection.coat(1, 0.3).reflectance(0.5)).isCloseTo(0.3, within(1e-12));
    }

    /** Random directions, half of them drawn by the sampler so that peaks are met. */
    @ParameterizedTest(name = "{0}")
    @MethodSource("all")
    void nothingIsLargerThanItsBound(Samples.Named each) {
        UniformRandomProvider random = RandomSource.XO_SHI_RO_256_PP.create(2);
        Reflection reflection = each.reflection();
        for (int i = 0; i < 20_000; i++) {
            double[] out = direction(random);
            double[] in = direction(random);
            if (!reflection.lobes().isEmpty() && i % 2 == 0) {
                double[] at = new double[2];
                if (!reflection.sampleLobe(out[2], random.nextDouble(), random.nextDouble(), at)) {
                    continue;
                }
                out = new double[] {Math.sqrt(1 - out[2] * out[2]), 0, out[2]};
                in = new double[] {-at[0], at[1], Math.sqrt(1 - at[0] * at[0] - at[1] * at[1])};
            }
            double between = dot(in, out);
            double lobe = reflection.lobe(in[2], out[2], between);
            assertThat(lobe).isLessThanOrEqualTo(reflection.greatestLobe() * (1 + 1e-12));
            if (lobe > 0) {
                double weight = lobe / reflection.lobeDensity(out[2], in[2], between);
                assertThat(weight).isLessThanOrEqualTo(reflection.greatestLobeWeight() * (1 + 1e-9));
            }
            assertThat(reflection.broad(in[2], out[2])).isLessThanOrEqualTo(reflection.greatestBroad() * (1 + 1e-12));
            double low = Math.min(in[2], out[2]);
            double high = Math.max(in[2], out[2]);
            double middle = low + random.nextDouble() * (high - low);
            assertThat(reflection.mirror(middle))
                    .isLessThanOrEqualTo(reflection.greatestMirror(low, high) * (1 + 1e-12));
        }
        for (int angle = 0; angle <= 90; angle++) {
            double cosine = StrictMath.cos(Math.toRadians(angle));
            assertThat(reflection.broadReflectance(cosine))
                    .isLessThanOrEqualTo(reflection.greatestBroadReflectance() * (1 + 1e-9));
            assertThat(reflection.lobeReflectance(cosine))
                    .isLessThanOrEqualTo(reflection.greatestLobeReflectance() * (1 + 1e-9));
        }
    }

    /**
     * Draws fall into rings and turns about the mirror direction as the density says; integrated over a cell it is found at many points of it. 12 rings
     * by 8 turns, at the level 1e-4 for each of 6 lobes and 3 angles.
     */
    @ParameterizedTest(name = "{0}")
    @MethodSource("lobed")
    void drawsFollowTheirDensity(Samples.Named each) {
        for (double angle : new double[] {0, 45, 80}) {
            double given = StrictMath.cos(Math.toRadians(angle));
            double sine = Math.sqrt(1 - given * given);
            int rings = 12;
            int turns = 8;
            double first = 1e-3;
            double[] edges = new double[rings + 1];
            for (int i = 1; i <= rings; i++) {
                edges[i] = first * StrictMath.pow(2 / first, (i - 1.0) / (rings - 1));
            }
            double[] due = new double[rings * turns + 1];
            double all = 0;
            for (int i = 0; i < rings; i++) {
                for (int j = 0; j < turns; j++) {
                    due[i * turns + j] =
                            due(each.reflection(), given, edges[i], edges[i + 1], (double) j / turns, 1.0 / turns);
                    all += due[i * turns + j];
                }
            }
            // What falls outside the disc.
            due[rings * turns] = 1 - all;
            long[] counts = new long[due.length];
            UniformRandomProvider random = RandomSource.XO_SHI_RO_256_PP.create(3);
            double[] at = new double[2];
            int draws = 200_000;
            for (int n = 0; n < draws; n++) {
                if (!each.reflection().sampleLobe(given, random.nextDouble(), random.nextDouble(), at)) {
                    counts[rings * turns]++;
                    continue;
                }
                double x = at[0] - sine;
                double radius = Math.sqrt(x * x + at[1] * at[1]);
                int ring = 0;
                while (ring < rings - 1 && radius > edges[ring + 1]) {
                    ring++;
                }
                double turn = StrictMath.atan2(at[1], x) / (2 * Math.PI);
                counts[ring * turns + Math.min(turns - 1, (int) ((turn < 0 ? turn + 1 : turn) * turns))]++;
            }
            ChiSquare.requireFit(counts, due, draws);
        }
    }

    /** Integral of the density over a cell, inside the disc only. */
    private static double due(Reflection lobes, double given, double inner, double outer, double turn, double width) {
        double sine = Math.sqrt(1 - given * given);
        int steps = 120;
        double sum = 0;
        for (int i = 0; i < steps; i++) {
            double low = inner + (outer - inner) * i / steps;
            double high = inner + (outer - inner) * (i + 1) / steps;
            double radius = Math.sqrt((low * low + high * high) / 2);
            for (int j = 0; j < steps; j++) {
                double at = 2 * Math.PI * (turn + width * (j + 0.5) / steps);
                double x = sine + radius * StrictMath.cos(at);
                double y = radius * StrictMath.sin(at);
                double out2 = 1 - x * x - y * y;
                if (out2 > 0) {
                    double out = Math.sqrt(out2);
                    sum += lobes.lobeDensity(given, out, given * out - sine * x)
                            * Math.PI
                            * (high * high - low * low)
                            * width
                            / steps;
                }
            }
        }
        return sum;
    }

    /** The bound of Fresnel's reflectance rests on the shape of both curves; here for indices of all sizes. */
    @Test
    void theSPolarisedReflectanceNeverFallsAndThePPolarisedOneHasOneLeast() {
        for (double logN = -2; logN <= 2; logN += 0.1) {
            for (double logK = -3; logK <= 2; logK += 0.1) {
                Fresnel face = new Fresnel(StrictMath.pow(10, logN), logK < -2.9 ? 0 : StrictMath.pow(10, logK), 1);
                boolean rising = false;
                for (int i = 1; i <= 900; i++) {
                    double before = StrictMath.cos(Math.toRadians((i - 1) / 10.0));
                    double after = StrictMath.cos(Math.toRadians(i / 10.0));
                    assertThat(face.s(after)).as(face.describe()).isGreaterThanOrEqualTo(face.s(before) - 1e-12);
                    double step = face.p(after) - face.p(before);
                    assertThat(rising && step < -1e-12)
                            .as("%s at %s deg", face.describe(), i / 10.0)
                            .isFalse();
                    rising |= step > 1e-12;
                }
            }
        }
    }

    @Test
    void aTableGivesWhatWasMeasured() {
        BrdfTable table = new BrdfTable(Samples.rows(new RollOff(0.03, 0.01, 2)));
        assertThat(table.worstMisfit()).isLessThan(0.1);
        assertThat(table.isInPlaneOnly()).isTrue();
        RollOff lobe = new RollOff(0.03, 0.01, 2);
        for (double angle : new double[] {5, 20, 45, 60}) {
            double cosine = StrictMath.cos(Math.toRadians(angle));
            assertThat(table.reflectance(cosine) / lobe.reflectance(cosine))
                    .as("%s deg", angle)
                    .isBetween(0.95, 1.05);
        }
        AngleTable steps = new AngleTable(List.of(0.0, 60.0, 90.0), List.of(0.2, 0.3, 0.9));
        assertThat(steps.at(StrictMath.cos(Math.toRadians(75)))).isCloseTo(0.6, within(1e-12));
        assertThat(ProductScatter.of(steps).reflectance(StrictMath.cos(Math.toRadians(75))))
                .isCloseTo(0.6, within(1e-9));
    }

    /** A step at 80 deg, 0.1 below and 0.9 above: its mean over the hemisphere is 0.1 sin^2(80 deg) + 0.9 cos^2(80 deg). */
    @Test
    void aTableWithTwoAnglesAllButAlikeHasTheMeanOfAStep() {
        double s = StrictMath.sin(Math.toRadians(80));
        double step = 0.1 * s * s + 0.9 * (1 - s * s);
        for (double gap : new double[] {1e-10, 1e-11, Math.ulp(80.0)}) {
            AngleTable table = new AngleTable(List.of(0.0, 80.0, 80 + gap), List.of(0.1, 0.1, 0.9));
            assertThat(table.mean()).as("%s deg", gap).isCloseTo(step, within(1e-11));
        }
    }

    private static double[] direction(UniformRandomProvider random) {
        double z = random.nextDouble();
        double turn = 2 * Math.PI * random.nextDouble();
        double s = Math.sqrt(1 - z * z);
        return new double[] {s * StrictMath.cos(turn), s * StrictMath.sin(turn), z};
    }

    private static double dot(double[] a, double[] b) {
        return a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
    }

    private static double cube(double x) {
        return x * x * x;
    }
}
