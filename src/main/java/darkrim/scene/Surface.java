package darkrim.scene;

import darkrim.diagnostic.Place;
import java.util.Optional;

/**
 * A named face of a part: a run of facets seen from one side.
 *
 * @param index number in the scene, from 0
 * @param name path such as {@code lid/opening[1,2]/land/-y}
 * @param finish how it reflects
 * @param firstFacet the first of its facets
 * @param facetCount how many facets it has, one after the other
 * @param back whether it is the back of its facets (sheets have two sides); otherwise the side of the facets' normal
 * @param area area, mm2
 * @param grid cells for a map, where the surface is one rectangle and a map is asked for
 * @param place where its part stands in the layout file
 */
public record Surface(
        int index,
        String name,
        Finish finish,
        int firstFacet,
        int facetCount,
        boolean back,
        double area,
        Optional<CellGrid> grid,
        Place place) {
    /** The same with another area, mm2. */
    Surface withArea(double newArea) {
        return new Surface(index, name, finish, firstFacet, facetCount, back, newArea, grid, place);
    }
}
