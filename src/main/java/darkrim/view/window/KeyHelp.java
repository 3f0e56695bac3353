package darkrim.view.window;

import java.util.ArrayList;
import java.util.List;
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
        {"Right click", "look from here, hide, show only, copy the name"},
        {"Click on the map", "what is seen from there"},
        {"Arrow keys on the map", "read a cell; Space: ends of a profile; Enter: look from there"},
        {"Arrow keys on the picture of a point", "name what is seen; Enter selects it"},
        {"Space in the tree", "hide or show the line"},
        {"Ctrl+F, Ctrl+S, Ctrl+C", "search, save picture, copy values"},
        {"Ctrl+Z, Ctrl+Y", "take back the last change of the view, and again"},
    };

    private final Alert alert = new Alert(Alert.AlertType.INFORMATION);

    KeyHelp(Stage owner, Keys keys) {
        alert.initOwner(owner);
        alert.setTitle("Mouse and keys");
        alert.setHeaderText(null);
        alert.setGraphic(null);
        alert.getDialogPane().setMinWidth(880);
        GridPane grid = new GridPane();
        grid.setHgap(16);
        grid.setVgap(2);
        List<String[]> entries = new ArrayList<>(List.of(MOUSE));
        entries.addAll(keys.words());
        int half = (entries.size() + 1) / 2;
        for (int i = 0; i < entries.size(); i++) {
            // Two columns, so that it fits a small screen.
            int column = i < half ? 0 : 3;
            grid.add(new Label(entries.get(i)[0]), column, i % half);
            grid.add(new Label(entries.get(i)[1]), column + 1, i % half);
        }
        alert.getDialogPane().setContent(grid);
    }

    void show() {
        alert.show();
    }
}
