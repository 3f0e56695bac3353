package darkrim.layout;

import darkrim.diagnostic.Findings;
import darkrim.layout.form.Node;
import darkrim.layout.form.Unit;
import darkrim.layout.form.YamlText;
import java.util.Optional;

/**
 * The units that bare numbers of a layout file are in.
 *
 * @param length unit of lengths
 * @param angle unit of angles
 */
public record FileUnits(Unit length, Unit angle) {
    /**
     * Reads them from a file that is known to be sound; what it does not say is mm and degrees.
     *
     * @param file name of the file
     * @param content its bytes, UTF-8
     */
    public static FileUnits of(String file, byte[] content) {
        Optional<Node> units = YamlText.parse(file, content, new Findings()).flatMap(root -> find(root, "units"));
        return new FileUnits(
                units.flatMap(node -> unit(node, "length")).orElse(Unit.MM),
                units.flatMap(node -> unit(node, "angle")).orElse(Unit.DEG));
    }

    private static Optional<Unit> unit(Node units, String key) {
        return find(units, key)
                .filter(Node.Scalar.class::isInstance)
                .flatMap(node -> Unit.of(((Node.Scalar) node).text()));
    }

    private static Optional<Node> find(Node node, String key) {
        return node instanceof Node.Mapping mapping ? mapping.find(key) : Optional.empty();
    }
}
