package darkrim.assembly;

import darkrim.diagnostic.Findings;
import darkrim.diagnostic.Place;
import darkrim.layout.Layout;
import darkrim.layout.MapSpec;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** Gives cells to the rectangular surfaces for which the layout asks for maps. Both sides of a sheet share their cells. */
final class Maps {
    private Maps() {}

    static Map<String, MapGrid> of(Layout layout, List<Face> faces, SurfaceSelector selector, Findings findings) {
        MapSpec spec = layout.maps();
        boolean stated = !spec.equals(MapSpec.DEFAULT);
        // A map has no place of its own in the layout: the file must do.
        Place place = new Place(layout.source().name(), 0, 0);
        Set<String> selected = new HashSet<>(
                stated ? selector.select("maps", spec.surfaces(), place) : selector.matching(spec.surfaces()));
        Map<String, MapGrid> maps = new LinkedHashMap<>();
        List<String> others = new ArrayList<>();
        for (Face face : faces) {
            if (face.surfaces().stream().noneMatch(selected::contains)) {
                continue;
            }
            Optional<MapGrid> grid = MapGrid.on(face, spec.columns(), spec.rows());
            grid.ifPresentOrElse(
                    cells -> face.surfaces().forEach(name -> maps.put(name, cells)), () -> others.add(face.name()));
        }
        if (stated && !others.isEmpty()) {
            String more = others.size() == 1 ? "" : " and " + (others.size() - 1) + " more";
            findings.warning(
                    "map-not-rectangular",
                    place,
                    "maps: " + others.get(0) + more
                            + " cannot have a map, since a map needs a surface that is one rectangle");
        }
        return maps;
    }
}
