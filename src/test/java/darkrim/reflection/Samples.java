package darkrim.reflection;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;

/** Reflections of every kind, for the laws that all of them must keep. Numbers invented. */
public final class Samples {
    private Samples() {}

    /**
     * A reflection with a name.
     *
     * @param name what it is
     * @param reflection it
     */
    public record Named(String name, Reflection reflection) {
        @Override
        public String toString() {
            return name;
        }
    }

    /** One or more of every kind, none of which reflects more than arrives. */
    public static Stream<Named> all() {
        return Stream.of(
                named("lambertian", Reflection.of(0.6, 0)),
                named("lambertian and mirror", Reflection.of(0.3, 0.5)),
                named("bare face", mirror(Fresnel.of(3.42))),
                named("metal", mirror(new Fresnel(1.2, 7, 0.95))),
                named(
                        "mirror table",
                        mirror(new AngleTable(List.of(0.0, 40.0, 70.0, 90.0), List.of(0.1, 0.12, 0.4, 1.0)))),
                named("coat", Reflection.coat(1.5, 0.3)),
                named("diffuse table", product(new AngleTable(List.of(0.0, 60.0, 90.0), List.of(0.2, 0.3, 0.9)))),
                named("narrow lobe", lobes(new RollOff(0.02, 1e-3, 2))),
                named("broad lobe", lobes(new RollOff(0.1, 0.2, 1.5))),
                named("steep lobe", lobes(new RollOff(1e-4, 1e-6, 2.6))),
                named("flat lobe", lobes(new RollOff(0.2, 1, 0))),
                named("two lobes", lobes(new RollOff(0.01, 1e-3, 2), new RollOff(0.05, 0.3, 2))),
                named("measured lobe", lobes(new BrdfTable(rows(new RollOff(0.03, 0.01, 2))))),
                named(
                        "all at once",
                        Reflection.of(0.1, 0.05)
                                .and(mirror(new Fresnel(3, 0, 0.3)))
                                .and(product(new AngleTable(List.of(0.0, 90.0), List.of(0.05, 0.2))))
                                .and(lobes(new RollOff(0.01, 0.02, 2)))));
    }

    /** What one would measure of a lobe: half planes at some azimuths, denser about the mirror direction, not the same on both sides. */
    public static List<BrdfRow> rows(Lobe lobe) {
        List<BrdfRow> rows = new ArrayList<>();
        for (double incidence : new double[] {5, 30, 60, 80}) {
            for (double azimuth : new double[] {0, 180}) {
                for (double polar = azimuth == 0 ? 0 : 4; polar <= 88; polar += polar < incidence + 10 ? 1 : 4) {
                    rows.add(new BrdfRow(incidence, polar, azimuth, value(lobe, incidence, polar, azimuth)));
                }
            }
        }
        return rows;
    }

    private static double value(Lobe lobe, double incidence, double polar, double azimuth) {
        double in = StrictMath.cos(Math.toRadians(incidence));
        double out = StrictMath.cos(Math.toRadians(polar));
        double sines = StrictMath.sin(Math.toRadians(incidence)) * StrictMath.sin(Math.toRadians(polar));
        return lobe.value(in, out, in * out - sines * StrictMath.cos(Math.toRadians(azimuth)));
    }

    private static Named named(String name, Reflection reflection) {
        return new Named(name, reflection);
    }

    private static Reflection mirror(AngleLaw law) {
        return new Reflection(0, List.of(law), List.of(), List.of());
    }

    private static Reflection product(AngleLaw law) {
        return new Reflection(0, List.of(), List.of(ProductScatter.of(law)), List.of());
    }

    private static Reflection lobes(Lobe... lobes) {
        return new Reflection(0, List.of(), List.of(), List.of(lobes));
    }
}
