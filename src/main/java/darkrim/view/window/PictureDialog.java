package darkrim.view.window;

import darkrim.view.files.FileWork;
import darkrim.view.files.PictureFile;
import darkrim.view.files.Pixels;
import darkrim.view.work.ViewModel;
import java.io.File;
import java.io.IOException;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.Optional;
import java.util.function.BooleanSupplier;
import javafx.application.Platform;
import javafx.scene.control.Alert;
import javafx.scene.control.TextInputDialog;
import javafx.stage.FileChooser;
import javafx.stage.Stage;

/** Asks for the size and the name of a picture, and saves it. */
final class PictureDialog {
    private final Stage owner;
    private final Path layout;
    private final ViewModel model;
    private final FileWork files;
    private final BooleanSupplier comparing;

    /**
     * @param files writes it
     * @param comparing whether the window shows the difference of two layouts
     */
    PictureDialog(Stage owner, Path layout, ViewModel model, FileWork files, BooleanSupplier comparing) {
        this.owner = owner;
        this.layout = layout;
        this.model = model;
        this.files = files;
        this.comparing = comparing;
    }

    /** Asks and saves. */
    void ask() {
        if (model.content().stage().isEmpty()) {
            return;
        }
        TextInputDialog dialog = new TextInputDialog("1600x1000");
        dialog.initOwner(owner);
        dialog.setTitle("Save picture");
        dialog.setHeaderText("Size in pixels, width x height");
        Optional<String> typed = dialog.showAndWait();
        while (typed.isPresent() && PictureSize.of(typed.get()).isEmpty()) {
            dialog = new TextInputDialog(typed.get());
            dialog.initOwner(owner);
            dialog.setTitle("Save picture");
            dialog.setHeaderText(
                    "'" + typed.get().strip() + "' cannot be the size of a picture: expected " + PictureSize.EXPECTED);
            typed = dialog.showAndWait();
        }
        Optional<PictureSize> size = typed.flatMap(PictureSize::of);
        if (size.isEmpty()) {
            return;
        }
        FileChooser chooser = new FileChooser();
        chooser.setTitle("Save picture");
        chooser.getExtensionFilters().add(new FileChooser.ExtensionFilter("PNG picture", "*.png"));
        chooser.setInitialFileName(layout.getFileName().toString().replaceFirst("\\.[^.]*$", "") + ".png");
        File folder = layout.toAbsolutePath().getParent().toFile();
        chooser.setInitialDirectory(folder.isDirectory() ? folder : null);
        File chosen = chooser.showSaveDialog(owner);
        if (chosen != null) {
            save(chosen.toPath(), size.get());
        }
    }

    /** Saves what is seen; says if that cannot be done. The file is written away from the window's thread. */
    void save(Path file, PictureSize size) {
        Pixels pixels = new Picture(model, comparing.getAsBoolean()).of(size, LocalDate.now(ZoneId.systemDefault()));
        files.ask(() -> write(file, pixels));
    }

    private void write(Path file, Pixels pixels) {
        try {
            PictureFile.write(file, pixels);
        } catch (IOException refused) {
            Platform.runLater(() -> {
                Alert alert = new Alert(Alert.AlertType.ERROR, "The picture could not be written to " + file + ".");
                alert.initOwner(owner);
                alert.showAndWait();
            });
        }
    }
}
