package darkrim.view.window;

import darkrim.view.parts.PartNode;
import java.util.function.BiConsumer;
import java.util.function.Predicate;
import javafx.scene.control.CheckBox;
import javafx.scene.control.Tooltip;
import javafx.scene.control.TreeCell;

/** A line of the tree: a box that shows and hides, and the step of the path. */
final class PartCell extends TreeCell<PartNode> {
    private final CheckBox box = new CheckBox();
    private final Predicate<PartNode> shown;

    /**
     * @param shown whether any of a branch is shown
     * @param toggle shows or hides a branch
     */
    PartCell(Predicate<PartNode> shown, BiConsumer<PartNode, Boolean> toggle) {
        this.shown = shown;
        box.setFocusTraversable(false);
        box.setOnAction(event -> toggle.accept(getItem(), box.isSelected()));
    }

    @Override
    protected void updateItem(PartNode node, boolean empty) {
        super.updateItem(node, empty);
        if (empty || node == null) {
            setText(null);
            setGraphic(null);
            setTooltip(null);
        } else {
            setText(
                    node.isSurface()
                            ? node.step()
                            : node.step() + "  (" + node.surfaces().size() + ")");
            box.setSelected(shown.test(node));
            setGraphic(box);
            setTooltip(new Tooltip(node.path()));
        }
    }
}
