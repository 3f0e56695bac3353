package darkrim.present.picture;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.DoubleStream;

/**
 * Which colour a value has. One scale serves a whole picture, so that a colour means the same everywhere in it.
 *
 * <p>Values below the range, among them 0 on a logarithmic scale, and above it have colours of their own, and so has what is not known: none
 * of the three is a colour of {@link ColourMap}.
 *
 * @param spacing how values are spread over the colours
 * @param least value of the darkest colour
 * @param most value of the lightest colour
 * @param quantity what is shown, such as {@code irradiance}
 * @param unit its unit, such as {@code W/m2}
 */
public record ColourScale(Spacing spacing, double least, double most, String quantity, String unit) {
    /** Colour of values below the range. */
    public static final int BELOW = 0xff141414;
    /** Colour of values above the range. */
    public static final int ABOVE = 0xffffffff;
    /** Colour of what is not known. */
    public static final int UNKNOWN = 0xffb4b8bb;

    /** Place in the {@link #palette} of the colour of values below the range. */
    public static final int BELOW_INDEX = ColourMap.SIZE;
    /** Place in the {@link #palette} of the colour of values above the range. */
    public static final int ABOVE_INDEX = ColourMap.SIZE + 1;
    /** Place in the {@link #palette} of the colour of what is not known. */
    public static final int UNKNOWN_INDEX = ColourMap.SIZE + 2;

    /** Decades of a logarithmic range that is found by itself, at most. */
    private static final int MOST_DECADES = 6;
    /** The ends of a logarithmic range that is found by itself are no closer. */
    private static final double LEAST_RATIO = 5;
    /** How much smaller the steps between marks may become; 1, 2, 5 times a power of ten are never so far apart. */
    private static final int MOST_ROOM = 10;
    /** A value this little outside the range, as a share of it, is on its end but for rounding. */
    private static final double ROUNDING = 1e-12;

    /** How values are spread over the colours. */
    public enum Spacing {
        /** Equal ratios are equal steps of colour. */
        LOGARITHMIC,
        /** Equal differences are equal steps of colour. */
        LINEAR
    }

    /**
     * A mark beside the scale.
     *
     * @param share where it stands, from the darkest colour (0) to the lightest (1)
     * @param value its value
     * @param label its value in letters; empty for a mark between labels
     */
    public record Tick(double share, double value, String label) {}

    /**
     * @throws IllegalArgumentException if the ends are no range, or not above 0 on a logarithmic scale
     */
    public ColourScale {
        boolean range =
                Double.isFinite(least) && Double.isFinite(most) && least < most && most - least < Double.MAX_VALUE;
        if (!range || (spacing == Spacing.LOGARITHMIC && !(least > 0))) {
            throw new IllegalArgumentException("no range of colours: " + least + " to " + most);
        }
    }

    /**
     * A scale that holds some values: from 0 to a round number on a linear scale; on a logarithmic scale from a power of ten, six decades below
     * the largest value at most, to a round number.
     *
     * @param values the values; those that are not above 0 do not count
     */
    public static ColourScale around(Spacing spacing, DoubleStream values, String quantity, String unit) {
        double[] counted =
                values.filter(value -> value > 0 && Double.isFinite(value)).toArray();
        double largest = DoubleStream.of(counted).max().orElse(1);
        double smallest = DoubleStream.of(counted).min().orElse(largest);
        if (spacing == Spacing.LINEAR) {
            return new ColourScale(spacing, 0, RoundNumbers.end(largest), quantity, unit);
        }
        int top = RoundNumbers.decadeAbove(largest);
        int bottom = Math.max(top - MOST_DECADES, Math.min(top - 1, RoundNumbers.decadeBelow(smallest)));
        double end = RoundNumbers.end(largest);
        // Values that hardly differ, such as 1.00 and 1.01, are all light then, and not the dark end of a scale.
        int least = end < LEAST_RATIO * RoundNumbers.powerOfTen(bottom) ? bottom - 1 : bottom;
        return new ColourScale(spacing, RoundNumbers.powerOfTen(least), end, quantity, unit);
    }

    /** Where a value stands: 0 at the darkest colour, 1 at the lightest; outside the range less or more, NaN where it is not known. */
    public double share(double value) {
        double share;
        if (spacing == Spacing.LINEAR) {
            share = (value - least) / (most - least);
        } else if (value > 0) {
            share = StrictMath.log(value / least) / StrictMath.log(most / least);
        } else {
            share = Double.isNaN(value) ? Double.NaN : Double.NEGATIVE_INFINITY;
        }
        return share < 0 && share > -ROUNDING ? 0 : share > 1 && share < 1 + ROUNDING ? 1 : share;
    }

    /** The colour of a value, opaque, as {@code 0xffrrggbb}; NaN is a value that is not known. */
    public int argb(double value) {
        int index = index(value);
        return index < ColourMap.SIZE
                ? ColourMap.argb(index)
                : index == BELOW_INDEX ? BELOW : index == ABOVE_INDEX ? ABOVE : UNKNOWN;
    }

    /** Place of the colour of a value in the {@link #palette}. */
    public int index(double value) {
        double share = share(value);
        if (Double.isNaN(share)) {
            return UNKNOWN_INDEX;
        }
        return share < 0 ? BELOW_INDEX : share > 1 ? ABOVE_INDEX : ColourMap.index(share);
    }

    /** All colours that {@link #argb} can give: those of {@link ColourMap}, then below, above, not known. */
    public static int[] palette() {
        int[] palette = new int[ColourMap.SIZE + 3];
        for (int i = 0; i < ColourMap.SIZE; i++) {
            palette[i] = ColourMap.argb(i);
        }
        palette[BELOW_INDEX] = BELOW;
        palette[ABOVE_INDEX] = ABOVE;
        palette[UNKNOWN_INDEX] = UNKNOWN;
        return palette;
    }

    /** What is shown with its unit, to stand beside the scale. */
    public String title() {
        return unit.isEmpty() ? quantity : quantity + ", " + unit;
    }

    /**
     * Marks at round values within the range, in rising order; two of them at least have a label, or nobody could read a scale off them.
     *
     * @param labels how many labels there is room for, at least 2; on a logarithmic scale marks without label stand between
     */
    public List<Tick> ticks(int labels) {
        List<Tick> ticks = spacing == Spacing.LINEAR ? linearTicks(labels) : logarithmicTicks(labels);
        // So narrow that few powers of ten, or few steps of the size that there is room for, lie within: equal steps,
        // smaller ones.
        for (int room = labels; labelled(ticks) < 2 && room < MOST_ROOM * labels; room++) {
            ticks = linearTicks(room);
        }
        return ticks;
    }

    private static long labelled(List<Tick> ticks) {
        return ticks.stream().filter(tick -> !tick.label().isEmpty()).count();
    }

    private List<Tick> linearTicks(int labels) {
        double step = RoundNumbers.atLeast((most - least) / Math.max(1, labels - 1));
        List<Tick> ticks = new ArrayList<>();
        for (long i = (long) Math.ceil(least / step - ROUNDING * labels); inRange(i * step); i++) {
            ticks.add(tick(RoundNumbers.times(i, step), true));
        }
        return ticks;
    }

    private List<Tick> logarithmicTicks(int labels) {
        int bottom = RoundNumbers.decadeBelow(least);
        int top = RoundNumbers.decadeAbove(most);
        int every = (top - bottom) / Math.max(1, labels - 1) + ((top - bottom) % Math.max(1, labels - 1) == 0 ? 0 : 1);
        boolean narrow = decadesWithin(bottom, top) < 3 && labels > 4;
        List<Tick> ticks = new ArrayList<>();
        for (int decade = bottom; decade <= top; decade++) {
            for (int digit = 1; digit < 10; digit++) {
                double value = RoundNumbers.times(digit, decade);
                boolean round = narrow ? digit == 1 || digit == 2 || digit == 5 : digit == 1;
                boolean label = round && (narrow || (decade - top) % Math.max(1, every) == 0);
                if (inRange(value) && (label || every <= 1 || digit == 1)) {
                    ticks.add(tick(value, label));
                }
            }
        }
        return ticks;
    }

    private int decadesWithin(int bottom, int top) {
        int count = 0;
        for (int decade = bottom; decade <= top; decade++) {
            count += inRange(RoundNumbers.powerOfTen(decade)) ? 1 : 0;
        }
        return count;
    }

    private boolean inRange(double value) {
        double share = share(value);
        return share >= 0 && share <= 1;
    }

    private Tick tick(double value, boolean label) {
        return new Tick(share(value), value, label ? RoundNumbers.letters(value) : "");
    }
}
