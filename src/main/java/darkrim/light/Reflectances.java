package darkrim.light;

import darkrim.reflection.Reflection;
import darkrim.scene.Scene;
import java.util.HashMap;
import java.util.Map;

/**
 * Total reflectance of surfaces by angle, fast enough to be asked at every hit: that of lobes, an integral, is read off a table. Immutable.
 */
final class Reflectances {
    /** Steps of the cosine; the reflectance of a lobe changes smoothly with it. */
    private static final int STEPS = 256;

    private final Reflection[] reflections;
    private final double[][] lobes;

    Reflectances(Scene scene) {
        int count = scene.surfaces().size();
        reflections = new Reflection[count];
        lobes = new double[count][];
        Map<Reflection, double[]> tables = new HashMap<>();
        for (int i = 0; i < count; i++) {
            reflections[i] = scene.surfaces().get(i).finish().reflection();
            lobes[i] = reflections[i].lobes().isEmpty()
                    ? null
                    : tables.computeIfAbsent(reflections[i], Reflectances::table);
        }
    }

    private static double[] table(Reflection reflection) {
        double[] table = new double[STEPS + 1];
        for (int i = 0; i <= STEPS; i++) {
            table[i] = reflection.lobeReflectance((double) i / STEPS);
        }
        return table;
    }

    /** How a surface reflects. */
    Reflection of(int surface) {
        return reflections[surface];
    }

    /** Reflectance of the lobes of a surface, by the cosine of the angle of incidence. */
    double ofLobes(int surface, double cosine) {
        double[] table = lobes[surface];
        if (table == null) {
            return 0;
        }
        double at = cosine * STEPS;
        int below = Math.min(STEPS - 1, (int) at);
        return table[below] + (at - below) * (table[below + 1] - table[below]);
    }

    /** All that a surface reflects, at most 1. */
    double total(int surface, double cosine) {
        Reflection reflection = reflections[surface];
        return Math.min(1, reflection.broadReflectance(cosine) + reflection.mirror(cosine) + ofLobes(surface, cosine));
    }
}
