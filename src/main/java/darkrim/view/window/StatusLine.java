package darkrim.view.window;

import darkrim.present.Figures;
import darkrim.view.work.Content;
import darkrim.view.work.Facts;
import darkrim.view.work.ViewModel;
import java.util.Optional;
import java.util.OptionalDouble;
import javafx.geometry.Pos;
import javafx.scene.Node;
import javafx.scene.control.Label;
import javafx.scene.control.ProgressBar;
import javafx.scene.control.Tooltip;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;

/** The line below the view: the verdict (of one layout; two have theirs over their views), what is under the mouse, and what is being worked out. */
final class StatusLine {
    private final ViewModel model;
    private final HBox verdict = new HBox(6);
    private final Label under = new Label();
    private final Label activity = new Label();
    private final ProgressBar progress = new ProgressBar();
    private final HBox row = new HBox(12, verdict, under, activity, progress);
    private Optional<Facts> shown = Optional.empty();

    StatusLine(ViewModel model) {
        this.model = model;
        row.setAlignment(Pos.CENTER_LEFT);
        row.getStyleClass().add("status");
        verdict.setId("verdict");
        verdict.setMinWidth(Region.USE_PREF_SIZE);
        under.setId("under");
        under.setMaxWidth(Double.MAX_VALUE);
        HBox.setHgrow(under, Priority.ALWAYS);
        activity.setMinWidth(Region.USE_PREF_SIZE);
        progress.setPrefWidth(140);
        progress.setMinWidth(140);
        model.onContent(this::follow);
        model.onLook(this::follow);
        follow();
    }

    Node node() {
        return row;
    }

    /** Says what is under the mouse. */
    void under(String words) {
        under.setText(words);
    }

    private void follow() {
        Content content = model.content();
        verdict.setVisible(model.partner().isEmpty());
        verdict.setManaged(verdict.isVisible());
        Optional<Facts> found = content.facts();
        if (!found.equals(shown) || verdict.getChildren().isEmpty()) {
            shown = found;
            verdict.getChildren().clear();
            found.ifPresent(known -> {
                verdict.getChildren().add(VerdictBadge.of(known.verdict(), known.isOutdated()));
                if (!known.warnings().isEmpty()) {
                    Label warnings = new Label(Figures.counted(known.warnings().size(), "warning"));
                    warnings.getStyleClass().add("warning");
                    warnings.setTooltip(new Tooltip(String.join("\n", known.warnings())));
                    verdict.getChildren().add(warnings);
                }
            });
            if (found.isEmpty()) {
                verdict.getChildren().add(new Label("no verdict yet"));
            }
        }
        // A check first: the light of a source is looked for beside it.
        OptionalDouble sampled = content.sampled(model.look().source());
        boolean checking = !content.activity().isEmpty() || sampled.isEmpty();
        String doing = checking
                ? content.activity()
                : "sampling light of " + model.look().source().orElseThrow();
        double share = checking ? content.progress() : sampled.getAsDouble();
        activity.setText(doing);
        progress.setVisible(!doing.isEmpty());
        progress.setProgress(share < 0 ? ProgressBar.INDETERMINATE_PROGRESS : share);
    }
}
