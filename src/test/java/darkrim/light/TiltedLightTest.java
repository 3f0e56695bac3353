package darkrim.light;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import darkrim.diagnostic.Place;
import darkrim.geom.Frame;
import darkrim.geom.Ring;
import darkrim.layout.Requirement.LightClass;
import darkrim.scene.Beam;
import darkrim.scene.CellGrid;
import darkrim.scene.Finish;
import darkrim.scene.Pupil;
import darkrim.scene.Scene;
import darkrim.scene.SceneBuilder;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Direct light cell by cell, and where rays begin and at what angle they strike, in scenes that lie along no axis; fixed seeds. */
class TiltedLightTest {
    private static final int SAMPLES = 20_000;

    private static Beam beam(double radius, Vector3D middle) {
        return Beam.of(new Pupil(Ring.disc(radius), Frame.of(middle, Vector3D.Unit.PLUS_X, Vector3D.Unit.MINUS_Y)));
    }

    private static Vector3D at(double x, double y, double z) {
        return Vector3D.of(x, y, z);
    }

    /** A floor of four cells, the first of which has a lid. */
    private static Scene halfLid() {
        SceneBuilder builder = new SceneBuilder()
                .sheet("floor", Finish.ABSORBER, "under", Finish.ABSORBER, Place.IN_CODE)
                .sheet("lid", Finish.ABSORBER, "lid/under", Finish.ABSORBER, Place.IN_CODE);
        builder.quad("floor", at(-5, -5, 0), at(5, -5, 0), at(5, 5, 0), at(-5, 5, 0));
        builder.quad("lid", at(-7, -7, 0.01), at(0, -7, 0.01), at(0, 0, 0.01), at(-7, 0, 0.01));
        builder.grid("floor", new CellGrid(at(-5, -5, 0), at(10, 0, 0), at(0, 10, 0), 2, 2));
        return builder.build(beam(1, at(0, 0, 150)));
    }

    /**
     * Each cell gets a quarter of the samples: within 5 standard deviations, which chance leaves once in 4e5 seeds for the four of them. Under the lid
     * nothing arrives but at its edges, where a ray comes in at a slope of at most 1/25: 0.0005 mm of 5 mm. In the open the pupil is so small and far
     * that cos^4 of the angle is above 0.995 everywhere, and 1 on the axis.
     */
    @Test
    void everyCellOfAFloorHasItsShareOfTheSamplesAndItsOwnLight() {
        Scene scene = halfLid();
        Receiver floor = new Receiver.OnSurface(scene.surface("floor").orElseThrow());
        Tally tally = Transport.of(scene, 1).batch(floor, LightClass.DIRECT, 0, SAMPLES);
        assertThat(tally.cells()).hasSize(4);
        long counted = 0;
        double summed = 0;
        for (int cell = 0; cell < 4; cell++) {
            Estimate one = tally.cells().get(cell);
            assertThat(Math.abs(one.samples() - SAMPLES / 4.0)).isLessThan(5 * Math.sqrt(SAMPLES * 3 / 16.0));
            assertThat(one.mean()).isBetween(cell == 0 ? 0 : 0.99, cell == 0 ? 0.005 : 1.0001);
            assertThat(one.largest()).isGreaterThanOrEqualTo(one.mean());
            counted += one.samples();
            summed += one.samples() * one.mean();
        }
        assertThat(counted).isEqualTo(SAMPLES);
        assertThat(tally.irradiance().samples()).isEqualTo(SAMPLES);
        assertThat(tally.irradiance().mean()).isCloseTo(summed / SAMPLES, within(1e-12));
        assertThat(tally.pupilSeen().samples()).isEqualTo(SAMPLES);
        assertThat(tally.pupilSeen().mean()).isCloseTo(0.75, within(5 * Math.sqrt(3 / 16.0 / SAMPLES) + 0.001));
    }

    /** The ray that is shown for a number begins on the pupil, whether it was drawn over the pupil or over directions, and ends where it was asked. */
    @ParameterizedTest
    @CsvSource({"20, 150", "20, 2", "200, 1", "0.1, 300"})
    void theRayThatIsShownGoesFromThePupilToThePoint(double radius, double height) {
        Vector3D middle = at(0.3 * radius, -0.2 * radius, height);
        Scene scene = halfLidUnder(beam(radius, middle));
        Vector3D point = at(1, 2, 0);
        Tally tally = Transport.of(scene, 2)
                .batch(new Receiver.AtPoint("point", point, Vector3D.Unit.PLUS_Z), LightClass.DIRECT, 0, 1000);
        Tally.ExampleRay ray = tally.example().orElseThrow();
        assertThat(ray.onReceiver().distance(point)).isLessThan(1e-9);
        assertThat(ray.onPupil().getZ()).isCloseTo(height, within(1e-9 * height));
        assertThat(ray.onPupil().distance(middle)).isLessThan(radius * (1 + 1e-9));
    }

    /** A ray is shown only if it carried light: a quarter of the floor is under the lid, so that of 40 first samples all are open in 1e-5 of all seeds. */
    @Test
    void noRayIsShownThatALidStops() {
        Scene scene = halfLid();
        Receiver floor = new Receiver.OnSurface(scene.surface("floor").orElseThrow());
        Transport transport = Transport.of(scene, 4);
        for (int batch = 0; batch < 40; batch++) {
            Vector3D lit = transport
                    .batch(floor, LightClass.DIRECT, batch, 50)
                    .example()
                    .orElseThrow()
                    .onReceiver();
            assertThat(Math.max(lit.getX(), lit.getY())).isGreaterThan(-0.001);
        }
    }

    /**
     * Under a pupil as wide as the sky rays come from directions with the density of the cosine: half of them from within 45 degrees, where sin^2 is a
     * half. Of 400 rays 200, within 50 (5 standard deviations: 6e-7 of all seeds).
     */
    @Test
    void halfOfTheRaysFromTheSkyComeFromWithinFortyFiveDegrees() {
        Transport transport = Transport.of(halfLidUnder(beam(2000, at(0, 0, 3))), 5);
        Receiver point = new Receiver.AtPoint("point", at(1, 2, 0), Vector3D.Unit.PLUS_Z);
        int steep = 0;
        for (int batch = 0; batch < 400; batch++) {
            Vector3D from = transport
                    .batch(point, LightClass.DIRECT, batch, 1)
                    .example()
                    .orElseThrow()
                    .onPupil();
            steep += Math.hypot(from.getX() - 1, from.getY() - 2) < 3 ? 1 : 0;
        }
        assertThat(steep).isBetween(150, 250);
    }

    private static Scene halfLidUnder(Beam beam) {
        SceneBuilder builder = new SceneBuilder()
                .sheet("aside", Finish.ABSORBER, "aside/under", Finish.ABSORBER, Place.IN_CODE)
                .quad("aside", at(-7, -7, 0.01), at(-6, -7, 0.01), at(-6, -6, 0.01), at(-7, -6, 0.01));
        return builder.build(beam);
    }

    /**
     * A speck with the normal (1, 2, 2) / 3 under a pupil of 0.01 mm at (30, -20, 150): light strikes it at the cosine 290 / (3 sqrt(23800)), as
     * exactly as speck and pupil are small.
     */
    @Test
    void lightStrikesATiltedSpeckAtTheAngleOfItsNormal() {
        Vector3D along = at(2, -2, 1).multiply(0.001);
        Vector3D across = at(2, 1, -2).multiply(0.001);
        Finish grey = new Finish("grey", 0.2, 0);
        SceneBuilder builder = new SceneBuilder().sheet("one", grey, "other", grey, Place.IN_CODE);
        builder.quad("one", Vector3D.ZERO, along, along.add(across), across);
        Scene scene = builder.build(beam(0.01, at(30, -20, 150)));
        Vector3D normal = at(1, 2, 2).multiply(1 / 3.0);
        Vector3D looker = at(9, 3, 12);
        Receiver point = new Receiver.AtPoint("point", looker, looker.negate().normalize());
        Tally tally = Transport.of(scene, 3).batch(point, LightClass.ONCE_REFLECTED, 0, SAMPLES);
        assertThat(tally.irradiance().mean()).isPositive();
        assertThat(tally.incidences()).isNotEmpty();
        double cosine = 290 / (3 * Math.sqrt(23_800));
        assertThat(cosine).isCloseTo(normal.dot(at(30, -20, 150).normalize()), within(1e-12));
        assertThat(tally.incidences().values())
                .allSatisfy(one -> assertThat(one).isCloseTo(cosine, within(1e-4)));
    }
}
