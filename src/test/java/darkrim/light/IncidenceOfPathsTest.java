package darkrim.light;

import static org.assertj.core.api.Assertions.assertThat;

import darkrim.geom.Frame;
import darkrim.geom.Ring;
import darkrim.layout.Requirement.LightClass;
import darkrim.reflection.Samples;
import darkrim.scene.Beam;
import darkrim.scene.Incidence;
import darkrim.scene.Pupil;
import darkrim.scene.Scene;
import darkrim.scene.Surface;
import java.util.Map;
import java.util.stream.Stream;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** The angle at which light strikes what reflects it, against bounds by geometry alone. */
class IncidenceOfPathsTest {
    /** Small and far, so that the bounds are near each other. */
    private static final Beam FAR = Beam.of(
            new Pupil(Ring.disc(5), Frame.of(Vector3D.of(0, 0, 1000), Vector3D.Unit.PLUS_X, Vector3D.Unit.MINUS_Y)));

    static Stream<Samples.Named> all() {
        return Samples.all();
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("all")
    void theMeanAngleLiesBetweenTheBoundsForEveryPartOfAFinish(Samples.Named each) {
        Scene scene = FinishedScenes.wall(each.reflection(), 12).under(FAR);
        Surface floor = scene.surface("floor").orElseThrow();
        Surface wall = scene.surface("wall").orElseThrow();
        double least = 1;
        double most = 0;
        for (int f = wall.firstFacet(); f < wall.firstFacet() + wall.facetCount(); f++) {
            Vector3D normal = scene.normal(f);
            Incidence bounds = Incidence.of(
                    scene.beam().pupil(), scene.corner(f, 0), scene.corner(f, 1), scene.corner(f, 2), normal);
            least = Math.min(least, bounds.least());
            most = Math.max(most, bounds.most());
        }
        Transport transport = Transport.of(scene, 5);
        Receiver receiver = new Receiver.OnSurface(floor);
        Tally one = transport.batch(receiver, LightClass.ONCE_REFLECTED, 0, 5_000);
        Tally other = transport.batch(receiver, LightClass.ONCE_REFLECTED, 1, 5_000);
        Tally both = one.and(other);
        assertThat(both.incidences().keySet()).isEqualTo(both.by().keySet()).isNotEmpty();
        for (Map.Entry<Reflector, Double> entry : both.incidences().entrySet()) {
            assertThat(entry.getValue()).as("%s", entry.getKey()).isBetween(least, most);
            double mean = one.incidences().getOrDefault(entry.getKey(), entry.getValue());
            double added = other.incidences().getOrDefault(entry.getKey(), entry.getValue());
            assertThat(entry.getValue()).isBetween(Math.min(mean, added) - 1e-12, Math.max(mean, added) + 1e-12);
        }
        assertThat(most - least).isLessThan(0.05);
    }
}
