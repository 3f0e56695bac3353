package darkrim.reflection;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/**
 * The values measured at one angle of incidence, read off between them: straight lines in the sine of the polar angle within a half plane of one
 * azimuth, straight lines in azimuth between half planes. Where only the plane of incidence was measured, a direction out of it gets the values
 * at its distance from the mirror direction on either side, forward and back mixed by the cosine of the turn. Beyond the measured angles
 * the nearest value holds. Immutable.
 */
final class BrdfScan {
    private final double sine;
    private final boolean inPlane;
    /** Azimuths of the half planes, increasing; empty where only the plane of incidence was measured. */
    private final double[] azimuths;
    /** By half plane the values over the sine of the polar angle; in the plane of incidence one line, the way back with negative sines. */
    private final Line[] lines;

    /** Values at increasing places. */
    private static final class Line {
        private final double[] at;
        private final double[] values;

        /**
         * @param sums by place the sum of values and their number
         */
        Line(Map<Double, double[]> sums) {
            at = sums.keySet().stream().mapToDouble(Double::doubleValue).toArray();
            values = sums.values().stream().mapToDouble(sum -> sum[0] / sum[1]).toArray();
        }

        double value(double x) {
            int found = Arrays.binarySearch(at, x);
            if (found >= 0) {
                return values[found];
            }
            int above = -found - 1;
            if (above == 0 || above == at.length) {
                return values[above == 0 ? 0 : at.length - 1];
            }
            double share = (x - at[above - 1]) / (at[above] - at[above - 1]);
            return values[above - 1] + share * (values[above] - values[above - 1]);
        }
    }

    /**
     * @param rows all of one angle of incidence
     */
    BrdfScan(List<BrdfRow> rows) {
        sine = sine(rows.get(0).incidence());
        inPlane = rows.stream().allMatch(BrdfRow::isInPlane);
        Map<Double, Map<Double, double[]>> planes = new TreeMap<>();
        for (BrdfRow row : rows) {
            double turned = inPlane ? 0 : row.azimuth();
            double at = inPlane && row.azimuth() == 180 ? -sine(row.polar()) : sine(row.polar());
            add(planes.computeIfAbsent(turned, azimuth -> new TreeMap<>()), at, row.value());
        }
        // The normal belongs to every half plane.
        rows.stream()
                .filter(row -> row.polar() == 0)
                .forEach(row -> planes.forEach((azimuth, line) -> {
                    if (azimuth != row.azimuth() && !inPlane) {
                        add(line, 0, row.value());
                    }
                }));
        azimuths = planes.keySet().stream().mapToDouble(Double::doubleValue).toArray();
        lines = planes.values().stream().map(Line::new).toArray(Line[]::new);
    }

    /** Two values for one direction, as of both sides of the plane of incidence, count as their mean. */
    private static void add(Map<Double, double[]> line, double at, double value) {
        double[] sum = line.computeIfAbsent(at == 0 ? 0.0 : at, place -> new double[2]);
        sum[0] += value;
        sum[1]++;
    }

    /** The sine of the angle of incidence. */
    double sine() {
        return sine;
    }

    /**
     * The BRDF at a place beside the mirror direction, in direction cosines.
     *
     * @param along along its projection
     * @param across across it
     */
    double at(double along, double across) {
        return inPlane ? beside(along, across) : inDirection(sine + along, across);
    }

    private double beside(double along, double across) {
        double d = Math.sqrt(along * along + across * across);
        double forward = d > 0 ? (1 + along / d) / 2 : 1;
        // On the side where no direction is so far from the mirror direction, the other side stands for it.
        if (sine + d > 1) {
            forward = sine - d < -1 && along > 0 ? 1 : 0;
        } else if (sine - d < -1) {
            forward = 1;
        }
        return forward * lines[0].value(sine + d) + (1 - forward) * lines[0].value(sine - d);
    }

    private double inDirection(double x, double y) {
        double polar = Math.min(1, Math.sqrt(x * x + y * y));
        double azimuth = polar > 0 ? Math.toDegrees(StrictMath.atan2(Math.abs(y), x)) : 0;
        int last = azimuths.length - 1;
        if (azimuth <= azimuths[0] || azimuth >= azimuths[last]) {
            return lines[azimuth <= azimuths[0] ? 0 : last].value(polar);
        }
        int above = 1;
        while (azimuths[above] < azimuth) {
            above++;
        }
        double share = (azimuth - azimuths[above - 1]) / (azimuths[above] - azimuths[above - 1]);
        return (1 - share) * lines[above - 1].value(polar) + share * lines[above].value(polar);
    }

    private static double sine(double angle) {
        return angle == 90 ? 1 : StrictMath.sin(Math.toRadians(angle));
    }
}
