package darkrim.study.star;

import java.util.Optional;

/**
 * What a star scan is to look at, and how finely.
 *
 * @param onto pattern of the surfaces on which light is counted
 * @param focusHeight how far above the focal plane the light of the star comes together, mm
 * @param within positions of the star; where absent, around the surfaces
 * @param finest cells are not split below this width, mm
 * @param level share of the star's flux that counts as too much
 * @param across cells of the pupil along each coordinate; a sample each at every position
 * @param mostPositions beside the middles of the coarsest cells, of which there are 1,024 at most, no more positions are looked at than make so many
 */
public record StarScanSettings(
        String onto,
        double focusHeight,
        Optional<StarRegion> within,
        double finest,
        double level,
        int across,
        int mostPositions) {
    /** Active areas. */
    public static final String ACTIVE = "**/active";

    /** About 1,000 samples at every position. */
    public static final int ACROSS = 32;

    /** No more cells of the pupil along a coordinate are sampled. */
    public static final int MOST_ACROSS = 4_096;

    /** Positions near the level get this many times the samples, at most. */
    public static final int MOST_TIMES = 8;

    /**
     * @throws IllegalArgumentException if a number is out of its range
     */
    public StarScanSettings {
        if (!(finest > 0 && level > 0 && level <= 1 && across >= 2 && mostPositions > 0)) {
            throw new IllegalArgumentException("no star scan: cells of " + finest + " mm, level " + level + ", "
                    + across + " samples across, " + mostPositions + " positions");
        }
    }

    /** Samples at a position near the level. */
    public long mostSamples() {
        return (long) across * across * MOST_TIMES;
    }
}
