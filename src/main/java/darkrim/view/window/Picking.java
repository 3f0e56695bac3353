package darkrim.view.window;

import darkrim.view.look.Look;
import darkrim.view.parts.Hit;
import darkrim.view.work.ViewModel;
import java.util.Optional;
import javafx.geometry.Point2D;
import javafx.scene.Node;

/** What a click does, by the mouse or by Enter at the mark that keys move: measures, or else selects. */
final class Picking {
    /** Corners within this are caught by the ruler, pixels. */
    private static final double CAUGHT = 9;

    private final ViewModel model;
    private final Eye eye;
    private final Commands commands;

    Picking(ViewModel model, Eye eye, Commands commands) {
        this.model = model;
        this.eye = eye;
        this.commands = commands;
    }

    /** Picks what is met first at a place, pixels. */
    void at(double x, double y) {
        Optional<Hit> hit = eye.at(x, y);
        if (commands.measuring()) {
            hit.ifPresent(there -> model.change(look -> look.with(look.ruler().with(eye.snapped(there, CAUGHT)))));
        } else {
            commands.speakOf(model);
            commands.picked(hit);
            model.change(look -> selecting(look, hit));
        }
    }

    /** Opens the menu of what is met first at a place, pixels of the view. */
    void menu(Node view, double x, double y) {
        commands.speakOf(model);
        Point2D place = view.localToScreen(x, y);
        commands.menu(eye.at(x, y), view, place.getX(), place.getY());
    }

    private static Look selecting(Look look, Optional<Hit> hit) {
        return look.selecting(hit.filter(there -> there.surface().isPresent()).map(Hit::name));
    }
}
