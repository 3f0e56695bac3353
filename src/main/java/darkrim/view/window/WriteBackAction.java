package darkrim.view.window;

import darkrim.diagnostic.UnusableInput;
import darkrim.layout.DimensionEdit;
import darkrim.layout.RefusedEdit;
import darkrim.study.LayoutFamily;
import darkrim.study.live.LiveLayout;
import darkrim.study.live.WriteBack;
import darkrim.view.files.FileWork;
import darkrim.view.work.Dragging;
import darkrim.view.work.ViewModel;
import java.io.IOException;
import java.nio.file.Path;
import java.util.Map;
import java.util.Optional;
import javafx.application.Platform;

/** Writes the values to which dimensions were dragged into the layout file, away from the window's thread; says so, or why not. */
final class WriteBackAction {
    private final ViewModel model;
    private final Dragging dragging;
    private final Path file;
    private final FileWork files;

    WriteBackAction(ViewModel model, Dragging dragging, Path file, FileWork files) {
        this.model = model;
        this.dragging = dragging;
        this.file = file;
        this.files = files;
    }

    /**
     * Writes.
     *
     * @param formulas what to do with dimensions that are formulas
     */
    void run(DimensionEdit.Formulas formulas) {
        Optional<LiveLayout> live = dragging.live();
        if (live.isEmpty()) {
            return;
        }
        LayoutFamily family = live.get().family();
        Map<String, Double> values = live.get().chosen();
        files.ask(() -> write(family, values, formulas));
    }

    private void write(LayoutFamily family, Map<String, Double> values, DimensionEdit.Formulas formulas) {
        try {
            WriteBack.into(file, family, values, formulas);
            // The watch over the file sees the change and has it read and checked.
            say("");
        } catch (RefusedEdit | UnusableInput refused) {
            say("not written: " + refused.getMessage());
        } catch (IOException failed) {
            say("not written: " + file + " cannot be written");
        }
    }

    private void say(String words) {
        Platform.runLater(() -> model.show(content -> content.noting(words)));
    }
}
