package darkrim.view.window;

import darkrim.view.look.Light;
import darkrim.view.work.Content;
import darkrim.view.work.FacePair;
import darkrim.view.work.Reading;
import darkrim.view.work.RequirementPair;
import darkrim.view.work.ViewModel;
import java.util.List;
import java.util.Optional;
import javafx.scene.Node;
import javafx.scene.control.Label;
import javafx.scene.layout.GridPane;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;

/** What two layouts say side by side: the requirements with both verdicts, and the selected face with both values. */
final class BothPane {
    private final ViewModel first;
    private final ViewModel second;
    private final VBox box = new VBox(8);
    private List<Object> shown = List.of();

    BothPane(ViewModel first, ViewModel second) {
        this.first = first;
        this.second = second;
        box.getStyleClass().add("side");
        box.setId("both");
        first.onEitherContent(this::follow);
        first.onLook(this::follow);
        follow();
    }

    Node node() {
        return box;
    }

    private void follow() {
        Content before = first.content();
        Content after = second.content();
        Optional<String> selected = first.look().selected();
        Optional<String> source = first.look().source();
        List<Object> now = List.of(
                before.stage(),
                before.facts(),
                before.sources(),
                after.stage(),
                after.facts(),
                after.sources(),
                source,
                selected);
        if (now.equals(shown)) {
            return;
        }
        shown = now;
        box.getChildren().clear();
        selected.ifPresent(name -> face(name, before, after, source));
        box.getChildren().add(heading("Requirements"));
        List<RequirementPair> pairs = RequirementPair.of(before, after);
        if (pairs.isEmpty()) {
            box.getChildren().add(ToolStrip.label("They follow when both layouts can be read."));
        }
        pairs.forEach(this::requirement);
    }

    private void requirement(RequirementPair pair) {
        Label name = ToolStrip.label(pair.name());
        name.getStyleClass().add("strong");
        GridPane grid = grid();
        side(grid, "before", pair.before());
        side(grid, "after", pair.after());
        VBox entry = new VBox(2, name, grid);
        entry.getStyleClass().add("entry");
        if (!pair.alike()) {
            entry.getChildren().add(warning("asks for something else: the verdicts cannot be compared"));
        } else if (pair.before().asked() != pair.after().asked()) {
            entry.getChildren().add(warning(pair.after().asked() ? "new" : "no longer asked"));
        } else if (pair.isChanged()) {
            entry.getChildren().add(warning("the verdict changed"));
        }
        box.getChildren().add(entry);
    }

    private static void side(GridPane grid, String side, RequirementPair.Standing standing) {
        int row = grid.getRowCount();
        grid.add(note(side), 0, row);
        if (standing.verdict().isEmpty()) {
            // Over both columns: words as wide as these would move the values of the other side.
            Label none = new Label(standing.asked() ? "no verdict yet" : "not asked");
            none.setMinWidth(Region.USE_PREF_SIZE);
            grid.add(none, 1, row, 2, 1);
            return;
        }
        Label badge = VerdictBadge.of(standing.verdict().get());
        badge.setMinWidth(Region.USE_PREF_SIZE);
        String margin = standing.margin().isEmpty() ? "" : ", margin " + standing.margin();
        grid.add(badge, 1, row);
        grid.add(ToolStrip.label(standing.value() + margin), 2, row);
    }

    private void face(String name, Content before, Content after, Optional<String> source) {
        box.getChildren().add(heading(name));
        FacePair pair = new FacePair(name, before, after, source);
        pair.absence().ifPresent(words -> box.getChildren().add(warning(words)));
        GridPane grid = grid();
        for (Light light : Light.classes()) {
            Label title = ToolStrip.label(
                    light.words() + source.map(of -> ", of " + of).orElse(""));
            title.getStyleClass().add("strong");
            grid.add(title, 0, grid.getRowCount(), 2, 1);
            grid.addRow(grid.getRowCount(), note("before"), ToolStrip.label(words(pair.before(light), before, source)));
            grid.addRow(grid.getRowCount(), note("after"), ToolStrip.label(words(pair.after(light), after, source)));
            grid.addRow(
                    grid.getRowCount(),
                    note("change"),
                    ToolStrip.label(pair.change(light).words()));
        }
        box.getChildren().addAll(grid, styled("relative irradiance, mean over the face, +- standard error", "note"));
    }

    private static String words(Reading reading, Content content, Optional<String> source) {
        return content.lighting(source).map(lighting -> lighting.words(reading)).orElseGet(reading::words);
    }

    private static GridPane grid() {
        GridPane grid = new GridPane();
        grid.setHgap(8);
        grid.setVgap(2);
        return grid;
    }

    private static Label heading(String text) {
        return styled(text, "heading");
    }

    private static Label warning(String text) {
        return styled(text, "changed");
    }

    private static Label note(String text) {
        Label label = styled(text, "note");
        label.setMinWidth(Region.USE_PREF_SIZE);
        return label;
    }

    private static Label styled(String text, String style) {
        Label label = ToolStrip.label(text);
        label.getStyleClass().add(style);
        return label;
    }
}
