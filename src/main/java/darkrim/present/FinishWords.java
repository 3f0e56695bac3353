package darkrim.present;

import darkrim.layout.FinishSpec;

/** A finish in a few words. */
final class FinishWords {
    private static final double EIGHTY = StrictMath.cos(Math.toRadians(80));

    private FinishWords() {}

    /** What it reflects straight on and, where that differs, at 80 deg; its emissivity where that is stated. */
    static String of(FinishSpec finish) {
        double there = finish.reflection().reflectance(EIGHTY);
        boolean changes = Math.abs(there - finish.diffuse() - finish.mirror()) > 1e-9;
        return "diffuse " + Figures.limit(finish.diffuse()) + ", mirror " + Figures.limit(finish.mirror())
                + (changes ? ", " + Figures.three(there) + " at 80 deg" : "")
                + finish.emissivity()
                        .map(value -> ", emissivity " + Figures.limit(value))
                        .orElse("");
    }
}
