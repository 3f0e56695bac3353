package darkrim.view.window;

import javafx.scene.Node;
import javafx.scene.control.ScrollPane;
import javafx.scene.control.Tab;
import javafx.scene.control.TabPane;
import javafx.scene.control.Tooltip;

/** The pages at the right: what is known of a face, the dimensions, maps, and what a point sees. */
final class RightSide {
    private final TabPane tabs = new TabPane();

    RightSide(DetailPane details, DimensionPane dimensions, MapPane map, SeenPane seen) {
        tabs.setId("pages");
        tabs.setTabClosingPolicy(TabPane.TabClosingPolicy.UNAVAILABLE);
        add("Findings", details.node());
        add("Dimensions", scrolled(dimensions.node()));
        add("Map", scrolled(map.node()));
        Tab last = add("Seen from", scrolled(seen.node()));
        seen.onAsked(() -> tabs.getSelectionModel().select(last));
        tabs.setPrefWidth(310);
        tabs.setMinWidth(220);
    }

    private Tab add(String title, Node content) {
        Tab tab = new Tab(title, content);
        tabs.getTabs().add(tab);
        return tab;
    }

    /** Puts a page of both layouts before all others, which are of the first alone. */
    void both(Node content) {
        for (Tab tab : tabs.getTabs()) {
            tab.setTooltip(new Tooltip(tab.getText() + " of the layout before"));
        }
        tabs.getTabs().get(0).setText("Before");
        tabs.getTabs().add(0, new Tab("Both", scrolled(content)));
        tabs.getSelectionModel().select(0);
    }

    private static ScrollPane scrolled(Node content) {
        ScrollPane pane = new ScrollPane(content);
        pane.setFitToWidth(true);
        pane.setHbarPolicy(ScrollPane.ScrollBarPolicy.NEVER);
        return pane;
    }

    Node node() {
        return tabs;
    }
}
