package darkrim.view.window;

import darkrim.scene.Surface;
import darkrim.view.look.Look;
import darkrim.view.parts.NameSearch;
import darkrim.view.parts.PartNode;
import darkrim.view.parts.Stage;
import darkrim.view.work.ViewModel;
import java.util.Collection;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.TextField;
import javafx.scene.control.Tooltip;
import javafx.scene.control.TreeItem;
import javafx.scene.control.TreeView;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.VBox;

/** The tree of parts and faces, with search; shows, hides and selects. */
final class PartTreePane {
    private final ViewModel model;
    private final Commands commands;
    private final TextField search = new TextField();
    private final Label found = new Label();
    private final TreeView<PartNode> tree = new TreeView<>();
    private final VBox pane;
    private List<String> names = List.of();
    private List<Stage> shown = List.of();
    private boolean following;
    private Set<String> hidden = Set.of();

    PartTreePane(ViewModel model, Commands commands) {
        this.model = model;
        this.commands = commands;
        search.setId("search");
        search.setPromptText("words, or **/edge/*");
        search.setTooltip(new Tooltip("Words that occur in the name, or a pattern as in a layout (Ctrl+F)"));
        search.textProperty().addListener(changed -> fill());
        tree.setId("parts");
        tree.setShowRoot(false);
        tree.setCellFactory(view -> new PartCell(
                node -> model.look().shows(names.get(node.surfaces().get(0))) || anyShown(node), this::toggle));
        tree.getSelectionModel().selectedItemProperty().addListener(changed -> select());
        tree.addEventFilter(KeyEvent.KEY_PRESSED, this::press);
        Button hide = ToolStrip.button("Hide", "Hide what is selected here");
        hide.setOnAction(event -> commands.hide(chosen()));
        Button only = ToolStrip.button("Only", "Hide all else");
        only.setOnAction(event -> commands.isolate(chosen()));
        Button all = ToolStrip.button("Show all", "Show everything again (A)");
        all.setOnAction(event -> commands.showAll());
        VBox.setVgrow(tree, Priority.ALWAYS);
        pane = new VBox(6, search, found, tree, new HBox(6, hide, only, all));
        pane.getStyleClass().add("side");
        pane.setPrefWidth(250);
        pane.setMinWidth(180);
        model.onEitherContent(this::refill);
        model.onLook(this::follow);
    }

    Node node() {
        return pane;
    }

    /** Puts the cursor into the search field. */
    void search() {
        search.requestFocus();
        search.selectAll();
    }

    private boolean anyShown(PartNode node) {
        return node.surfaces().stream().anyMatch(number -> model.look().shows(names.get(number)));
    }

    private void toggle(PartNode node, boolean show) {
        if (show) {
            commands.show(names(node));
        } else {
            commands.hide(names(node));
        }
    }

    /** Space does what a click on the box of a line does. */
    private void press(KeyEvent event) {
        TreeItem<PartNode> item = tree.getSelectionModel().getSelectedItem();
        if (event.getCode() == KeyCode.SPACE && item != null) {
            toggle(item.getValue(), !anyShown(item.getValue()));
            event.consume();
        }
    }

    private Collection<String> names(PartNode node) {
        return node.surfaces().stream().map(names::get).toList();
    }

    /** What the buttons work on: the selected branch, or all that the search found. */
    private Collection<String> chosen() {
        TreeItem<PartNode> item = tree.getSelectionModel().getSelectedItem();
        TreeItem<PartNode> root = tree.getRoot();
        return item != null ? names(item.getValue()) : root == null ? List.of() : names(root.getValue());
    }

    private void refill() {
        List<Stage> stages = model.stages();
        if (!shown.equals(stages)) {
            shown = stages;
            names = stages.stream()
                    .flatMap(stage -> stage.scene().surfaces().stream().map(Surface::name))
                    .distinct()
                    .toList();
            fill();
        }
    }

    private void fill() {
        Set<Integer> meant = new HashSet<>(NameSearch.find(search.getText(), names));
        boolean searching = !search.getText().isBlank();
        following = true;
        tree.setRoot(item(PartNode.of(names), meant, searching, 0).orElseGet(TreeItem::new));
        following = false;
        String count = meant.size() + (meant.size() == 1 ? " face" : " faces");
        found.setText(searching ? count + " found" : count);
        follow();
    }

    /** A branch with those of its faces that are meant. */
    private static Optional<TreeItem<PartNode>> item(PartNode node, Set<Integer> meant, boolean open, int depth) {
        List<Integer> kept = node.surfaces().stream().filter(meant::contains).toList();
        if (kept.isEmpty()) {
            return Optional.empty();
        }
        TreeItem<PartNode> item = new TreeItem<>(new PartNode(node.step(), node.path(), node.children(), kept));
        node.children()
                .forEach(child -> item(child, meant, open, depth + 1)
                        .ifPresent(below -> item.getChildren().add(below)));
        item.setExpanded(depth == 0 || (open && meant.size() <= 60));
        return Optional.of(item);
    }

    private void select() {
        TreeItem<PartNode> item = tree.getSelectionModel().getSelectedItem();
        if (!following
                && item != null
                && item.getValue() != null
                && item.getValue().isSurface()) {
            commands.select(item.getValue().path());
        }
    }

    private void follow() {
        Look look = model.look();
        if (!look.hidden().equals(hidden)) {
            hidden = look.hidden();
            tree.refresh();
        }
        TreeItem<PartNode> item = tree.getSelectionModel().getSelectedItem();
        String chosen =
                item == null || item.getValue() == null ? "" : item.getValue().path();
        if (look.selected().isPresent() && !look.selected().get().equals(chosen) && tree.getRoot() != null) {
            following = true;
            find(tree.getRoot(), look.selected().get()).ifPresent(there -> {
                for (TreeItem<PartNode> up = there.getParent(); up != null; up = up.getParent()) {
                    up.setExpanded(true);
                }
                tree.getSelectionModel().select(there);
                tree.scrollTo(Math.max(0, tree.getRow(there) - 3));
            });
            following = false;
        }
    }

    private static Optional<TreeItem<PartNode>> find(TreeItem<PartNode> from, String path) {
        if (from.getValue() != null && from.isLeaf() && from.getValue().path().equals(path)) {
            return Optional.of(from);
        }
        return from.getChildren().stream()
                .flatMap(child -> find(child, path).stream())
                .findFirst();
    }
}
