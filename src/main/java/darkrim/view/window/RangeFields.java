package darkrim.view.window;

import darkrim.present.Figures;
import darkrim.present.picture.ColourScale;
import darkrim.view.look.ScaleChoice;
import darkrim.view.work.TypedRange;
import darkrim.view.work.ViewModel;
import java.util.Optional;
import javafx.geometry.Pos;
import javafx.scene.Node;
import javafx.scene.control.CheckBox;
import javafx.scene.control.Label;
import javafx.scene.control.TextField;
import javafx.scene.control.Tooltip;
import javafx.scene.layout.HBox;

/** The range of the scale: automatic, or two numbers by hand. */
final class RangeFields {
    private final Commands commands;
    private final ViewModel model;
    private final CheckBox automatic = new CheckBox("auto");
    private final TextField low = field("Value of the darkest colour");
    private final TextField high = field("Value of the lightest colour");
    private final HBox row = new HBox(4, automatic, low, new Label("to"), high);

    RangeFields(Commands commands, ViewModel model) {
        this.commands = commands;
        this.model = model;
        row.setAlignment(Pos.CENTER);
        automatic.setTooltip(new Tooltip("Let the scale hold all values"));
        automatic.setOnAction(event -> {
            if (automatic.isSelected()) {
                set(Optional.empty());
            } else {
                enter();
            }
        });
        for (TextField field : new TextField[] {low, high}) {
            field.setOnAction(event -> enter());
        }
    }

    Node node() {
        return row;
    }

    private static TextField field(String tip) {
        TextField field = new TextField();
        field.setPrefColumnCount(4);
        field.setTooltip(new Tooltip(tip + "; Enter applies"));
        return field;
    }

    private void enter() {
        Optional<ScaleChoice.Range> typed = TypedRange.of(
                low.getText(), high.getText(), model.look().scale().logarithmic());
        if (typed.isPresent()) {
            set(typed);
        }
        mark(typed.isEmpty());
    }

    /** Shows that what stands there is no range. */
    private void mark(boolean wrong) {
        for (TextField field : new TextField[] {low, high}) {
            field.getStyleClass().remove("wrong");
            if (wrong) {
                field.getStyleClass().add("wrong");
            }
        }
    }

    private void set(Optional<ScaleChoice.Range> range) {
        commands.scale(new ScaleChoice(model.look().scale().logarithmic(), range));
    }

    /** Shows the range that is used. */
    void follow() {
        automatic.setSelected(model.look().scale().range().isEmpty());
        if (!low.isFocused() && !high.isFocused()) {
            ColourScale scale = Scales.of(model);
            low.setText(Figures.limit(scale.least()));
            high.setText(Figures.limit(scale.most()));
            mark(false);
        }
    }
}
