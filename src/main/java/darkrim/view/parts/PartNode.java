package darkrim.view.parts;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * A node of the tree of parts and faces: a step of the paths of surfaces.
 *
 * @param step its own step of the path, such as {@code die[1,1]}; empty for the root
 * @param path the whole path
 * @param children nodes below, in the order of the scene
 * @param surfaces numbers of all surfaces at and below it
 */
public record PartNode(String step, String path, List<PartNode> children, List<Integer> surfaces) {
    /** Copies the lists. */
    public PartNode {
        children = List.copyOf(children);
        surfaces = List.copyOf(surfaces);
    }

    /**
     * The tree of some surfaces.
     *
     * @param names their names, by number
     * @return the root
     */
    public static PartNode of(List<String> names) {
        Growing root = new Growing("", "");
        for (int number = 0; number < names.size(); number++) {
            Growing at = root;
            at.surfaces.add(number);
            for (String step : names.get(number).split("/", -1)) {
                Growing parent = at;
                at = at.children.computeIfAbsent(
                        step, s -> new Growing(s, parent.path.isEmpty() ? s : parent.path + "/" + s));
                at.surfaces.add(number);
            }
        }
        return root.grown();
    }

    /** Whether it stands for one surface and nothing below. */
    public boolean isSurface() {
        return children.isEmpty();
    }

    private record Growing(String step, String path, Map<String, Growing> children, List<Integer> surfaces) {
        Growing(String step, String path) {
            this(step, path, new LinkedHashMap<>(), new ArrayList<>());
        }

        PartNode grown() {
            return new PartNode(
                    step, path, children.values().stream().map(Growing::grown).toList(), surfaces);
        }
    }
}
