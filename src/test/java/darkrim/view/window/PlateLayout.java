package darkrim.view.window;

/** A square plate of 40 mm with an opening of 10 mm, 20 mm above a sheet of 30 mm; the pupil at 200 mm. */
public final class PlateLayout {
    public static final String TEXT = """
            title: Plate over a sheet
            revision: A
            units: {length: mm, angle: deg}
            dimensions:
              opening: 10   # side of the opening
            finishes:
              black: {diffuse: 0.04}
            beam:
              pupil: {shape: disc, diameter: 20, distance: 200}
            parts:
              sheet: {kind: rectangle, width: 30, depth: 30, finish: black}
              lid:
                kind: plate
                size: [40, 40]
                height: 20
                thickness: 1
                openings: {shape: rectangle, size: opening}
                finish: black
            requirements:
              back-dark: {surfaces: sheet/back, direct: none}
              front-dark: {surfaces: sheet/front, direct: none}
              wide: {surfaces: sheet/front, direct: {at_most: 0.2}}
            """;

    private PlateLayout() {}
}
