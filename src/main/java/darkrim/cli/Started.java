package darkrim.cli;

import java.io.File;
import java.io.IOException;
import java.net.URISyntaxException;
import java.nio.file.FileSystemNotFoundException;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.security.CodeSource;
import java.util.Optional;

/** How the program was started: what a user must write to start it again. */
final class Started {
    /** Set by the start script of an installed program to its own name. */
    private static final String PROPERTY = "darkrim.command";

    private static final String INSTALLED = "darkrim";

    private Started() {}

    /** The words before the name of a command, such as {@code java -jar target/darkrim.jar}. */
    static String words() {
        return words(
                Optional.ofNullable(System.getProperty(PROPERTY)), System.getProperty("java.class.path", ""), source());
    }

    /** What gives Java more memory, as an example, where the program is started by the same words. */
    static String wordsWithMemory() {
        String words = words();
        return words.startsWith("java ")
                ? words.replaceFirst("^java ", "java -Xmx8g ")
                : "DARKRIM_JAVA_OPTIONS=-Xmx8g " + words;
    }

    /**
     * The words.
     *
     * @param script what the start script says
     * @param classPath Java's class path: of a jar that was started by its name that name, as it was typed
     * @param source where the classes of the program come from, if that is known
     */
    static String words(Optional<String> script, String classPath, Optional<Path> source) {
        if (script.isPresent()) {
            return script.get();
        }
        boolean one = classPath.endsWith(".jar") && !classPath.contains(File.pathSeparator);
        return one && source.filter(jar -> isSame(jar, classPath)).isPresent()
                ? "java -jar " + ShellQuote.of(classPath)
                : INSTALLED;
    }

    private static boolean isSame(Path jar, String name) {
        try {
            return Files.isSameFile(jar, Path.of(name));
        } catch (IOException | InvalidPathException gone) {
            return false;
        }
    }

    private static Optional<Path> source() {
        try {
            CodeSource source = Started.class.getProtectionDomain().getCodeSource();
            return source == null
                    ? Optional.empty()
                    : Optional.of(Path.of(source.getLocation().toURI()));
        } catch (URISyntaxException | IllegalArgumentException | FileSystemNotFoundException elsewhere) {
            return Optional.empty();
        }
    }
}
