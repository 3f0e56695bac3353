package darkrim.study.path;

import darkrim.light.Estimate;
import darkrim.light.ReflectionPath;
import darkrim.light.TracedPath;
import darkrim.scene.Scene;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** What was found of the ways of one path. Mutable, for one thread. */
final class WaySums {
    private final Scene scene;
    private final ReflectionPath path;
    private final CellSums onReceiver;
    private final CellSums onLast;
    private final double[] cosines;
    private final double[] least;
    private final double[] most;
    private long ways;
    private double whole;

    WaySums(Scene scene, ReflectionPath path, CellSums onReceiver, CellSums onLast) {
        this.scene = scene;
        this.path = path;
        this.onReceiver = onReceiver;
        this.onLast = onLast;
        cosines = new double[path.order()];
        least = new double[path.order()];
        most = new double[path.order()];
        Arrays.fill(least, 1);
    }

    /** How many there are. */
    long ways() {
        return ways;
    }

    void add(TracedPath way, double value) {
        ways++;
        whole += value;
        for (int i = 0; i < cosines.length; i++) {
            double cosine = incidence(way, i + 1);
            cosines[i] += value * cosine;
            least[i] = Math.min(least[i], cosine);
            most[i] = Math.max(most[i], cosine);
        }
        onReceiver.add(way, way.order() + 1, value);
        onLast.add(way, way.order(), value);
    }

    /** Cosine of the angle between a facet's normal and the way to the point before. */
    private double incidence(TracedPath way, int point) {
        double along = 0;
        double squared = 0;
        for (int k = 0; k < 3; k++) {
            double leg = way.at(point - 1, k) - way.at(point, k);
            along += leg * normal(way.facet(point), k);
            squared += leg * leg;
        }
        return Math.min(1, Math.abs(along) / Math.sqrt(squared));
    }

    /** Component of the normal where a way is reflected; a window has no facets. */
    private double normal(int facet, int k) {
        return facet >= 0 ? scene.normal(facet, k) : k == 2 ? 1 : 0;
    }

    void add(WaySums other) {
        ways += other.ways;
        whole += other.whole;
        for (int i = 0; i < cosines.length; i++) {
            cosines[i] += other.cosines[i];
            least[i] = Math.min(least[i], other.least[i]);
            most[i] = Math.max(most[i], other.most[i]);
        }
        onReceiver.add(other.onReceiver);
        onLast.add(other.onLast);
    }

    /**
     * What is known of the path; needs at least one way.
     *
     * @param irradiance what it gives the receiver
     * @param reflected all reflected light of the receiver, relative irradiance
     */
    TopPath described(Estimate irradiance, double reflected) {
        List<Incidences> incidences = new ArrayList<>();
        for (int i = 0; i < cosines.length; i++) {
            incidences.add(new Incidences(angle(cosines[i] / whole), angle(most[i]), angle(least[i])));
        }
        return new TopPath(
                path,
                irradiance,
                irradiance.mean() / reflected,
                incidences,
                onReceiver.spot(whole),
                onLast.spot(whole),
                onReceiver.example());
    }

    private static double angle(double cosine) {
        return Math.toDegrees(StrictMath.acos(Math.min(1, cosine)));
    }
}
