package darkrim.view.files;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assumptions.assumeThat;

import darkrim.view.camera.Camera;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.util.Map;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.Stream;
import javax.imageio.ImageIO;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class FilesTest {
    @TempDir
    private Path folder;

    @Test
    void aChangeIsToldOfOnceAndOnlyWhenTheFileHasComeToRest() throws Exception {
        Path file = Files.writeString(folder.resolve("a.yaml"), "one");
        AtomicInteger told = new AtomicInteger();
        try (FileWatch watch = new FileWatch(file, told::incrementAndGet)) {
            watch.look();
            assertThat(told).hasValue(0);
            Files.writeString(file, "two, longer");
            watch.look();
            assertThat(told).hasValue(0);
            watch.look();
            watch.look();
            assertThat(told).hasValue(1);
        }
    }

    @Test
    void aFileThatIsOnlyTouchedHasNotChangedAndOneThatIsGoneHas() throws Exception {
        Path file = Files.writeString(folder.resolve("a.yaml"), "one");
        AtomicInteger told = new AtomicInteger();
        try (FileWatch watch = new FileWatch(file, told::incrementAndGet)) {
            Files.setLastModifiedTime(file, FileTime.fromMillis(1_000_000));
            watch.look();
            watch.look();
            assertThat(told).hasValue(0);
            Files.delete(file);
            watch.look();
            watch.look();
            assertThat(told).hasValue(1);
        }
    }

    @Test
    void windowsAreRememberedByLayout() {
        Memory memory = new Memory(folder.resolve("deep/windows.properties"));
        Memory.Window window = new Memory.Window(10, 20, 1280, 800, new Camera(Vector3D.of(1, 2, 3), 40, 50, 60, true));
        assertThat(memory.recall(Path.of("a.yaml"))).isEmpty();
        assertThat(memory.remember(Path.of("a.yaml"), window)).isTrue();
        assertThat(memory.recall(Path.of("a.yaml"))).contains(window);
        assertThat(memory.recall(Path.of("b.yaml"))).isEmpty();
    }

    @Test
    void aPictureMayBeReadByWhoeverMayReadANewFileAndLeavesNothingBeside() throws Exception {
        Path plain = Files.createFile(folder.resolve("plain"));
        Path picture = Files.writeString(folder.resolve("a.png"), "old");
        PictureFile.write(picture, new Pixels(2, 1, new int[] {0xffff0000, 0xff0000ff}));
        assertThat(ImageIO.read(picture.toFile()).getRGB(1, 0)).isEqualTo(0xff0000ff);
        assumeThat(plain.getFileSystem().supportedFileAttributeViews()).contains("posix");
        assertThat(Files.getPosixFilePermissions(picture)).isEqualTo(Files.getPosixFilePermissions(plain));
        try (Stream<Path> left = Files.list(folder)) {
            assertThat(left).containsExactlyInAnyOrder(plain, picture);
        }
    }

    @Test
    void filesThatWereAskedForAreWrittenWhenTheWorkIsClosed() {
        AtomicInteger written = new AtomicInteger();
        try (FileWork work = new FileWork()) {
            for (int i = 0; i < 100; i++) {
                work.ask(written::incrementAndGet);
            }
        }
        assertThat(written).hasValue(100);
    }

    @Test
    void damagedMemoryIsNoMemory() throws Exception {
        Path file = folder.resolve("windows.properties");
        String key = Path.of("a.yaml").toAbsolutePath().toString();
        for (String damage : new String[] {"1 2 3", "x 1 1 1 1 1 1 1 1 1 true", "NaN 1 1 1 1 1 1 1 1 1 true"}) {
            Files.writeString(file, key + "=" + damage);
            assertThat(new Memory(file).recall(Path.of("a.yaml"))).isEmpty();
        }
        Files.writeString(file, "\\u12");
        assertThat(new Memory(file).recall(Path.of("a.yaml"))).isEmpty();
        assertThat(Memory.of(Map.of(), folder).recall(Path.of("a.yaml"))).isEmpty();
    }
}
