package darkrim.view.window;

import darkrim.view.camera.Direction;
import darkrim.view.look.Light;
import darkrim.view.look.Look;
import darkrim.view.look.ScaleChoice;
import darkrim.view.parts.Section;
import darkrim.view.work.ViewModel;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import javafx.geometry.Orientation;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.CheckBox;
import javafx.scene.control.ComboBox;
import javafx.scene.control.Label;
import javafx.scene.control.MenuButton;
import javafx.scene.control.Separator;
import javafx.scene.control.SeparatorMenuItem;
import javafx.scene.control.ToggleButton;
import javafx.scene.control.ToolBar;
import javafx.scene.control.Tooltip;
import javafx.scene.layout.HBox;

/** The row of buttons above the view. It follows the look, whoever changes it. */
final class ToolStrip {
    private static final String BEAM = "of the beam";
    private static final String[] SECTIONS = {"whole parts", "cut at x", "cut at y", "cut at z"};

    private final ViewModel model;
    private final Commands commands;
    private final Map<Light, ToggleButton> lights = new EnumMap<>(Light.class);
    private final ComboBox<String> source = new ComboBox<>();
    private final ComboBox<String> spacing = new ComboBox<>();
    private final ComboBox<String> section = new ComboBox<>();
    private final ToggleButton ruler = new ToggleButton("Ruler");
    private final CheckBox marks = new CheckBox("Verdicts");
    private final CheckBox cells = new CheckBox("Cells");
    private final Button undo = button("Undo", "Take back the last change of the view (Ctrl+Z)");
    private final Button redo = button("Redo", "Do it again (Ctrl+Y)");
    private final RangeFields range;
    private final ToolBar bar = new ToolBar();
    private boolean following;

    ToolStrip(ViewModel model, Commands commands, Runnable savePicture) {
        this.model = model;
        this.commands = commands;
        range = new RangeFields(commands, model);
        bar.setId("tools");
        Button save = button("Save...", "Save what is seen as a PNG file (Ctrl+S)");
        save.setId("save");
        save.setOnAction(event -> savePicture.run());
        undo.setOnAction(event -> model.undo());
        redo.setOnAction(event -> model.redo());
        marks.setId("verdict-marks");
        marks.setOnAction(event -> commands.marks());
        cells.setOnAction(event -> commands.cells());
        cells.setTooltip(new Tooltip("Colour detectors and the selected face cell by cell (C)"));
        marks.setTooltip(new Tooltip("Outline and letter judged faces: P pass, F fail, U undecided (V)"));
        ruler.setId("ruler");
        ruler.setTooltip(new Tooltip("Click two points to measure between them; corners are caught (M)"));
        ruler.setOnAction(event -> commands.measure(ruler.isSelected()));
        bar.getItems().addAll(viewMenu(), lightChoice(), source, spacing, range.node(), separator(), section);
        bar.getItems().addAll(ruler, marks, cells, undo, redo, save);
        choices();
        model.onLook(this::follow);
        model.onEitherContent(this::follow);
        commands.onMeasuring(() -> ruler.setSelected(commands.measuring()));
        follow();
    }

    Node node() {
        return bar;
    }

    private MenuButton viewMenu() {
        MenuButton menu = new MenuButton("View");
        menu.setId("view-menu");
        menu.setTooltip(new Tooltip("Directions, projection and what is shown"));
        menu.getItems()
                .addAll(
                        Commands.item("Fit what is shown   (F)", commands.camera()::fit),
                        Commands.item("Fit the selected face   (G)", commands.camera()::fitSelection),
                        Commands.item("First direction   (Home)", commands.camera()::home),
                        new SeparatorMenuItem());
        for (Direction direction : Direction.values()) {
            menu.getItems()
                    .add(Commands.item(
                            direction.words() + "   (" + direction.number() + ")",
                            () -> commands.camera().look(direction)));
        }
        menu.getItems()
                .addAll(
                        new SeparatorMenuItem(),
                        Commands.item("Perspective or parallel   (P)", commands.camera()::projection),
                        Commands.item("Show everything   (A)", commands::showAll));
        return menu;
    }

    private HBox lightChoice() {
        HBox row = new HBox();
        for (Light light : Light.values()) {
            ToggleButton button = new ToggleButton(light.title());
            button.setId("light-" + light.name().toLowerCase(Locale.ROOT));
            button.setTooltip(new Tooltip("Show " + light.words() + " (" + light.key() + ")"));
            button.setOnAction(event -> {
                commands.light(light);
                follow();
            });
            lights.put(light, button);
            row.getChildren().add(button);
        }
        return row;
    }

    private void choices() {
        source.setId("source");
        source.setMaxWidth(128);
        source.setTooltip(new Tooltip("Whose light: of the beam, or of a source of the layout beside it (W)"));
        source.setOnAction(event -> {
            int chosen = source.getSelectionModel().getSelectedIndex();
            if (!following && chosen >= 0) {
                commands.source(
                        chosen == 0
                                ? Optional.empty()
                                : Optional.of(model.sources().get(chosen - 1)));
            }
        });
        spacing.getItems().addAll("logarithmic", "linear");
        spacing.setTooltip(new Tooltip("How values become colours (L)"));
        spacing.setOnAction(event -> {
            if (!following) {
                commands.scale(new ScaleChoice(
                        spacing.getSelectionModel().getSelectedIndex() == 0,
                        model.look().scale().range()));
            }
        });
        section.setId("section");
        section.getItems().addAll(SECTIONS);
        section.setTooltip(new Tooltip("Cut the parts open (X, Y, Z); drag the round handle to move the plane"));
        section.setOnAction(event -> {
            int chosen = section.getSelectionModel().getSelectedIndex();
            if (!following && chosen >= 0) {
                commands.section(chosen == 0 ? Optional.empty() : Optional.of(chosen - 1));
            }
        });
    }

    private void follow() {
        following = true;
        Look look = model.look();
        lights.forEach((light, button) -> button.setSelected(light == look.light()));
        List<String> names = model.sources();
        List<String> items = Stream.concat(Stream.of(BEAM), names.stream().map(name -> "of " + name))
                .toList();
        if (!items.equals(source.getItems())) {
            source.getItems().setAll(items);
        }
        source.getSelectionModel().select(look.source().map(names::indexOf).orElse(-1) + 1);
        source.setVisible(!names.isEmpty());
        source.setManaged(!names.isEmpty());
        spacing.getSelectionModel().select(look.scale().logarithmic() ? 0 : 1);
        section.getSelectionModel().select(look.section().map(Section::axis).orElse(-1) + 1);
        marks.setSelected(look.marksVerdicts());
        marks.setDisable(look.source().isPresent());
        cells.setSelected(look.cells());
        undo.setDisable(!model.canUndo());
        redo.setDisable(!model.canRedo());
        range.follow();
        following = false;
    }

    static Button button(String text, String tip) {
        Button button = new Button(text);
        button.setTooltip(new Tooltip(tip));
        return button;
    }

    private static Separator separator() {
        return new Separator(Orientation.VERTICAL);
    }

    static Label label(String text) {
        Label label = new Label(text);
        label.setWrapText(true);
        return label;
    }
}
