package darkrim.study.vanes;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import darkrim.layout.VanesShape.Taper;
import darkrim.reference.ReferenceCase;
import darkrim.reference.ReferenceCases;
import darkrim.reference.ReferenceScalar;
import darkrim.reference.Validation;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Where vanes stand in tubes (family H). Nothing is sampled. */
@ExtendWith(Validation.class)
class ReferenceVanesTest {
    private static final String WAY = "alternate lines";

    static Stream<ReferenceCase> angles() {
        return ReferenceCases.beginning("H01").stream();
    }

    static Stream<ReferenceCase> series() {
        return ReferenceCases.beginning("H02").stream();
    }

    @Test
    void everyCaseIsRun() {
        assertThat(Stream.concat(angles(), series())).containsExactlyInAnyOrderElementsOf(ReferenceCases.family("H"));
    }

    @ParameterizedTest
    @MethodSource("angles")
    void vanesOfATubeStandWhereTheReferenceHasThem(ReferenceCase each) {
        VaneConstruction vanes = VaneConstruction.of(
                task(each, each.parameter("L"), each.parameter("Re"), OptionalDouble.of(each.parameter("thetaDeg"))));
        assertThat(vanes.firstLit()).isCloseTo(each.parameter("firstLitWall"), within(1e-6));
        requireHeights(each, vanes);
        for (int i = 0; i < vanes.heights().size(); i++) {
            double hidden = Math.min(each.parameter("L"), vanes.hiddenUpTo().get(i));
            assertThat(hidden).isCloseTo(each.parameters("firstSeenWallBehindEachVane")[i], within(1e-6));
        }
    }

    @ParameterizedTest
    @MethodSource("series")
    void vanesThatHideTheWallAreAGeometricSeries(ReferenceCase each) {
        // The entrance just beyond the last vane asked for.
        double length = each.values().get((int) each.parameter("count") - 1) + 1e-3;
        requireHeights(each, VaneConstruction.of(task(each, length, each.parameter("Rv"), OptionalDouble.empty())));
    }

    private static VaneTask task(ReferenceCase each, double length, double entrance, OptionalDouble angle) {
        double wall = each.parameter("Rw");
        double edge = each.parameter("Rv");
        return new VaneTask(
                new Taper(wall, wall),
                new Taper(edge, edge),
                0,
                length,
                each.parameter("rd"),
                entrance,
                angle,
                angle.isPresent() ? OptionalDouble.empty() : OptionalDouble.of(each.parameter("z1")),
                0);
    }

    private static void requireHeights(ReferenceCase each, VaneConstruction vanes) {
        assertThat(vanes.heights()).hasSameSizeAs(each.values());
        ReferenceScalar.of(each)
                .forEach(scalar ->
                        Validation.requireExact(scalar, WAY, vanes.heights().get(scalar.index()), 1e-6));
    }
}
