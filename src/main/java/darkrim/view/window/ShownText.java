package darkrim.view.window;

import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.Labeled;
import javafx.scene.layout.GridPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Pane;

/** The text of what a pane shows, to be copied: a line for each label, what stands side by side with tabs between. Buttons are left out. */
final class ShownText {
    private ShownText() {}

    /** The text of a node and all in it. */
    static String of(Node node) {
        StringBuilder text = new StringBuilder();
        gather(node, text);
        return text.toString();
    }

    private static void gather(Node node, StringBuilder text) {
        if (node instanceof Button) {
            return;
        }
        if (node instanceof GridPane grid) {
            for (int i = 0; i + 1 < grid.getChildren().size(); i += 2) {
                text.append(((Label) grid.getChildren().get(i)).getText())
                        .append('\t')
                        .append(((Label) grid.getChildren().get(i + 1)).getText())
                        .append('\n');
            }
        } else if (node instanceof Labeled labeled) {
            text.append(labeled.getText()).append('\n');
        } else if (node instanceof HBox row && row.getChildren().stream().allMatch(child -> child instanceof Label)) {
            row.getChildren()
                    .forEach(child -> text.append(((Label) child).getText()).append('\t'));
            text.setCharAt(text.length() - 1, '\n');
        } else if (node instanceof Pane pane) {
            pane.getChildren().forEach(child -> gather(child, text));
        }
    }
}
