package darkrim.study.spark;

import java.net.URISyntaxException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.CodeSource;
import java.util.Optional;
import org.apache.spark.SparkConf;

/** How Spark is set up for a study, where neither the user nor the launcher has set it otherwise. */
final class SparkSettings {
    /** A task fails when its executor is lost; with machines that come and go this is no reason to end a study. */
    private static final String FAILURES_BORNE = "16";

    /** Name of the setting that says how long the first executor is waited for, such as {@code 300s} or {@code 2h}. */
    static final String WAIT = "spark.darkrim.wait";

    private SparkSettings() {}

    /** The settings for a cluster. */
    static SparkConf of(String master) {
        SparkConf settings = new SparkConf()
                .setMaster(master)
                .setIfMissing("spark.app.name", "darkrim")
                // Below this Spark tells of everything that it mends by itself, with stack traces.
                .setIfMissing("spark.log.level", "ERROR")
                // Results are handed over as they come, and not kept: their sum may be large.
                .setIfMissing("spark.driver.maxResultSize", "0")
                .setIfMissing(WAIT, "300s")
                .setIfMissing("spark.task.maxFailures", FAILURES_BORNE);
        ownJar().ifPresent(jar -> settings.setIfMissing("spark.jars", jar.toString()));
        return settings;
    }

    /** The jar that this program runs from, which the executors need too; none where it runs from a folder of classes. */
    private static Optional<Path> ownJar() {
        CodeSource source = SparkSettings.class.getProtectionDomain().getCodeSource();
        if (source == null) {
            return Optional.empty();
        }
        try {
            return Optional.of(Path.of(source.getLocation().toURI())).filter(Files::isRegularFile);
        } catch (URISyntaxException noFile) {
            return Optional.empty();
        }
    }
}
