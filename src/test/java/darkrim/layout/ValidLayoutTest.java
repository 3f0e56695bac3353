package darkrim.layout;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import darkrim.diagnostic.Place;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Test;

/** What a correct file becomes. */
class ValidLayoutTest {
    private static final Path EVERY_KEY = Path.of("src/test/resources/layouts/every-key.yaml");

    private static Layout everyKey() {
        LayoutReading reading = LayoutReader.read(EVERY_KEY);
        assertThat(reading.findings()).isEmpty();
        assertThat(reading.partsComplete()).isTrue();
        return reading.layout().orElseThrow();
    }

    private static Shape shape(String part) {
        return everyKey().parts().stream()
                .filter(each -> each.name().equals(part))
                .findFirst()
                .orElseThrow()
                .shape();
    }

    @Test
    void aLayoutWithEveryKeyHasNoFindings() {
        Layout layout = everyKey();
        assertThat(layout.title()).isEqualTo("Every key: of a layout file");
        // A number as revision keeps what is written: 1.10 is not 1.1.
        assertThat(layout.revision()).isEqualTo("1.10");
        assertThat(layout.parts()).hasSize(24);
        assertThat(layout.requirements()).hasSize(5);
        assertThat(layout.finishRules()).hasSize(8);
        assertThat(layout.placementError()).contains(0.1);
        assertThat(layout.sampling()).isEqualTo(new SamplingSpec(7, 0.99, 2_000_000));
        assertThat(layout.maps()).isEqualTo(new MapSpec("**/active", 16, 8, new Place(EVERY_KEY.toString(), 147, 18)));
    }

    @Test
    void dimensionsCarryValueKindTextAndPlace() {
        Dimension half = everyKey().dimensions().get("half");
        assertThat(half.value()).isEqualTo(37.8 / 2);
        assertThat(half.kind()).isEqualTo(Quantity.LENGTH);
        assertThat(half.text()).isEqualTo("opening / 2");
        assertThat(half.place().line()).isEqualTo(7);
        assertThat(half.place().column()).isEqualTo(9);
        assertThat(everyKey().dimensions().get("wall_tilt").kind()).isEqualTo(Quantity.ANGLE);
        assertThat(everyKey().dimensions().get("blackness").kind()).isEqualTo(Quantity.NUMBER);
    }

    @Test
    void tolerancesMeasureWhatTheyBelongTo() {
        Layout layout = everyKey();
        assertThat(layout.dimensions().get("lid_height").tolerance())
                .contains(new Tolerance(0.05, 0.05, Distribution.NORMAL, 2));
        // 0.1 um and 0.2 um.
        assertThat(layout.dimensions().get("array_pitch").tolerance())
                .contains(new Tolerance(0.0001, 0.0002, Distribution.UNIFORM, Tolerance.SIGMAS));
        assertThat(layout.dimensions().get("opening").tolerance()).isEmpty();
        PlacementTolerance lid = layout.parts().stream()
                .filter(part -> part.name().equals("lid"))
                .findFirst()
                .flatMap(Part::tolerance)
                .orElseThrow();
        assertThat(lid.shift()).extracting(Tolerance::plus).containsExactly(0.05, 0.05, 0.1);
        assertThat(lid.tilt()).containsOnly(Tolerance.within(0.2, Distribution.NORMAL, 3));
    }

    @Test
    void aValueWithItsOwnUnitBecomesMillimetresAndDegrees() {
        assertThat(everyKey().beam().pupil().centre().getZ()).isEqualTo(320); // 32 cm
        assertThat(((DetectorsShape) shape("mosaic")).pixelPitch()).isEqualTo(0.018); // 18 um, to the last bit
    }

    @Test
    void aFormulaWithATangentTakesDegrees() {
        // 3.2 tan 4 deg + 50, with java.lang.Math
        assertThat(((Shape.Tube) shape("snout")).height())
                .isCloseTo(3.2 * Math.tan(Math.toRadians(4)) + 50, within(1e-12));
    }

    @Test
    void aPartIsMirroredThenTurnedThenMoved() {
        Part snout = everyKey().parts().stream()
                .filter(part -> part.name().equals("snout"))
                .findFirst()
                .orElseThrow();
        // (1, 0, 0) mirrored at x: (-1, 0, 0); turned about x by 90 deg: the same; about z by 0.1 rad: (-cos, -sin, 0);
        // moved by z = 20.
        Vector3D moved = snout.placement().point(Vector3D.of(1, 0, 0));
        assertThat(moved.distance(Vector3D.of(-Math.cos(0.1), -Math.sin(0.1), 20)))
                .isLessThan(1e-12);
    }

    @Test
    void whatIsNotStatedHasItsDefault() {
        Layout layout = LayoutReader.read(Path.of("src/test/resources/layouts/small.yaml"))
                .layout()
                .orElseThrow();
        assertThat(layout.revision()).isEmpty();
        assertThat(layout.sampling()).isEqualTo(SamplingSpec.DEFAULT);
        assertThat(layout.maps()).isEqualTo(MapSpec.DEFAULT);
        assertThat(layout.parts().get(1).finish()).isEmpty();
        assertThat(layout.beam().field()).isEmpty();
        assertThat(layout.beam().radiance()).isEmpty();
    }

    @Test
    void theSourceCarriesTheDigestOfTheBytes() throws IOException {
        byte[] content;
        try (InputStream stream = getClass().getResourceAsStream("/layouts/small.yaml")) {
            content = stream.readAllBytes();
        }
        Layout.Source source =
                LayoutReader.read("small.yaml", content).layout().orElseThrow().source();
        assertThat(source.name()).isEqualTo("small.yaml");
        // Worked out with sha256sum of GNU coreutils.
        assertThat(source.sha256()).isEqualTo("1f91e87421f22e7b16339870b6476735498fe722b5d9dc5e459e8fab3d476526");
        // A byte order mark changes the digest and nothing else.
        byte[] marked = ("\uFEFF" + new String(content, StandardCharsets.UTF_8)).getBytes(StandardCharsets.UTF_8);
        LayoutReading again = LayoutReader.read("small.yaml", marked);
        assertThat(again.findings()).isEmpty();
        assertThat(again.layout().orElseThrow().source().sha256()).isNotEqualTo(source.sha256());
    }
}
