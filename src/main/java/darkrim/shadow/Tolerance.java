package darkrim.shadow;

/**
 * The lengths below which a proof tells nothing apart, mm. See docs/proof-of-darkness.md for why they make a proof safe.
 *
 * @param rounding more than all rounding in the coordinates of a shaft and in a signed distance together: 2^-46 of the bound of the scene,
 *     128 unit roundoffs
 * @param flat a corner this near to a plane counts as lying in it
 * @param gap gaps between parts narrower than this count as closed
 */
record Tolerance(double rounding, double flat, double gap) {
    /**
     * The lengths for a scene.
     *
     * @param bound no coordinate is larger than this in size, mm
     * @param gapWidth the gap that counts as closed, mm; widened where the scene is so large that rounding asks for it
     */
    static Tolerance of(double bound, double gapWidth) {
        double rounding = 0x1p-46 * bound;
        double gap = Math.max(gapWidth, 256 * rounding);
        return new Tolerance(rounding, gap / 64, gap);
    }
}
