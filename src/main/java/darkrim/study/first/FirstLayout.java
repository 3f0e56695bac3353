package darkrim.study.first;

import static darkrim.study.vanes.VaneText.number;

import java.util.Optional;

/**
 * A first layout as a file: whole, with all requirements that such a baffle has, and with comments that say where its numbers come from.
 *
 * @param title what it is
 * @param wishes what it was made from
 * @param baffle its dimensions
 * @param schema where the schema of layouts stands, seen from the file, for editors
 */
public record FirstLayout(String title, FirstWishes wishes, FirstBaffle baffle, Optional<String> schema) {
    /** Rows of detectors beyond which bond wires cannot all leave outward. */
    private static final int ROWS_WITH_BONDS = 2;

    /** The text of the file. */
    public String text() {
        return head() + dimensions() + finishes() + beam() + detectors() + lid() + walls() + requirements();
    }

    private String head() {
        return schema.map(path -> "# yaml-language-server: $schema=" + path + "\n")
                        .orElse("")
                + """
                # A first layout. Replace what is not yours, and look again at every line marked 'starting value'.
                # Lengths in mm, angles in degrees. The origin is the middle of the focal plane; +z points to the pupil.
                title: "%s"
                revision: A

                """.formatted(title.replace("\\", "\\\\").replace("\"", "\\\""));
    }

    private String dimensions() {
        return """
                dimensions:
                  pupil_distance: %s
                %s  edge_height: %s             # of the edges that limit the light, above the active surface; feasible up to %s
                  lid_thickness: %s           # starting value
                  opening: {value: %s, tolerance: 0.03}   # side of an opening at its edge%s

                """.formatted(
                number(wishes.pupilDistance()),
                wishes.isMosaic() ? "  spacing: " + number(wishes.spacing()) + "\n" : "",
                number(wishes.edgeHeight()),
                number(Math.max(0, wishes.greatestHeight())),
                number(baffle.thickness()),
                number(baffle.opening()),
                baffle.conflicts().isEmpty() ? ": between what the pupil and what the edge of the die ask for" : "");
    }

    private String finishes() {
        return """
                finishes:                     # starting values, from memory, 1 to 2.5 um: replace them by your own measurements
                  black:   {diffuse: 0.04, source: "rough black coating; from memory"}
                  sensor:  {diffuse: 0.02, mirror: 0.04, source: "coated detector; from memory"}
                  bare:    {diffuse: 0.10, mirror: 0.30, source: "bare semiconductor edge; from memory"}
                %s  ceramic: {diffuse: 0.60, source: "ceramic carrier; from memory"}

                finish_rules:
                  - {surfaces: "mosaic/**/edge/*", finish: bare}
                  - {surfaces: "mosaic/**/readout/*", finish: bare}
                """.formatted(bonds() ? "  gold:    {diffuse: 0.60, source: \"wire bonds; from memory\"}\n" : "")
                + (bonds() ? "  - {surfaces: \"mosaic/**/{bonds,pads}\", finish: gold}\n" : "") + """
                  - {surfaces: "mosaic/**/carrier", finish: ceramic}

                """;
    }

    private String beam() {
        return """
                beam:
                  pupil: {shape: disc, diameter: %s, distance: pupil_distance}   # f/%s
                  field: {half_width: %s}   # at the focal plane: the optics light nothing beyond

                """.formatted(number(wishes.pupilDiameter()), number(wishes.fNumber()), number(wishes.fieldHalfWidth()));
    }

    private String detectors() {
        String ledge = number(baffle.ledge());
        String outer = bonds() ? "2.5" : ledge;
        String rim = bonds() ? "1.2" : ledge;
        StringBuilder text = new StringBuilder("parts:\n  mosaic:\n    kind: detectors\n");
        if (wishes.isMosaic()) {
            line(text, "grid: [" + wishes.columns() + ", " + wishes.rows() + "]");
            line(text, "spacing: spacing");
        }
        line(text, "pixels: " + wishes.pixels());
        line(text, "pixel_pitch: " + number(wishes.pixelPitch() * 1000) + " um");
        line(text, "reference_pixels: " + wishes.referencePixels());
        if (wishes.rows() == 2) {
            line(text, "mirrored: true            # sides below are those of the detector at +x, +y");
        }
        line(text, "die: {margin: " + number(wishes.dieMargin()) + ", thickness: 0.2}   # thickness: starting value");
        if (baffle.ledge() >= 0.05) {
            line(text, "underfill: {height: 0.05, width: " + number(Math.min(0.1, baffle.ledge() / 2)) + "}");
        }
        line(
                text,
                "readout: {ledge: {\"-x\": %s, \"+x\": %s, \"-y\": %s, \"+y\": %s}, thickness: 0.5}   # starting values"
                        .formatted(ledge, ledge, ledge, outer));
        line(
                text,
                "carrier: {margin: {\"-x\": %s, \"+x\": %s, \"-y\": %s, \"+y\": %s}, thickness: 2}"
                        .formatted(ledge, ledge, ledge, rim));
        if (bonds()) {
            line(
                    text,
                    "bonds: {sides: [\"+y\"], pad_from_edge: 0.3, pad_width: 0.4, loop_height: " + number(loopHeight())
                            + ", reach: 0.8}   # starting values");
        }
        line(text, "finish: sensor");
        return text.toString();
    }

    private double loopHeight() {
        return Math.min(0.35, 0.4 * (wishes.edgeHeight() - baffle.thickness()));
    }

    /** Whether detectors have bond wires: only where all can leave outward. */
    public static boolean hasBonds(FirstWishes wishes) {
        return wishes.rows() <= ROWS_WITH_BONDS;
    }

    private boolean bonds() {
        return hasBonds(wishes);
    }

    private String lid() {
        boolean many = wishes.isMosaic() && !baffle.oneForAll();
        String step = "spacing * (1 - edge_height / pupil_distance)";
        return """
                  lid:
                    kind: plate
                    size: %s
                    height: edge_height - lid_thickness   # of its underside
                    thickness: lid_thickness
                    openings:
                      shape: rectangle
                      size: %s
                %s      # The edge is on the side of the pupil; the wall below it leans away from all light that comes in.
                      knife_edge: {land: %s, bevel: %s, toward: pupil}
                    placement_tolerance: {shift: [0.05, 0.05, 0]}   # starting value
                    finish: black
                """.formatted(
                        number(baffle.lidSide()),
                        baffle.oneForAll() ? oneSize() : "opening",
                        many
                                ? "      grid: [" + wishes.columns() + ", " + wishes.rows() + "]\n      spacing: "
                                        + step + "   # the light of an outer detector comes from the middle\n"
                                : "",
                        number(baffle.land()),
                        number(baffle.bevel()));
    }

    /** One opening over all detectors: as wide as the longer side of the mosaic asks for, less what the shorter does not need. */
    private String oneSize() {
        int most = Math.max(wishes.columns(), wishes.rows());
        return "[" + less(most - wishes.columns()) + ", " + less(most - wishes.rows()) + "]";
    }

    private String less(int steps) {
        return steps == 0 ? "opening" : "opening - " + steps + " * spacing * (1 - edge_height / pupil_distance)";
    }

    private String walls() {
        if (wishes.wallHeight() == 0) {
            return "\n";
        }
        String inside = number(baffle.wallInside());
        return """
                  walls:
                    kind: box
                    width: %s                 # inside, clear of the beam
                    depth: %s
                    base: edge_height
                    height: %s
                    thickness: %s
                    finish: black

                """.formatted(inside, inside, number(wishes.wallHeight()), number(FirstBaffle.WALL));
    }

    private String requirements() {
        return """
                requirements:
                  edges-dark:    {surfaces: "mosaic/**/{edge,underfill,readout}/*", direct: none}
                  ledges-dark:   {surfaces: "mosaic/**/{ledge,pads}/*", direct: none}
                """
                + (bonds() ? """
                  bonds-dark:    {surfaces: "mosaic/**/bonds", direct: none}
                  bonds-clear:   {between: [lid, "mosaic/**/bonds"], clearance: {at_least: 0.05}}   # starting value
                """ : "")
                + """
                  carriers-dark: {surfaces: "mosaic/**/carrier", direct: none}
                  bevels-dark:   {surfaces: "lid/opening*/bevel/*", direct: none}
                """
                + (wishes.wallHeight() == 0 ? "" : "  walls-dark:    {surfaces: \"walls/inside/*\", direct: none}\n")
                + """
                  pixels-clean:  {surfaces: "mosaic/**/active", once_reflected: {at_most: 1.0e-4}}   # starting value: ask what the science allows
                  full-pupil:    {surfaces: "mosaic/**/active", pupil_seen: {at_least: 0.999}}

                placement_error: %s           # total, a side, between opening and detector
                """.formatted(number(wishes.placementError()));
    }

    private static void line(StringBuilder text, String key) {
        text.append("    ").append(key).append('\n');
    }
}
