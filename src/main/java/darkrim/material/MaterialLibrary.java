package darkrim.material;

import java.util.Collection;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Materials that every layout knows by name. */
public final class MaterialLibrary {
    private static final String NIST = "NIST cryogenic material properties database (trc.nist.gov/cryogenics)";
    private static final String QUOTED = "; coefficients as public programs quote the page";

    /** Fits of this kind hold from 4 K to 300 K. */
    private static final double LOWEST = 4;

    private static final double HIGHEST = 300;

    private static final Map<String, Material> BY_NAME = new LinkedHashMap<>();

    static {
        add(
                "aluminium-6061",
                polynomial(0.04, 18, -415.45, -4.1277e2, -3.0389e-1, 8.7696e-3, -9.9821e-6, 0.0),
                NIST + ", 6061-T6 aluminium; stated error 4 %");
        add(
                "invar-36",
                polynomial(0.05, 80, -40, -5.265e1, 1.009e-1, 8.395e-4, -1.973e-6, 8.794e-11),
                NIST + ", Invar (Fe-36Ni); stated error 5 %");
        add(
                "titanium-6al-4v",
                polynomial(0.05, 24, -173.61, -1.711e2, -2.140e-1, 4.807e-3, -7.111e-6, 0.0),
                NIST + ", Ti-6Al-4V; error 5 %" + QUOTED);
        for (String steel : List.of("304", "316")) {
            add(
                    "stainless-" + steel,
                    polynomial(0.05, 23, -300.04, -2.9554e2, -3.9811e-1, 9.2683e-3, -2.0261e-5, 1.7127e-8),
                    NIST + ", " + steel + " stainless; error 5 %" + QUOTED);
        }
        add(
                "copper",
                new ExpansionFit(
                        List.of(
                                -17.9081289,
                                67.131914,
                                -118.809316,
                                109.9845997,
                                -53.8696089,
                                13.30247491,
                                -1.30843441),
                        LOWEST,
                        HIGHEST,
                        0.05,
                        0.1),
                NIST + ", OFHC copper, integral of the expansion coefficient; error 5 %, 10 % below 50 K");
        add(
                "molybdenum",
                new ContractionTable(
                        List.of(4.0, 40.0, 77.0, 100.0, 125.0, 150.0, 175.0, 200.0, 225.0, 250.0, 275.0, 293.0, 300.0),
                        List.of(
                                95e-5, 94e-5, 90e-5, 84.2e-5, 76.0e-5, 66.5e-5, 56.0e-5, 44.8e-5, 33.2e-5, 21.2e-5,
                                9.0e-5, 0.0, -3.4e-5),
                        0.08),
                "Ekin, Experimental Techniques for Low-Temperature Measurements, 2006, app. 6.4, and Corruccini and Gniewek,"
                        + " NBS Monograph 29, 1961; figures at 4, 40 and 77 K from memory; above, the law of Debye and Grueneisen"
                        + " (theta 377 K) scaled to the figure at 77 K; error 8 %");
        add(
                "silicon",
                new SiliconFit(),
                "Okada and Tokumaru, J. Appl. Phys. 56, 314, 1984, from 124 K up; below Ekin, 2006, app. 6.4; from memory;"
                        + " error 5 %");
    }

    private MaterialLibrary() {}

    private static void add(String name, Contraction contraction, String source) {
        BY_NAME.put(name, new Material(name, contraction, source));
    }

    private static Contraction polynomial(double stated, double low, double atLow, Double... coefficients) {
        return new PolynomialFit(List.of(coefficients), low, atLow, LOWEST, HIGHEST, stated);
    }

    /** The material of a name, if there is one. */
    public static Optional<Material> of(String name) {
        return Optional.ofNullable(BY_NAME.get(name));
    }

    /** Names of all materials. */
    public static Collection<String> names() {
        return Collections.unmodifiableSet(BY_NAME.keySet());
    }

    /** Why a material that designers ask for is not here; empty where nothing is to be said. */
    public static Optional<String> refusal(String name) {
        String bare = name.toLowerCase(java.util.Locale.ROOT).replaceAll("[^a-z0-9]", "");
        return bare.startsWith("g10") || bare.startsWith("g11") || bare.startsWith("fr4") || bare.startsWith("cfrp")
                ? Optional.of(
                        "a laminate contracts two or three times as much across its cloth as along it, while parts here"
                                + " contract alike in all directions: give a table of your own under 'materials' for the direction"
                                + " that matters")
                : Optional.empty();
    }
}
