package darkrim.view.window;

import javafx.scene.control.Alert;
import javafx.scene.control.Label;
import javafx.scene.layout.GridPane;
import javafx.stage.Stage;

/** The list of keys and of what the mouse does. */
final class KeyHelp {
    private static final String[][] MOUSE = {
        {"Drag", "turn about what is under the mouse"},
        {"Right button or Shift + drag", "move the picture"},
        {"Wheel", "nearer or farther, at the mouse"},
        {"Click, double click", "select a face, and fit it"},
        {"Right click", "hide, show only, copy the name"},
        {"Ctrl+F, Ctrl+S, Ctrl+C", "search, save picture, copy values"},
        {"Ctrl+Z, Ctrl+Y", "take back the last change of the view, and again"},
    };

    private final Alert alert = new Alert(Alert.AlertType.INFORMATION);

    KeyHelp(Stage owner, Keys keys) {
        alert.initOwner(owner);
        alert.setTitle("Mouse and keys");
        alert.setHeaderText("Mouse and keys");
        GridPane grid = new GridPane();
        grid.setHgap(16);
        grid.setVgap(2);
        for (String[] entry : MOUSE) {
            grid.addRow(grid.getRowCount(), new Label(entry[0]), new Label(entry[1]));
        }
        for (String[] entry : keys.words()) {
            grid.addRow(grid.getRowCount(), new Label(entry[0]), new Label(entry[1]));
        }
        alert.getDialogPane().setContent(grid);
    }

    void show() {
        alert.show();
    }
}
