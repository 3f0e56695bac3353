package darkrim.layout.form;

import darkrim.diagnostic.Place;
import java.util.List;

/** Puts a node that does not stand in the file, a default, at a place of the file. */
final class Moved {
    private Moved() {}

    /** The node with the place everywhere. A mapping as default is always the empty one. */
    static Node to(Place place, Node node) {
        if (node instanceof Node.Items list) {
            return new Node.Items(
                    list.items().stream().map(item -> to(place, item)).toList(), place);
        }
        if (node instanceof Node.Scalar scalar) {
            return new Node.Scalar(scalar.text(), scalar.style(), place, -1);
        }
        return new Node.Mapping(List.of(), place);
    }
}
