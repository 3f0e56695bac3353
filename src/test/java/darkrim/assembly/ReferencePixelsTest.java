package darkrim.assembly;

import static org.assertj.core.api.Assertions.assertThat;

import darkrim.diagnostic.Findings;
import darkrim.layout.DetectorsShape;
import darkrim.layout.Layout;
import darkrim.layout.LayoutReader;
import darkrim.layout.LayoutReading;
import darkrim.reference.ReferenceScalar;
import darkrim.reference.Validation;
import darkrim.scene.Scene;
import darkrim.scene.SceneFactory;
import java.nio.charset.StandardCharsets;
import java.util.Locale;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import tools.jackson.databind.JsonNode;

/** Pixel counts and sizes of detectors (family J), from a layout file to the area of the scene's surface. Nothing is sampled. */
@ExtendWith(Validation.class)
class ReferencePixelsTest {
    private static final double PITCH = 0.018;

    /** Width of the border of reference pixels: 2048 pixels a side leave 2040. */
    private static final int BORDER = 4;

    private record Built(Layout layout, Assembly assembly, Scene scene) {}

    static Stream<ReferenceScalar> counts() {
        return ReferenceScalar.family("J").filter(each -> each.from().kind().equals("count"));
    }

    static Stream<ReferenceScalar> sides() {
        return ReferenceScalar.family("J").filter(each -> each.from().kind().equals("length"));
    }

    @Test
    void everyCaseIsRun() {
        assertThat(Stream.concat(counts(), sides()))
                .containsExactlyInAnyOrderElementsOf(ReferenceScalar.family("J").toList());
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("counts")
    void theActiveSurfacesHoldThatManyPixels(ReferenceScalar scalar) {
        JsonNode params = scalar.from().geometry().get("params");
        int active = params.get("pixelsPerSide").asInt();
        assertThat(params.get("detectors").asInt()).isEqualTo(1);
        Built whole = build(active, PITCH, 0);
        Built bordered = build(active + 2 * BORDER, PITCH, BORDER);
        Validation.requireExact(scalar, "area of the layout's active surface", pixels(whole), 1e-6);
        Validation.requireExact(scalar, "the same inside reference pixels", pixels(bordered), 1e-6);
        DetectorsShape shape = (DetectorsShape) whole.layout.parts().get(0).shape();
        double stated = (double) shape.pixels()
                * shape.pixels()
                * whole.assembly.detectors().size();
        Validation.requireExact(scalar, "pixels of the layout", stated, 0);
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("sides")
    void theActiveSurfaceIsThatLong(ReferenceScalar scalar) {
        JsonNode params = scalar.from().geometry().get("params");
        int active = params.get("pixels").asInt();
        double pitch = params.get("pitch").asDouble();
        Built whole = build(active, pitch, 0);
        Built bordered = build(active + 2 * BORDER, pitch, BORDER);
        Validation.requireExact(scalar, "root of the active area", Math.sqrt(activeArea(whole)), 1e-9);
        Validation.requireExact(scalar, "the same inside reference pixels", Math.sqrt(activeArea(bordered)), 1e-9);
        Die die = whole.assembly.detectors().get(0);
        double side = die.pixelArray().get(0).distance(die.pixelArray().get(1));
        Validation.requireExact(scalar, "side of the pixel array", side, 1e-9);
    }

    private static double pixels(Built built) {
        return activeArea(built) / (PITCH * PITCH);
    }

    private static double activeArea(Built built) {
        return built.scene.surface("mosaic/die/active").orElseThrow().area();
    }

    private static Built build(int pixels, double pitch, int border) {
        String text = String.format(Locale.ROOT, """
                title: One detector
                beam:
                  pupil: {shape: disc, diameter: 45, distance: 320}
                parts:
                  mosaic:
                    kind: detectors
                    pixels: %d
                    pixel_pitch: %s
                    reference_pixels: %d
                    die: {margin: 0.5, thickness: 0.2}
                    readout: {ledge: 2.5, thickness: 0.5}
                    carrier: {margin: 1, thickness: 2}
                requirements:
                  edges-dark: {surfaces: "mosaic/die/edge/*", direct: none}
                """, pixels, pitch, border);
        LayoutReading reading = LayoutReader.read("one.yaml", text.getBytes(StandardCharsets.UTF_8));
        assertThat(reading.hasErrors()).as("%s", reading.findings()).isFalse();
        Layout layout = reading.layout().orElseThrow();
        Findings findings = new Findings();
        Assembly assembly = Assembly.of(layout, findings);
        assertThat(findings.hasErrors()).as("%s", findings.sorted()).isFalse();
        return new Built(layout, assembly, SceneFactory.of(layout, assembly));
    }
}
