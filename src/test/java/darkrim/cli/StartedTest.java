package darkrim.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.File;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What a user is told to type next is what starts the program here. */
class StartedTest {
    @TempDir
    private Path folder;

    private String words(String classPath, Path source) {
        return Started.words(Optional.empty(), classPath, Optional.of(source));
    }

    @Test
    void aJarIsNamedAsItWasTyped() throws IOException {
        Path jar = Files.createFile(folder.resolve("darkrim.jar"));
        String typed = folder + "/../" + folder.getFileName() + "/darkrim.jar";
        assertThat(words(typed, jar)).isEqualTo("java -jar " + typed);
        Path spaced = Files.createFile(folder.resolve("dark rim.jar"));
        assertThat(words(spaced.toString(), spaced)).isEqualTo("java -jar '" + spaced + "'");
    }

    @Test
    void anInstalledProgramIsNamedAsItsScriptSays() throws IOException {
        Path jar = Files.createFile(folder.resolve("darkrim.jar"));
        assertThat(Started.words(Optional.of("darkrim"), jar.toString(), Optional.of(jar)))
                .isEqualTo("darkrim");
    }

    /** As where a test or another launcher started it: no jar of the program was named. */
    @Test
    void otherwiseItHasItsName() throws IOException {
        Path jar = Files.createFile(folder.resolve("darkrim.jar"));
        Path other = Files.createFile(folder.resolve("launcher.jar"));
        assertThat(words(other.toString(), jar)).isEqualTo("darkrim");
        assertThat(words(jar + File.pathSeparator + other, jar)).isEqualTo("darkrim");
        assertThat(words(folder.resolve("gone.jar").toString(), jar)).isEqualTo("darkrim");
        assertThat(Started.words(Optional.empty(), jar.toString(), Optional.empty()))
                .isEqualTo("darkrim");
        assertThat(Started.words()).isEqualTo("darkrim");
        assertThat(Started.wordsWithMemory()).isEqualTo("DARKRIM_JAVA_OPTIONS=-Xmx8g darkrim");
    }
}
