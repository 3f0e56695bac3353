package darkrim.study.vanes;

import darkrim.layout.Shape.Toward;
import darkrim.layout.VanesShape.Taper;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.List;
import java.util.stream.Collectors;

/**
 * Vanes as lines of a layout file. Heights are rounded to a ten-thousandth of a millimetre; what is proved is what is written.
 *
 * @param task the tube or cone
 * @param form what the vanes are made like
 * @param heights heights of the edges, mm
 */
public record VaneText(VaneTask task, VaneForm form, List<Double> heights) {
    private static final int PLACES = 4;

    /** Copies the list. */
    public VaneText {
        heights = List.copyOf(heights);
    }

    /** The part, to paste below {@code parts:}. */
    public String part() {
        StringBuilder text = new StringBuilder();
        text.append("  ").append(form.name()).append(":\n");
        line(text, "kind: vanes");
        line(text, "wall_diameter: " + diameters(task.wall()));
        line(text, "edge_diameter: " + diameters(task.edge()));
        line(text, "base: " + number(task.base()));
        line(text, "height: " + number(task.entranceHeight() - task.base()));
        line(text, "wall_thickness: " + number(form.wallThickness()));
        line(text, "thickness: " + number(form.thickness()));
        line(text, "heights: " + heights.stream().map(VaneText::number).collect(Collectors.joining(", ", "[", "]")));
        if (form.bevel() > 0) {
            line(
                    text,
                    "knife_edge: {land: " + number(form.land()) + ", bevel: " + number(form.bevel()) + ", toward: "
                            + (form.toward() == Toward.PUPIL ? "pupil" : "detector") + "}");
        }
        line(text, "chord: " + number(form.chord()));
        return text.toString();
    }

    /** A layout of its own: the entrance as the pupil, the detector as a disc, and the vanes. */
    public String layout() {
        String claim = task.offAxis().isPresent()
                ? "so that no wall point that the detector sees is lit at or beyond "
                        + number(task.offAxis().getAsDouble()) + " deg off axis"
                : "so that the wall above the first of them is hidden from the detector";
        return """
                # Vanes placed %s.
                # The detector lies in the plane z = 0, the entrance in the plane z = %s mm; clearance %s mm.
                title: Vanes in a %s of %s mm
                beam:
                  pupil: {shape: disc, diameter: %s, distance: %s}
                parts:
                  detector: {kind: disc, diameter: %s}
                """.formatted(
                                claim,
                                number(task.entranceHeight()),
                                number(task.clearance()),
                                task.wall().atBase() == task.wall().atTop() ? "tube" : "cone",
                                number(task.entranceHeight() - task.base()),
                                number(2 * task.entranceRadius()),
                                number(task.entranceHeight()),
                                number(2 * task.detectorRadius()))
                + part()
                + """
                requirements:
                  full-pupil: {surfaces: "detector/front", pupil_seen: {at_least: 0.999}}
                """;
    }

    private static void line(StringBuilder text, String key) {
        text.append("    ").append(key).append('\n');
    }

    private static String diameters(Taper radius) {
        return radius.atBase() == radius.atTop()
                ? number(2 * radius.atBase())
                : "[" + number(2 * radius.atBase()) + ", " + number(2 * radius.atTop()) + "]";
    }

    /** A number as a file has it, mm or degrees: at most four places, never in powers of ten. */
    public static String number(double value) {
        BigDecimal rounded = BigDecimal.valueOf(value).setScale(PLACES, RoundingMode.HALF_EVEN);
        return rounded.signum() == 0 ? "0" : rounded.stripTrailingZeros().toPlainString();
    }
}
