package darkrim.view.window;

import darkrim.view.work.ViewModel;
import java.util.List;
import java.util.Locale;
import javafx.scene.Node;
import javafx.scene.control.Label;
import javafx.scene.control.Tab;
import javafx.scene.control.TabPane;
import javafx.scene.control.ToggleButton;
import javafx.scene.control.Tooltip;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.VBox;

/** The pages at the right. Of two layouts they are those of one, which a switch over them chooses; a click on a face of the other does, too. */
final class RightSide {
    private static final String[] SIDES = {"Before", "After"};

    private final Commands commands;
    private final TabPane tabs = new TabPane();
    private final VBox box = new VBox(tabs);
    private final ToggleButton[] sides = {new ToggleButton(SIDES[0]), new ToggleButton(SIDES[1])};
    private final List<Pages> pages;
    private int shown;

    /**
     * @param commands asks for what a point sees, and says of which layout
     * @param pages the pages of one layout, or of two
     */
    RightSide(Commands commands, List<Pages> pages) {
        this.commands = commands;
        this.pages = List.copyOf(pages);
        tabs.setId("pages");
        tabs.setTabClosingPolicy(TabPane.TabClosingPolicy.UNAVAILABLE);
        for (int i = 0; i < Pages.TITLES.length; i++) {
            tabs.getTabs().add(new Tab(Pages.TITLES[i], pages.get(0).node(i)));
        }
        commands.onLookFrom(
                point -> {
                    seenPage();
                    current().seen().look(point);
                },
                () -> {
                    seenPage();
                    current().seen().ask();
                });
        VBox.setVgrow(tabs, Priority.ALWAYS);
        tabs.setPrefWidth(310);
        box.setMinWidth(220);
    }

    /** Puts a page of both layouts before all others, and the switch over them. */
    void both(Node content) {
        tabs.getTabs().add(0, new Tab("Both", Pages.scrolled(content)));
        tabs.getSelectionModel().select(0);
        HBox row = new HBox(new Label("Pages of"));
        row.getStyleClass().add("side-switch");
        for (int i = 0; i < sides.length; i++) {
            int side = i;
            sides[i].setId("pages-" + SIDES[i].toLowerCase(Locale.ROOT));
            sides[i].setTooltip(new Tooltip("Let all pages but Both speak of the layout "
                    + SIDES[i].toLowerCase(Locale.ROOT) + " (O changes)"));
            sides[i].setOnAction(event -> speakOf(side));
            row.getChildren().add(sides[i]);
        }
        box.getChildren().add(0, row);
        commands.onSpeaking(() -> {
            int side = pages.get(1).model() == commands.speaking() ? 1 : 0;
            if (side != shown) {
                show(side);
            }
        });
        show(0);
    }

    /** Lets the pages speak of the other layout, if there is one. */
    void other() {
        if (pages.size() > 1) {
            speakOf(1 - shown);
        }
    }

    private void speakOf(int side) {
        show(side);
        commands.speakOf(pages.get(side).model());
    }

    private void show(int side) {
        shown = side;
        for (int i = 0; i < sides.length; i++) {
            sides[i].setSelected(i == side);
        }
        for (int i = 0; i < Pages.TITLES.length; i++) {
            tabs.getTabs().get(i + 1).setContent(pages.get(side).node(i));
        }
    }

    /** The pages that are shown. */
    Pages current() {
        return pages.get(shown);
    }

    /** What is shown of the layout that the pages speak of. */
    ViewModel model() {
        return current().model();
    }

    private void seenPage() {
        tabs.getSelectionModel().select(tabs.getTabs().size() - Pages.TITLES.length + Pages.SEEN);
    }

    /** Brings a page to the front, by its number from 0, and the keys to it. */
    void page(int number) {
        if (number < tabs.getTabs().size()) {
            tabs.getSelectionModel().select(number);
            tabs.requestFocus();
        }
    }

    Node node() {
        return box;
    }
}
