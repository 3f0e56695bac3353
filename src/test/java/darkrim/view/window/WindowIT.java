package darkrim.view.window;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;
import org.junit.jupiter.api.io.TempDir;

/** What {@link WindowDrive} claims, on a {@linkplain DisplayInMemory display of its own}. */
class WindowIT {
    private static final int CLAIMS = 20;

    @TempDir
    private Path folder;

    @TestFactory
    Stream<DynamicTest> theWindowDoesWhatAPersonExpects() throws Exception {
        try (DisplayInMemory display = new DisplayInMemory(1000, 640)) {
            List<String> said = display.run(WindowDrive.class, folder);
            List<String> claims = said.stream()
                    .filter(line -> line.startsWith("holds: ") || line.startsWith("fails: "))
                    .toList();
            assertThat(claims).as(String.join("\n", said)).hasSize(CLAIMS);
            return claims.stream()
                    .map(line -> DynamicTest.dynamicTest(
                            line.substring("holds: ".length()),
                            () -> assertThat(line).startsWith("holds: ")));
        }
    }
}
