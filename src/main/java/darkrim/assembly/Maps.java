package darkrim.assembly;

import darkrim.diagnostic.Findings;
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
        MapSpec spec = layout.maps().equals(MapSpec.UNREAD) ? MapSpec.DEFAULT : layout.maps();
        boolean stated = !spec.equals(MapSpec.DEFAULT);
        Set<String> selected = new HashSet<>(
                stated ? selector.select("maps", spec.surfaces(), spec.place()) : selector.matching(spec.surfaces()));
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
                    spec.place(),
                    "maps: " + others.get(0) + more
                            + " cannot have a map, since a map needs a surface that is one rectangle; expected a pattern that selects such surfaces only");
        }
        return maps;
    }
}
