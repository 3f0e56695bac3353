package darkrim.reflection;

import darkrim.geom.UnitCircle;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.TreeMap;

/**
 * A measured BRDF of a surface that neither turns with the surface nor favours a side.
 *
 * <p>It is kept on a grid over three numbers that do not change when the two directions are exchanged, so it is reciprocal to the last bit: with p
 * and q the projections of both directions on the surface, the distance from the mirror direction d = |p + q|, s = |p|^2 + |q|^2, and e =
 * ||p|^2 - |q|^2|. A peak about the mirror direction lies at d = 0 at every angle of incidence. Each node holds the mean of what was measured
 * one way and the other way round; between angles of incidence values are mixed at the same place beside the mirror direction. What is
 * read off between nodes is a mean of values at nodes, so none is larger than the largest of them. Immutable.
 */
public final class BrdfTable implements Lobe {
    private static final int DISTANCES = 96;
    private static final int SUMS = 25;
    private static final int DIFFERENCES = 9;
    private static final double FIRST = 1e-4;
    /** Steps over half a turn in the integral over all directions. */
    private static final int STEPS = 48;

    private final List<BrdfRow> rows;
    private final double[] nodes;
    private final Rings rings;
    private final double greatestValue;

    /**
     * @param rows what was measured; at least one value above 0
     * @throws IllegalArgumentException if nothing was measured, or nothing but zeros
     */
    public BrdfTable(List<BrdfRow> rows) {
        this.rows = List.copyOf(rows);
        TreeMap<Double, List<BrdfRow>> byIncidence = new TreeMap<>();
        rows.forEach(row -> byIncidence
                .computeIfAbsent(row.incidence(), angle -> new ArrayList<>())
                .add(row));
        BrdfScan[] scans = byIncidence.values().stream().map(BrdfScan::new).toArray(BrdfScan[]::new);
        double[] edge = Rings.geometric(FIRST, DISTANCES);
        nodes = new double[(DISTANCES + 1) * SUMS * DIFFERENCES];
        for (int i = 0; i <= DISTANCES; i++) {
            for (int j = 0; j < SUMS; j++) {
                for (int k = 0; k < DIFFERENCES; k++) {
                    nodes[index(i, j, k)] = node(scans, edge[i], 2.0 * j / (SUMS - 1), (double) k / (DIFFERENCES - 1));
                }
            }
        }
        rings = new Rings(edge, this::largestInRing);
        greatestValue = Arrays.stream(nodes).max().orElse(0);
        if (!(greatestValue > 0)) {
            throw new IllegalArgumentException("nothing is reflected");
        }
    }

    /** What was measured. */
    public List<BrdfRow> rows() {
        return rows;
    }

    /** Whether only the plane of incidence was measured. */
    public boolean isInPlaneOnly() {
        return rows.stream().allMatch(BrdfRow::isInPlane);
    }

    /**
     * How far the table is from a measured value at the worst, as a share of the larger of the two: large where the measurement contradicts
     * itself, since reciprocity is imposed, or has a structure finer than the grid.
     */
    public double worstMisfit() {
        double worst = 0;
        for (BrdfRow row : rows) {
            double got = at(row);
            double larger = Math.max(got, row.value());
            worst = Math.max(worst, larger > 0 ? Math.abs(got - row.value()) / larger : 0);
        }
        return worst;
    }

    /** The table's value at the angles of a measured one, 1/sr. */
    public double at(BrdfRow row) {
        double in = StrictMath.cos(Math.toRadians(row.incidence()));
        double out = StrictMath.cos(Math.toRadians(row.polar()));
        double sines = StrictMath.sin(Math.toRadians(row.incidence())) * StrictMath.sin(Math.toRadians(row.polar()));
        // Azimuth 0 is that of the mirror direction, opposite the incoming one.
        return value(in, out, in * out - sines * StrictMath.cos(Math.toRadians(row.azimuth())));
    }

    @Override
    public double value(double in, double out, double between) {
        double d2 = Rings.apart2(in, out, between);
        double in2 = in * in;
        double out2 = out * out;
        int i = rings.ring(d2);
        double inner = rings.edge(i);
        double x = Math.min(1, (Math.sqrt(d2) - inner) / (rings.edge(i + 1) - inner));
        double sum = Math.max(0, 2 - (in2 + out2)) * ((SUMS - 1) / 2.0);
        int j = Math.min(SUMS - 2, (int) sum);
        double y = Math.min(1, sum - j);
        double apart = Math.abs(in2 - out2) * (DIFFERENCES - 1);
        int k = Math.min(DIFFERENCES - 2, (int) apart);
        double z = Math.min(1, apart - k);
        return (1 - x) * square(i, j, k, y, z) + x * square(i + 1, j, k, y, z);
    }

    @Override
    public double density(double given, double drawn, double between) {
        return rings.density(Rings.apart2(given, drawn, between));
    }

    @Override
    public boolean sample(double given, double u, double v, double[] into) {
        return rings.sample(given, u, v, into);
    }

    @Override
    public double greatestWeight() {
        return rings.sum();
    }

    @Override
    public double greatestValue() {
        return greatestValue;
    }

    /** Polar coordinates about the mirror direction, ring by ring; good to about 1e-4. */
    @Override
    public double reflectance(double cosine) {
        double sine = Math.sqrt(Math.max(0, 1 - cosine * cosine));
        double sum = 0;
        for (int step = 0; step < STEPS; step++) {
            double turn = 0.5 * (step + 0.5) / STEPS;
            double x = UnitCircle.cosine(turn);
            double y = UnitCircle.sine(turn);
            double reach = Math.sqrt(Math.max(0, 1 - sine * y * sine * y)) - sine * x;
            for (int i = 0; i < rings.count() && rings.edge(i) < reach; i++) {
                sum += Quadrature.panel(
                        d -> d * beside(cosine, sine, d * x, d * y), rings.edge(i), Math.min(reach, rings.edge(i + 1)));
            }
        }
        return 2 * Math.PI * sum / STEPS;
    }

    private double beside(double cosine, double sine, double along, double across) {
        double x = sine + along;
        double out = Math.sqrt(Math.max(0, 1 - x * x - across * across));
        return value(cosine, out, cosine * out - sine * x);
    }

    @Override
    public double greatestReflectance() {
        return rings.sum();
    }

    @Override
    public String describe() {
        return "measured, " + rows.size() + " values";
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof BrdfTable that && rows.equals(that.rows);
    }

    @Override
    public int hashCode() {
        return rows.hashCode();
    }

    private double square(int i, int j, int k, double y, double z) {
        int at = index(i, j, k);
        return (1 - y) * ((1 - z) * nodes[at] + z * nodes[at + 1])
                + y * ((1 - z) * nodes[at + DIFFERENCES] + z * nodes[at + DIFFERENCES + 1]);
    }

    private static int index(int i, int j, int k) {
        return (i * SUMS + j) * DIFFERENCES + k;
    }

    private double largestInRing(int ring) {
        return Arrays.stream(nodes, index(ring, 0, 0), index(ring + 2, 0, 0))
                .max()
                .orElse(0);
    }

    /** Numbers that no two directions have stand for the nearest at the same distance from the mirror direction. */
    private static double node(BrdfScan[] scans, double d, double wanted, double difference) {
        double sum = Math.max(wanted, d * d / 2);
        double e = Math.min(difference, Math.min(Math.min(sum, 2 - sum), d * Math.sqrt(Math.max(0, 2 * sum - d * d))));
        double p = Math.sqrt((sum + e) / 2);
        double q = Math.sqrt(Math.max(0, (sum - e) / 2));
        return (oneWay(scans, p, q, d) + oneWay(scans, q, p, d)) / 2;
    }

    /** Mixed between the two nearest angles of incidence, at the same place beside the mirror direction. */
    private static double oneWay(BrdfScan[] scans, double in, double out, double d) {
        // d^2 = in^2 + out^2 - 2 in (in + along), with the scattered projection at (in + along, across).
        double along = in > 0 ? (out * out - in * in - d * d) / (2 * in) : d;
        double across = Math.sqrt(Math.max(0, d * d - along * along));
        int above = 0;
        while (above < scans.length && scans[above].sine() < in) {
            above++;
        }
        if (above == 0 || above == scans.length) {
            return scans[above == 0 ? 0 : above - 1].at(along, across);
        }
        BrdfScan low = scans[above - 1];
        BrdfScan high = scans[above];
        double share = (in - low.sine()) / (high.sine() - low.sine());
        return (1 - share) * low.at(along, across) + share * high.at(along, across);
    }
}
