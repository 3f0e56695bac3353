package darkrim.assembly;

import darkrim.diagnostic.Place;
import darkrim.geom.Placement;

/** A body of a part in the frame of the part, before it is placed. */
interface Piece {
    /** Number of facets. */
    int size();

    /**
     * The body in its place.
     *
     * @param part name of the part, with the number of a copy
     * @param placement where the part stands
     * @param place where it stands in the layout file
     */
    Body placed(String part, Placement placement, Place place);
}
