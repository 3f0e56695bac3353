package darkrim.view.window;

import darkrim.layout.Dimension;
import darkrim.layout.DimensionEdit;
import darkrim.layout.Quantity;
import darkrim.present.Figures;
import darkrim.view.parts.Stage;
import darkrim.view.work.Dragging;
import darkrim.view.work.Facts;
import darkrim.view.work.Loader;
import darkrim.view.work.TypedValue;
import darkrim.view.work.ViewModel;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.CheckBox;
import javafx.scene.control.Label;
import javafx.scene.control.Slider;
import javafx.scene.control.TextField;
import javafx.scene.control.Tooltip;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.VBox;

/** Sliders for the named dimensions: the light follows while one is dragged, and its value can be written into the layout file. */
final class DimensionPane {
    /** A slider reaches this share of the value to either side, at least. */
    private static final double REACH = 0.25;

    private static final double LEAST_REACH_MM = 2;
    private static final double LEAST_REACH_DEG = 10;
    /** A number with or without a unit. */
    private static final Pattern PLAIN = Pattern.compile("[-+]?[0-9.]+([eE][-+]?[0-9]+)?\\s*[a-z]*");

    private final ViewModel model;
    private final Dragging dragging;
    private final Loader loader;
    private final VBox sliders = new VBox(4);
    private final Label verdict = new Label();
    private final Button write =
            ToolStrip.button("Write into the layout file", "Change the values in the file; all else in it stays");
    private final Button reset =
            ToolStrip.button("As the file has them", "Take all dimensions back to what the file says");
    private final CheckBox formulas = new CheckBox("replace formulas by numbers");
    private final VBox box = new VBox(8);
    private final Map<String, Slider> sliderOf = new HashMap<>();
    private final Map<String, TextField> fieldOf = new HashMap<>();
    private final VerdictList verdicts = new VerdictList();
    private Map<String, Dimension> written = Map.of();
    private boolean following;

    DimensionPane(ViewModel model, Dragging dragging, Loader loader, WriteBackAction writeBack) {
        this.model = model;
        this.dragging = dragging;
        this.loader = loader;
        box.getStyleClass().add("side");
        box.setId("dimensions");
        verdict.setWrapText(true);
        verdict.getStyleClass().add("note");
        write.setId("write-back");
        write.setOnAction(event ->
                writeBack.run(formulas.isSelected() ? DimensionEdit.Formulas.REPLACE : DimensionEdit.Formulas.REFUSE));
        reset.setId("reset-dimensions");
        reset.setOnAction(event -> reset());
        // Its words last, as they come in one line or in four: what is dragged must stay under the hand.
        box.getChildren().addAll(verdicts.node(), sliders, write, formulas, reset, verdict);
        model.onContent(this::follow);
    }

    Node node() {
        return box;
    }

    private void follow() {
        Optional<Stage> stage = model.content().stage();
        if (stage.isEmpty()) {
            return;
        }
        boolean moved = dragging.isMoved();
        write.setDisable(!moved);
        reset.setDisable(!moved);
        if (!moved && !stage.get().layout().dimensions().equals(written)) {
            written = stage.get().layout().dimensions();
            fill();
        }
        if (moved) {
            followOthers(stage.get());
        }
        verdicts.show(model.content().facts());
        verdict.setText(
                written.isEmpty()
                        ? "This layout names no dimensions; put some under 'dimensions' to drag them."
                        : moved
                                ? model.content().facts().map(Facts::words).orElse("")
                                : "Drag a dimension: verdicts and margins follow at once, reflected light a little later.");
    }

    /** What is reckoned from a dragged dimension moves with it. */
    private void followOthers(Stage stage) {
        Set<String> chosen = dragging.live().map(live -> live.chosen().keySet()).orElse(Set.of());
        following = true;
        stage.layout().dimensions().values().forEach(dimension -> {
            Slider slider = sliderOf.get(dimension.name());
            if (slider != null && !chosen.contains(dimension.name())) {
                slider.setValue(dimension.value());
                fieldOf.get(dimension.name()).setText(Figures.limit(dimension.value()));
            }
        });
        following = false;
    }

    private void fill() {
        sliders.getChildren().clear();
        sliderOf.clear();
        fieldOf.clear();
        boolean any = written.values().stream().anyMatch(DimensionPane::isFormula);
        formulas.setVisible(any);
        formulas.setManaged(any);
        written.values().forEach(dimension -> sliders.getChildren().add(line(dimension)));
    }

    private Node line(Dimension dimension) {
        String unit = dimension.kind() == Quantity.LENGTH ? " mm" : dimension.kind() == Quantity.ANGLE ? " deg" : "";
        double least = dimension.kind() == Quantity.LENGTH
                ? LEAST_REACH_MM
                : dimension.kind() == Quantity.ANGLE ? LEAST_REACH_DEG : 0.1;
        double reach = Math.max(REACH * Math.abs(dimension.value()), least);
        Slider slider = new Slider(dimension.value() - reach, dimension.value() + reach, dimension.value());
        slider.setId("slider-" + dimension.name());
        slider.setBlockIncrement(reach / 50);
        TextField field = new TextField(Figures.limit(dimension.value()));
        field.setPrefColumnCount(6);
        field.setTooltip(new Tooltip("A value" + (unit.isEmpty() ? "" : " in" + unit) + "; Enter applies"));
        slider.valueProperty().addListener(changed -> {
            if (!following) {
                double value = rounded(slider.getValue(), reach);
                field.setText(Figures.limit(value));
                move(dimension.name(), value);
            }
        });
        Label wrong = ToolStrip.label("");
        wrong.getStyleClass().add("warning");
        wrong.setVisible(false);
        wrong.setManaged(false);
        field.setOnAction(event -> typed(dimension, slider, field, wrong));
        Label name = new Label(dimension.name());
        name.getStyleClass().add("strong");
        name.setMaxWidth(Double.MAX_VALUE);
        HBox.setHgrow(name, Priority.ALWAYS);
        HBox row = new HBox(6, name, field, new Label(unit.strip()));
        VBox entry = new VBox(2, row, slider, wrong);
        if (isFormula(dimension)) {
            Label formula = ToolStrip.label("in the file: " + dimension.text());
            formula.getStyleClass().add("note");
            entry.getChildren().add(formula);
        }
        entry.getStyleClass().add("entry");
        sliderOf.put(dimension.name(), slider);
        fieldOf.put(dimension.name(), field);
        return entry;
    }

    private static boolean isFormula(Dimension dimension) {
        return !PLAIN.matcher(dimension.text().strip()).matches();
    }

    /** To a step that is round and fine enough for the slider. */
    private static double rounded(double value, double reach) {
        double step = StrictMath.pow(10, Math.floor(StrictMath.log10(reach / 100)));
        return Math.round(value / step) * step;
    }

    private void typed(Dimension dimension, Slider slider, TextField field, Label wrong) {
        Optional<Double> typed = TypedValue.of(field.getText(), dimension.kind());
        field.getStyleClass().remove("wrong");
        typed.ifPresentOrElse(
                value -> {
                    wrong.setText("");
                    following = true;
                    slider.setMin(Math.min(slider.getMin(), value));
                    slider.setMax(Math.max(slider.getMax(), value));
                    slider.setValue(value);
                    following = false;
                    move(dimension.name(), value);
                },
                () -> {
                    field.getStyleClass().add("wrong");
                    wrong.setText("expected " + TypedValue.expected(dimension.kind()) + "; nothing was changed");
                });
        wrong.setVisible(!wrong.getText().isEmpty());
        wrong.setManaged(wrong.isVisible());
    }

    private void move(String name, double value) {
        loader.stop();
        dragging.move(name, value);
    }

    private void reset() {
        dragging.reset();
        written = Map.of();
        loader.load(Optional.empty());
    }
}
