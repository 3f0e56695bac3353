package darkrim.present.picture;

import org.apache.commons.geometry.euclidean.threed.Vector3D;

/**
 * How space becomes a picture. Places in the picture are in units of half its height: x from the middle to the right, y from the middle up.
 * Immutable.
 */
interface Sight {
    /**
     * The line along which a place of the picture looks.
     *
     * @param x place in the picture
     * @param y likewise
     * @param into receives the line
     * @return whether there is one
     */
    boolean line(double x, double y, SightLine into);

    /**
     * Where a point appears in the picture.
     *
     * @param point the point, mm
     * @param into receives the place
     * @return whether it appears
     */
    boolean place(Vector3D point, double[] into);
}
