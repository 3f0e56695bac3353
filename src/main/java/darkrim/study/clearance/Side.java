package darkrim.study.clearance;

import darkrim.scene.Scene;
import darkrim.scene.Surface;
import darkrim.study.distance.FacetBoxes;
import java.util.List;

/** The facets of one side of a clearance. Immutable. */
final class Side {
    private final List<Surface> surfaces;
    private final int[] surfaceOf;
    private final double[] corners;
    private final double[] beyond;

    /**
     * @param parts the parts
     * @param surfaces the surfaces of the side, at least one
     */
    Side(ShapedParts parts, List<Surface> surfaces) {
        this.surfaces = List.copyOf(surfaces);
        int facets = surfaces.stream().mapToInt(Surface::facetCount).sum();
        surfaceOf = new int[facets];
        corners = new double[9 * facets];
        beyond = new double[facets];
        Scene scene = parts.scene();
        int at = 0;
        for (int s = 0; s < surfaces.size(); s++) {
            Surface surface = surfaces.get(s);
            for (int f = surface.firstFacet(); f < surface.firstFacet() + surface.facetCount(); f++) {
                for (int k = 0; k < 9; k++) {
                    corners[9 * at + k] = scene.corner(f, k / 3, k % 3);
                }
                beyond[at] = parts.beyondFacets(surface);
                surfaceOf[at++] = s;
            }
        }
    }

    FacetBoxes boxes() {
        return new FacetBoxes(corners, beyond);
    }

    Surface surface(int facet) {
        return surfaces.get(surfaceOf[facet]);
    }

    double beyond(int facet) {
        return beyond[facet];
    }
}
