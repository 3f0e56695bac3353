package darkrim.view.window;

import darkrim.diagnostic.Finding;
import darkrim.present.Figures;
import darkrim.view.work.Content;
import darkrim.view.work.Facts;
import darkrim.view.work.ViewModel;
import java.util.List;
import javafx.scene.Node;
import javafx.scene.control.Label;
import javafx.scene.control.Tooltip;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;

/** What is wrong with the layout file as it stands, while the last good layout is shown below. */
final class FindingBanner {
    private static final int MOST = 6;
    private static final int MOST_WARNINGS = 2;

    private final ViewModel model;
    private final VBox box = new VBox(2);

    FindingBanner(ViewModel model, String id) {
        this.model = model;
        box.setId(id);
        model.onContent(this::follow);
        follow();
    }

    Node node() {
        return box;
    }

    private void follow() {
        Content content = model.content();
        box.getChildren().clear();
        box.getStyleClass().removeAll("banner-error", "banner-note");
        List<Finding> errors = content.errors().stream()
                .filter(finding -> finding.severity() == Finding.Severity.ERROR)
                .toList();
        if (!errors.isEmpty()) {
            box.getStyleClass().add("banner-error");
            box.getChildren()
                    .add(line(
                            content.stage().isPresent()
                                    ? "The layout file has errors; what is shown is its last good state."
                                    : "The layout file has errors; it is shown as soon as it has none.",
                            "strong"));
            errors.stream().limit(MOST).forEach(error -> box.getChildren().add(line(error.toString(), "finding")));
            if (errors.size() > MOST) {
                box.getChildren().add(line("and " + (errors.size() - MOST) + " more", "finding"));
            }
        } else {
            notes(content);
        }
        box.setVisible(!box.getChildren().isEmpty());
        box.setManaged(box.isVisible());
    }

    /** Something to know, and the warnings of the check: no verdict stands without them. */
    private void notes(Content content) {
        if (!content.note().isEmpty()) {
            box.getChildren().add(line(content.note(), "finding"));
        }
        List<String> warnings = content.facts().map(Facts::warnings).orElse(List.of());
        warnings.stream()
                .limit(MOST_WARNINGS)
                .forEach(warning -> box.getChildren().add(line(warning, "finding")));
        if (warnings.size() > MOST_WARNINGS) {
            String more = Figures.counted(warnings.size() - MOST_WARNINGS, "more warning");
            box.getChildren().add(line("and " + more + ", see the page Findings with no face selected", "finding"));
        }
        if (!box.getChildren().isEmpty()) {
            box.getStyleClass().add("banner-note");
        }
    }

    private static Label line(String text, String style) {
        Label label = ToolStrip.label(text);
        // The view gives way, not the words.
        label.setMinHeight(Region.USE_PREF_SIZE);
        label.setTooltip(new Tooltip(text));
        label.getStyleClass().add(style);
        return label;
    }
}
