package darkrim.present.picture;

/**
 * A plane square to an axis at which parts are cut: what lies beyond it is not drawn, and solids that it cuts show their cut faces.
 *
 * @param axis 0 for x, 1 for y, 2 for z
 * @param place where the plane crosses the axis, mm
 * @param keepsLess whether the side of the smaller coordinates is drawn, otherwise the other
 */
public record Section(int axis, double place, boolean keepsLess) {
    /** The section that takes away what is nearer to an eye; seen edge-on, what has the larger coordinate. */
    public static Section towards(int axis, double place, ViewDirection eye) {
        double[] away = eye.away().toArray();
        return new Section(axis, place, !(away[axis] > 0));
    }
}
