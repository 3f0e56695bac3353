package darkrim.layout;

import darkrim.layout.form.Kind;
import darkrim.layout.form.Letters;
import darkrim.layout.form.Measure;
import darkrim.layout.form.Range;
import java.util.List;
import java.util.Optional;

/** The kinds of values that occur in a layout, with the ranges that are allowed in mm, degrees, or plain. */
final class Kinds {
    /** Greatest length, mm. */
    static final double FAR = 1e6;
    /** Least size, mm; smaller ones would drown in rounding. */
    static final double TINY = 1e-6;

    static final Kind LENGTH = length("length", Range.closed(-FAR, FAR));
    static final Kind SIZE = length("size", Range.closed(TINY, FAR));
    static final Kind GAP = length("gap", Range.closed(0, FAR));
    static final Kind ANGLE = angle("angle", Range.closed(-360, 360));
    static final Kind TILT = angle("tilt", Range.open(-90, 90));
    static final Kind WALL_TILT = angle("wall_tilt", Range.closed(-80, 80));
    static final Kind BEVEL = angle("bevel", Range.closed(0, 80));
    static final Kind VANE_BEVEL = angle("vane_bevel", Range.above(0, 80));
    static final Kind CREASE = angle("crease", Range.above(0, 180));
    static final Kind HALF_ANGLE = angle("half_angle", Range.above(0, 180));
    static final Kind SHARE = number("share", Range.closed(0, 1));
    static final Kind LEAST_SHARE = number("least_share", Range.above(0, 1));
    static final Kind LIMIT = number("limit", Range.above(0, 1e6));
    static final Kind RADIANCE = number("radiance", Range.above(0, 1e30));
    static final Kind FLUX = number("flux", Range.above(0, 1e30));
    static final Kind IRRADIANCE = number("irradiance", Range.above(0, 1e30));
    static final Kind OFF_AXIS = angle("off_axis", Range.closed(0, 90));
    static final Kind ANGULAR_DIAMETER = angle("angular_diameter", Range.closed(0.01, 60));
    static final Kind CONFIDENCE = number("confidence", Range.open(0.5, 1));
    static final Kind COMPONENT = number("component", Range.closed(-1e6, 1e6));
    static final Kind KELVIN = number("kelvin", Range.above(0, 5000));
    static final Kind SIGMAS = number("sigmas", Range.closed(1, 10));
    static final Kind TILT_DEVIATION = angle("tilt_deviation", Range.closed(0, 45));
    /** Measures what the dimension measures that it belongs to. */
    static final Kind DEVIATION = new Kind.Numeric("deviation", Optional.empty(), Range.closed(0, FAR));

    static final Kind ANY =
            new Kind.Numeric("any_quantity", Optional.empty(), Range.closed(-Double.MAX_VALUE, Double.MAX_VALUE));

    static final Kind TITLE = new Kind.Text(Letters.LINE, false);
    static final Kind MARK = new Kind.Text(Letters.NOTE, true);
    static final Kind NOTE = new Kind.Text(Letters.NOTE, false);
    static final Kind FILE = new Kind.Text(Letters.LINE, false);
    static final Kind NAME = new Kind.Text(Letters.NAME, false);
    static final Kind PATTERN = new Kind.Text(Letters.PATTERN, false);
    static final Kind FLAG = new Kind.Flag();
    static final Kind REPEATS = new Kind.Whole(1, 1000);
    static final Kind AXIS = choice("x", "y", "z");

    static final Kind GRID = pair(REPEATS);
    static final Kind POINT = new Kind.ListOf(LENGTH, 3, 3);
    static final Kind SHIFT = pair(LENGTH);
    static final Kind CORNERS = new Kind.ListOf(pair(LENGTH), 3, 1000);
    static final Kind SIDE_NAMES = new Kind.ListOf(NAME, 3, 1000);
    static final Kind HEIGHTS = new Kind.ListOf(LENGTH, 1, 200);
    static final Kind SPACING = new Kind.Either(List.of(SIZE, pair(SIZE)));

    private Kinds() {}

    static Kind choice(String... words) {
        return new Kind.Choice(List.of(words));
    }

    static Kind pair(Kind item) {
        return new Kind.ListOf(item, 2, 2);
    }

    private static Kind length(String name, Range range) {
        return new Kind.Numeric(name, Optional.of(Measure.LENGTH), range);
    }

    private static Kind angle(String name, Range range) {
        return new Kind.Numeric(name, Optional.of(Measure.ANGLE), range);
    }

    private static Kind number(String name, Range range) {
        return new Kind.Numeric(name, Optional.of(Measure.NUMBER), range);
    }
}
