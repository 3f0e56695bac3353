package darkrim.reflection;

import java.util.List;

/**
 * Reflectance measured at some angles of incidence, straight lines between them. Below the first angle its value holds, beyond the last one
 * that of the last.
 *
 * @param angles angles of incidence, deg, increasing, from 0 to 90
 * @param values reflectances, 0 to 1, as many
 */
public record AngleTable(List<Double> angles, List<Double> values) implements AngleLaw {
    /** Covers the rounding of an angle reckoned from its cosine, deg. */
    private static final double ROUNDING = 1e-6;

    /**
     * Copies the lists.
     *
     * @throws IllegalArgumentException if there are fewer than two, they differ in number, do not increase or are out of range
     */
    public AngleTable {
        angles = List.copyOf(angles);
        values = List.copyOf(values);
        if (angles.size() < 2 || angles.size() != values.size()) {
            throw new IllegalArgumentException(angles.size() + " angles and " + values.size() + " values");
        }
        for (int i = 0; i < angles.size(); i++) {
            double angle = angles.get(i);
            double value = values.get(i);
            boolean increases = i == 0 || angle > angles.get(i - 1);
            if (!(angle >= 0 && angle <= 90 && value >= 0 && value <= 1 && increases)) {
                throw new IllegalArgumentException("reflects " + value + " at " + angle + " deg");
            }
        }
    }

    @Override
    public double at(double cosine) {
        return atAngle(angle(cosine));
    }

    @Override
    public double greatest(double least, double most) {
        double from = angle(most) - ROUNDING;
        double to = angle(least) + ROUNDING;
        double greatest = Math.max(atAngle(from), atAngle(to));
        for (int i = 0; i < angles.size(); i++) {
            if (angles.get(i) > from && angles.get(i) < to) {
                greatest = Math.max(greatest, values.get(i));
            }
        }
        return greatest;
    }

    /** The integral of R sin(2 t) over the angle t, along each straight line by parts. */
    @Override
    public double mean() {
        double sum = 0;
        for (int i = 0; i <= angles.size(); i++) {
            double from = Math.toRadians(i == 0 ? 0 : angles.get(i - 1));
            double to = Math.toRadians(i == angles.size() ? 90 : angles.get(i));
            if (from < to) {
                double first = values.get(Math.max(0, i - 1));
                double last = values.get(Math.min(angles.size() - 1, i));
                double slope = (last - first) / (to - from);
                sum += (first * StrictMath.cos(2 * from) - last * StrictMath.cos(2 * to)) / 2
                        + slope * StrictMath.cos(to + from) * StrictMath.sin(to - from) / 2;
            }
        }
        return sum;
    }

    @Override
    public String describe() {
        return "table of " + angles.size() + " angles";
    }

    private static double angle(double cosine) {
        return Math.toDegrees(StrictMath.acos(Math.min(1, Math.max(0, cosine))));
    }

    private double atAngle(double angle) {
        if (angle <= angles.get(0)) {
            return values.get(0);
        }
        int low = 0;
        int high = angles.size() - 1;
        if (angle >= angles.get(high)) {
            return values.get(high);
        }
        while (high - low > 1) {
            int middle = (low + high) >>> 1;
            if (angles.get(middle) <= angle) {
                low = middle;
            } else {
                high = middle;
            }
        }
        double share = (angle - angles.get(low)) / (angles.get(high) - angles.get(low));
        return values.get(low) + share * (values.get(high) - values.get(low));
    }
}
