package darkrim.view.window;

import darkrim.study.Effort;
import darkrim.view.work.Dragging;
import darkrim.view.work.Loader;
import darkrim.view.work.ViewModel;
import javafx.scene.Node;
import javafx.scene.control.ScrollPane;

/** The pages of one layout: what is known of a face, the dimensions, maps, and what a point sees. */
final class Pages implements AutoCloseable {
    /** What stands over each page. */
    static final String[] TITLES = {"Findings", "Dimensions", "Map", "Seen from"};

    /** Number of the page of what a point sees. */
    static final int SEEN = 3;

    private final ViewModel model;
    private final DetailPane details;
    private final SeenPane seen;
    private final Node[] nodes;

    /**
     * @param model what is shown of the layout
     * @param commands what can be done
     * @param dragging follows its dimensions
     * @param loader reads it
     * @param writeBack writes its dimensions into its file
     * @param effort how hard to work
     */
    Pages(
            ViewModel model,
            Commands commands,
            Dragging dragging,
            Loader loader,
            WriteBackAction writeBack,
            Effort effort) {
        this.model = model;
        details = new DetailPane(model, commands);
        seen = new SeenPane(model, commands, effort.threads());
        nodes = new Node[] {
            details.node(),
            scrolled(new DimensionPane(model, dragging, loader, writeBack).node()),
            scrolled(new MapPane(model, commands).node()),
            scrolled(seen.node())
        };
    }

    /** What is shown of the layout. */
    ViewModel model() {
        return model;
    }

    /** A page by its number. */
    Node node(int number) {
        return nodes[number];
    }

    /** What is known of the selected face. */
    DetailPane details() {
        return details;
    }

    /** What a point sees. */
    SeenPane seen() {
        return seen;
    }

    static ScrollPane scrolled(Node content) {
        ScrollPane pane = new ScrollPane(content);
        pane.setFitToWidth(true);
        pane.setHbarPolicy(ScrollPane.ScrollBarPolicy.NEVER);
        return pane;
    }

    @Override
    public void close() {
        seen.close();
    }
}
