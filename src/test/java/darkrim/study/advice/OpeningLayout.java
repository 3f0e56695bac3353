package darkrim.study.advice;

import darkrim.study.LayoutFamily;
import java.nio.charset.StandardCharsets;

/**
 * A square pupil of half side r = 20 mm at H = 200 mm, a thin plate with a square opening of half side a whose upper rim limits the light from
 * outside at height h, a screen of half side 18 mm that must see the whole pupil, and a strip from x = 30 mm on that must stay dark. Reference
 * cases, family I: light reaches out to (a H + r h) / (H - h); the whole pupil is seen out to (a H - r h) / (H - h).
 */
final class OpeningLayout {
    private static final String TEXT = """
            title: One opening
            dimensions:
              side: 40 mm
              height: 50 mm
            beam:
              pupil: {shape: rectangle, width: 40, height: 40, distance: 200}
            finishes:
              grey: {diffuse: 0.2}
            parts:
              plate:
                kind: plate
                size: 400
                height: height - 0.001
                thickness: 0.001
                openings: {shape: rectangle, size: side}
              screen: {kind: rectangle, width: 36, depth: 36}
              strip: {kind: rectangle, width: 10, depth: 4, at: [35, 0, 0]}
            requirements:
              strip-dark: {surfaces: "strip/front", direct: none}
              screen-full: {surfaces: "screen/front", pupil_seen: {at_least: 1}}
            """;

    private OpeningLayout() {}

    static LayoutFamily family() throws Exception {
        return LayoutFamily.of("opening.yaml", TEXT.getBytes(StandardCharsets.UTF_8));
    }

    static String text() {
        return TEXT;
    }
}
