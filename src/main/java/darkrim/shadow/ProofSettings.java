package darkrim.shadow;

/**
 * How hard a proof tries.
 *
 * @param smallestPiece pieces are not cut below this size, mm
 * @param mostPairs most pairs of pieces looked at for one surface
 * @param gapWidth gaps between parts narrower than this count as closed, mm
 */
public record ProofSettings(double smallestPiece, long mostPairs, double gapWidth) {
    /** 2 micrometres, 30,000 pairs, gaps of 1e-6 mm. */
    public static final ProofSettings DEFAULT = new ProofSettings(0.002, 30_000, 1e-6);

    /**
     * @throws IllegalArgumentException if a value is not positive
     */
    public ProofSettings {
        if (!(smallestPiece > 0 && mostPairs > 0 && gapWidth > 0)) {
            throw new IllegalArgumentException(
                    "a proof needs a positive smallest piece, number of pairs and gap width");
        }
    }

    /**
     * The gap that counts as closed in a scene, mm: wider than the setting where the scene is so large that rounding asks for it.
     *
     * @param bound no coordinate of the scene is larger than this in size, mm
     */
    public double gapWithin(double bound) {
        return Tolerance.of(bound, gapWidth).gap();
    }
}
