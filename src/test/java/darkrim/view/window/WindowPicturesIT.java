package darkrim.view.window;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledIfSystemProperty;
import org.junit.jupiter.api.io.TempDir;

/**
 * Writes the pictures of docs/view.md with {@code -Dwrite.docs=true}. They are not compared otherwise: how OpenGL draws an edge is the machine's
 * affair.
 */
@EnabledIfSystemProperty(
        named = "write.docs",
        matches = "true",
        disabledReason = "writes the pictures of docs/view.md with -Dwrite.docs=true")
class WindowPicturesIT {
    @TempDir
    private Path folder;

    @Test
    void thePicturesOfThePageAreTaken() throws Exception {
        try (DisplayInMemory display = new DisplayInMemory(WindowPictures.WIDTH, WindowPictures.HEIGHT)) {
            String said = String.join("\n", display.run(WindowPictures.class, folder));
            for (String name : WindowPictures.NAMES) {
                assertThat(folder.resolve(name)).as(said).exists();
                Files.copy(folder.resolve(name), Path.of("docs", name), StandardCopyOption.REPLACE_EXISTING);
            }
        }
    }
}
