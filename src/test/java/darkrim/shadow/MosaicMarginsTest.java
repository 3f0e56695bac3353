package darkrim.shadow;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import darkrim.scene.Scene;
import darkrim.scene.Surface;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Margins of the mosaic: the least of many is the least of each, wherever the search begins. */
class MosaicMarginsTest {
    private static List<Surface> named(Scene scene, String pattern) {
        return scene.surfaces().stream()
                .filter(surface -> surface.name().matches(pattern))
                .toList();
    }

    private static double millimetres(Optional<Margins.Least> least) {
        return least.orElseThrow().margin().millimetres();
    }

    @Test
    void theLeastClearanceOfManyIsTheLeastOfEach() {
        Scene scene = MosaicTest.mosaic(18.44, 2.2);
        Margins margins = TestParts.margins(scene);
        List<Surface> edges = named(scene, "mosaic/.*/edge/[+-][xy]");
        Margins.Least least = margins.leastClearance(edges, () -> false).orElseThrow();
        double expected = edges.stream()
                .mapToDouble(surface -> margins.clearance(surface).millimetres())
                .min()
                .orElseThrow();
        assertThat(least.margin().millimetres()).isCloseTo(expected, within(3e-6));
        assertThat(margins.clearance(least.surface()).millimetres()).isCloseTo(expected, within(3e-6));
        assertThat(margins.leastClearance(edges, () -> true)).isEmpty();
        assertThat(margins.leastClearance(List.of(), () -> false)).isEmpty();
    }

    /** A guess says where to begin, and nothing else: also one that is wrong by far, or names what is not there. */
    @ParameterizedTest
    @ValueSource(doubles = {-3, 0, 0.2, 100})
    void aWrongGuessChangesNoMargin(double guessed) {
        Margins margins = TestParts.margins(MosaicTest.mosaic(18.44, 2.2));
        Margins wide = TestParts.margins(MosaicTest.mosaic(19.3, 2.2));
        List<Surface> edges = named(MosaicTest.mosaic(18.44, 2.2), "mosaic/.*/edge/[+-][xy]");
        List<Surface> pixels = named(MosaicTest.mosaic(18.44, 2.2), "mosaic/.*/active");
        List<Surface> lit = edges.stream()
                .filter(surface -> wide.shadow(surface).millimetres() < 0)
                .toList();
        assertThat(lit).hasSizeGreaterThan(1);
        for (Surface first : List.of(edges.get(0), edges.get(edges.size() - 1), pixels.get(pixels.size() - 1))) {
            Optional<MarginGuess> guess = Optional.of(new MarginGuess(first.name(), guessed));
            assertThat(millimetres(margins.leastClearance(edges, guess, () -> false)))
                    .isCloseTo(millimetres(margins.leastClearance(edges, () -> false)), within(2e-6));
            assertThat(millimetres(margins.leastPupil(pixels, guess, () -> false)))
                    .isCloseTo(millimetres(margins.leastPupil(pixels, Optional.empty(), () -> false)), within(1e-7));
            assertThat(millimetres(wide.deepestIntrusion(lit, guess, () -> false)))
                    .isCloseTo(millimetres(wide.deepestIntrusion(lit, () -> false)), within(1e-7));
        }
    }

    @Test
    void theLeastPupilMarginOfManyIsTheLeastOfEach() {
        // Seeing all of the pupil, and with the lid so high that none does.
        for (double height : new double[] {2.2, 6}) {
            Scene scene = MosaicTest.mosaic(18.44, height);
            Margins margins = TestParts.margins(scene);
            List<Surface> pixels = named(scene, "mosaic/.*/active");
            double expected = pixels.stream()
                    .mapToDouble(surface -> margins.pupil(surface).millimetres())
                    .min()
                    .orElseThrow();
            assertThat(millimetres(margins.leastPupil(pixels, Optional.empty(), () -> false)))
                    .as("lid at %s", height)
                    .isCloseTo(expected, within(1e-7));
        }
    }

    @Test
    void theMarginsOfAMosaicNameTheKnifeEdge() {
        Scene scene = MosaicTest.mosaic(18.44, 2.2);
        // The lower edge of the lid's bevels is at z = 2.2, the top of the die's edge at -0.001; the widened face comes
        // to light above the lid.
        Margins margins = TestParts.margins(scene);
        Surface edge = scene.surface("mosaic/die[1,1]/edge/+x").orElseThrow();
        Margin margin = margins.shadow(edge);
        Margin pupil = margins.pupil(scene.surface("mosaic/die[1,1]/active").orElseThrow());
        double clearance = margins.clearance(edge).millimetres();
        assertThat(margin.millimetres()).isPositive();
        assertThat(margin.setBy()).contains("lid/opening");
        assertThat(pupil.millimetres()).isNegative();
        assertThat(pupil.setBy()).contains("lid/opening[0]");
        // Moved by the way to the edge of the bar, (40.2 / 2 - 18.44) - 0.9, the face comes under the opening.
        assertThat(clearance).isCloseTo(0.76, within(2e-6));
    }
}
