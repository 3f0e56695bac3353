package darkrim.study.star;

import darkrim.geom.Outline;
import darkrim.geom.Polygon;
import darkrim.layout.BeamSpec;
import darkrim.scene.Scene;
import darkrim.scene.Surface;
import java.util.List;

/**
 * A rectangle of star positions, mm.
 *
 * @param fromX least x
 * @param fromY least y
 * @param toX greatest x
 * @param toY greatest y
 */
public record StarRegion(double fromX, double fromY, double toX, double toY) {
    /** How far stars beside the receivers are looked at where nothing else is asked for, mm. */
    private static final double BESIDE = 10;

    /**
     * @throws IllegalArgumentException if the rectangle has no area
     */
    public StarRegion {
        if (!(fromX < toX && fromY < toY && Double.isFinite(toX - fromX) && Double.isFinite(toY - fromY))) {
            throw new IllegalArgumentException(
                    "a region needs an area: " + fromX + " to " + toX + ", " + fromY + " to " + toY);
        }
    }

    /** Width along x, mm. */
    public double width() {
        return toX - fromX;
    }

    /** Width along y, mm. */
    public double height() {
        return toY - fromY;
    }

    /** The receivers and 10 mm around them; where the optics light a field in the focal plane only, no more than it. */
    static StarRegion around(Scene scene, List<Surface> receivers, BeamSpec beam, double focusHeight) {
        double[] low = {Double.POSITIVE_INFINITY, Double.POSITIVE_INFINITY};
        double[] high = {Double.NEGATIVE_INFINITY, Double.NEGATIVE_INFINITY};
        for (Surface surface : receivers) {
            for (int f = surface.firstFacet(); f < surface.firstFacet() + surface.facetCount(); f++) {
                for (int corner = 0; corner < 3; corner++) {
                    for (int axis = 0; axis < 2; axis++) {
                        low[axis] = Math.min(low[axis], scene.corner(f, corner, axis) - BESIDE);
                        high[axis] = Math.max(high[axis], scene.corner(f, corner, axis) + BESIDE);
                    }
                }
            }
        }
        BeamSpec.FieldSpec field = beam.field()
                .filter(limit -> limit.centre().getZ() == focusHeight)
                .orElse(null);
        if (field == null) {
            return new StarRegion(low[0], low[1], high[0], high[1]);
        }
        double x = field.centre().getX();
        double y = field.centre().getY();
        double[] half = half(field.outline());
        StarRegion lit = new StarRegion(
                Math.max(low[0], x - half[0]),
                Math.max(low[1], y - half[1]),
                Math.min(high[0], x + half[0]),
                Math.min(high[1], y + half[1]));
        return lit;
    }

    private static double[] half(Outline outline) {
        if (outline instanceof Polygon polygon) {
            return new double[] {
                polygon.corners().stream()
                        .mapToDouble(c -> Math.abs(c.getX()))
                        .max()
                        .orElseThrow(),
                polygon.corners().stream()
                        .mapToDouble(c -> Math.abs(c.getY()))
                        .max()
                        .orElseThrow()
            };
        }
        return new double[] {outline.reach(), outline.reach()};
    }
}
