package darkrim.study.spark;

import java.io.File;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;

/**
 * What an installation of Spark is to its worker processes: a folder {@code jars}, here of links to the jars of the build. Spark reads from
 * the environment where that is; the build sets it.
 */
final class SparkHome {
    private static final String SCALA = "2.13";
    private static final String NOT_OF_SPARK =
            "(darkrim|junit|archunit|snakeyaml|EvalEx|re2j|jts|joml|picocli|progressbar"
                    + "|commons-(geometry|numbers|rng|statistics|text)).*";

    private SparkHome() {}

    /** Why worker processes cannot be started; empty if they can. */
    static String missing() {
        if (System.getenv("SPARK_HOME") == null) {
            return "worker processes need SPARK_HOME in the environment, which mvn verify sets";
        }
        return SCALA.equals(System.getenv("SPARK_SCALA_VERSION"))
                ? ""
                : "worker processes need SPARK_SCALA_VERSION=2.13 in the environment, which mvn verify sets";
    }

    /** Lays the folder out. */
    static void arrange() throws IOException {
        Path jars = Path.of(System.getenv("SPARK_HOME"), "jars");
        Files.createDirectories(jars);
        for (Path jar : jarsOfSpark()) {
            Path link = jars.resolve(jar.getFileName());
            if (!Files.exists(link)) {
                Files.deleteIfExists(link);
                Files.createSymbolicLink(link, jar);
            }
        }
    }

    /** Everything on the class path but the program, what its jar brings along, and tools of tests. */
    private static List<Path> jarsOfSpark() {
        return Stream.of(System.getProperty("java.class.path").split(File.pathSeparator, -1))
                .filter(entry -> entry.endsWith(".jar"))
                .map(Path::of)
                .filter(jar -> !jar.getFileName().toString().matches(NOT_OF_SPARK))
                .map(Path::toAbsolutePath)
                .toList();
    }
}
