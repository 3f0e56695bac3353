package darkrim.cli;

/** A white ridge beside pixels, with a star and a body far away. */
final class RidgeLayout {
    static final String TEXT = """
            title: Ridge
            finishes: {white: {diffuse: 0.5, source: "invented"}}
            beam: {pupil: {shape: disc, diameter: 45, distance: 320}}
            sources:
              guide: {kind: star, at: [3.256, 0.2], flux: 1e-9}
              moon: {kind: distant, off_axis: 40, azimuth: 180, diameter: 0.53, irradiance: 1e-3}
            parts:
              pixels: {kind: rectangle, width: 6, depth: 6}
              ridge: {kind: block, width: 0.1, depth: 5, height: 0.15, at: [3.3, 0, 0], finish: white}
            requirements: {dark: {surfaces: "pixels/back", direct: none}}
            """;

    private RidgeLayout() {}
}
