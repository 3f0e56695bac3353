package darkrim.layout;

import java.util.List;

/**
 * How far a part may stand from where it is drawn.
 *
 * @param shift along x, y and z, mm
 * @param tilt about x, y and z through the origin of the part, degrees
 */
public record PlacementTolerance(List<Tolerance> shift, List<Tolerance> tilt) {
    /** Copies the lists. */
    public PlacementTolerance {
        shift = List.copyOf(shift);
        tilt = List.copyOf(tilt);
    }
}
