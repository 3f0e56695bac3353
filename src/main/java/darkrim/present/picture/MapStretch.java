package darkrim.present.picture;

/**
 * How the sides of a flat map are drawn: to one scale, or the short side of a narrow surface so many times as large, so that its cells can be
 * told apart. Marks along each side say its own scale.
 *
 * @param across what lengths along the first side are multiplied with
 * @param up what lengths along the second side are multiplied with
 */
public record MapStretch(int across, int up) {
    /** Sides whose ratio is at most this are drawn to one scale. */
    private static final double NARROW = 8;
    /** Otherwise the picture of the short side is about this part of the long one. */
    private static final double SHOWN = 6;

    /**
     * For a surface.
     *
     * @param wide its first side, mm
     * @param high its second side, mm
     */
    public static MapStretch of(double wide, double high) {
        double ratio = Math.max(wide, high) / Math.min(wide, high);
        if (!(ratio > NARROW) || !Double.isFinite(ratio)) {
            return new MapStretch(1, 1);
        }
        int times = (int) Math.min(Integer.MAX_VALUE, Math.round(ratio / SHOWN));
        return wide < high ? new MapStretch(times, 1) : new MapStretch(1, times);
    }

    /** What a reader must know of it, a sentence; empty where both sides are drawn to one scale. */
    public String words() {
        int times = Math.max(across, up);
        return times == 1
                ? ""
                : "The surface is narrow: " + (across > 1 ? "its width" : "its height") + " is drawn " + times
                        + " times as large.";
    }
}
