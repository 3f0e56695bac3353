package darkrim.view.window;

import darkrim.present.LayoutWords;
import darkrim.view.parts.Stage;
import darkrim.view.work.Content;
import darkrim.view.work.Facts;
import darkrim.view.work.ViewModel;
import java.nio.file.Path;
import javafx.geometry.Pos;
import javafx.scene.control.Label;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Pane;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;

/** What stands over one of two views: which side it is, title, revision, file, verdict, and whether its check still runs. */
final class SideTitle {
    private final ViewModel model;
    private final String file;
    private final String side;
    private final HBox head = new HBox(6);
    private final Label below = new Label();
    private final VBox box = new VBox(2, head, below);

    /**
     * @param side what the side stands for
     */
    SideTitle(ViewModel model, Path layout, String side) {
        this.model = model;
        this.side = side;
        file = String.valueOf(layout.getFileName());
        head.setAlignment(Pos.CENTER_LEFT);
        below.getStyleClass().add("note");
        below.setWrapText(true);
        below.setMinHeight(Region.USE_PREF_SIZE);
        box.getStyleClass().add("side-title");
        model.onContent(this::follow);
        follow();
    }

    Pane node() {
        return box;
    }

    /** The revision first, and which shape of a layout that is cooled: two revisions mostly have one title, and a long one is cut short. */
    static String words(Stage stage) {
        String revision = stage.layout().revision();
        return (revision.isEmpty() ? "" : ", revision " + revision) + LayoutWords.shape(stage.layout()) + ": "
                + stage.layout().title();
    }

    private void follow() {
        Content content = model.content();
        Label name = new Label(side + content.stage().map(SideTitle::words).orElse(""));
        // The view gives way, not the words.
        name.setWrapText(true);
        name.setMinHeight(Region.USE_PREF_SIZE);
        HBox.setHgrow(name, Priority.ALWAYS);
        name.getStyleClass().add("strong");
        head.getChildren().setAll(name);
        content.facts()
                .ifPresent(known -> head.getChildren().add(0, VerdictBadge.of(known.verdict(), known.isOutdated())));
        String state = content.activity().isEmpty()
                ? content.facts().map(Facts::words).orElse("not checked")
                : content.activity();
        below.setText(file + ", " + state);
    }
}
