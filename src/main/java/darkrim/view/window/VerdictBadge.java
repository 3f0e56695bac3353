package darkrim.view.window;

import darkrim.present.picture.VerdictMark;
import darkrim.verdict.Verdict;
import java.util.Locale;
import javafx.scene.control.Label;
import javafx.scene.layout.Region;

/** A verdict as a label. */
final class VerdictBadge {
    private VerdictBadge() {}

    /** A verdict by word and colour. */
    static Label of(Verdict verdict) {
        VerdictMark mark = VerdictMark.of(verdict);
        Label badge = new Label(mark.word().toUpperCase(Locale.ROOT));
        badge.getStyleClass().addAll("badge", "badge-" + mark.word());
        badge.setMinWidth(Region.USE_PREF_SIZE);
        return badge;
    }

    /** The same, marked where it is of another position of the dimensions than the one that is asked for. */
    static Label of(Verdict verdict, boolean isOutdated) {
        Label badge = of(verdict);
        if (isOutdated) {
            badge.setText("WAS " + badge.getText());
            badge.getStyleClass().add("badge-outdated");
        }
        return badge;
    }
}
