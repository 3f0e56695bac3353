package darkrim.study.star;

import darkrim.geom.Outline;
import darkrim.geom.Polygon;
import darkrim.layout.BeamSpec;
import darkrim.layout.form.Wording;
import darkrim.light.StarReach;
import darkrim.scene.Scene;
import darkrim.scene.Surface;
import darkrim.study.UnusableStudy;
import java.util.List;
import java.util.Optional;

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
    /** No star stands further out, mm. */
    private static final double FAR = 1e9;

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

    /**
     * The receivers and 10 mm around them; where the optics light a field in the plane of the foci only, no more than it.
     *
     * @throws UnusableStudy if the field lies elsewhere
     */
    static StarRegion around(Scene scene, List<Surface> receivers, BeamSpec beam, double focusHeight)
            throws UnusableStudy {
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
        StarRegion wanted = new StarRegion(low[0], low[1], high[0], high[1]);
        Optional<StarRegion> lit = lit(beam, focusHeight);
        if (lit.isEmpty()) {
            return wanted;
        }
        StarRegion field = lit.get();
        double fromX = Math.max(wanted.fromX, field.fromX);
        double fromY = Math.max(wanted.fromY, field.fromY);
        double toX = Math.min(wanted.toX, field.toX);
        double toY = Math.min(wanted.toY, field.toY);
        if (!(fromX < toX && fromY < toY)) {
            throw new UnusableStudy("the field ends more than " + Wording.number(BESIDE)
                    + " mm before the surfaces on which light counts,"
                    + " expected stars beside them, or --within to say where stars stand");
        }
        return new StarRegion(fromX, fromY, toX, toY);
    }

    /** A rectangle around the field, where the optics light one in the plane of the foci. */
    private static Optional<StarRegion> lit(BeamSpec beam, double focusHeight) {
        return beam.field()
                .filter(limit -> limit.centre().getZ() == focusHeight)
                .map(field -> {
                    double x = field.centre().getX();
                    double y = field.centre().getY();
                    double[] half = half(field.outline());
                    return new StarRegion(x - half[0], y - half[1], x + half[0], y + half[1]);
                });
    }

    /** Whether a star of the field that stands outside might light a receiver after one reflection; where not, none does. */
    boolean isExceeded(StarReach reach, BeamSpec beam, double focusHeight) {
        StarRegion outer = lit(beam, focusHeight).orElse(new StarRegion(-FAR, -FAR, FAR, FAR));
        // Strips on all sides, less what covers rounding.
        double off = 1e-6;
        return (outer.fromX < fromX && reach.mayLight(outer.fromX, outer.fromY, fromX - off, outer.toY))
                || (outer.toX > toX && reach.mayLight(toX + off, outer.fromY, outer.toX, outer.toY))
                || (outer.fromY < fromY && reach.mayLight(fromX, outer.fromY, toX, fromY - off))
                || (outer.toY > toY && reach.mayLight(fromX, toY + off, toX, outer.toY));
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
