package darkrim.view.window;

import darkrim.view.work.Facts;
import java.util.List;
import java.util.Optional;
import javafx.scene.Node;
import javafx.scene.control.Label;
import javafx.scene.control.Tooltip;
import javafx.scene.layout.GridPane;
import javafx.scene.layout.Region;

/** The requirements in a line each: verdict, name, least margin. Never more than a line: what is dragged below it must stay under the hand. */
final class VerdictList {
    private final GridPane grid = new GridPane();
    private List<Facts.RequirementFact> shown = List.of();
    private boolean shownOutdated;

    VerdictList() {
        grid.setId("verdicts");
        grid.setHgap(8);
        grid.setVgap(2);
    }

    Node node() {
        return grid;
    }

    /** Shows what is known now. */
    void show(Optional<Facts> facts) {
        List<Facts.RequirementFact> now = facts.map(Facts::requirements).orElse(List.of());
        boolean outdated = facts.filter(Facts::isOutdated).isPresent();
        if (now.equals(shown) && outdated == shownOutdated) {
            return;
        }
        shown = now;
        shownOutdated = outdated;
        grid.getChildren().clear();
        if (!now.isEmpty()) {
            Label head = new Label("margin");
            head.getStyleClass().add("note");
            grid.add(head, 2, 0);
        }
        for (int row = 0; row < now.size(); row++) {
            Facts.RequirementFact requirement = now.get(row);
            // The verdict beside it begins with WAS where both are of another position: there is no room for it twice.
            Label margin = new Label(words(requirement));
            margin.setMinWidth(0);
            margin.setTooltip(new Tooltip("asked: " + requirement.limit()
                    + (requirement.value().isEmpty() ? "" : "\nworst value: " + requirement.value())
                    + (requirement.margin().isEmpty() ? "" : "\nleast margin: " + requirement.margin())));
            margin.getStyleClass().add("note");
            Label name = new Label(requirement.name());
            name.setMinWidth(Region.USE_PREF_SIZE);
            grid.addRow(row + 1, VerdictBadge.of(requirement.verdict(), outdated), name, margin);
        }
    }

    /** The margin; where it is not known, the value. */
    private static String words(Facts.RequirementFact requirement) {
        return requirement.margin().isEmpty() ? requirement.value() : requirement.margin();
    }
}
