package darkrim.cli;

import darkrim.layout.form.Wording;
import darkrim.study.LocalThreads;
import darkrim.study.PointWorkers;
import darkrim.study.WorkersLost;
import darkrim.study.spark.SparkCluster;
import darkrim.study.spark.SparkPresence;
import java.util.Optional;
import java.util.regex.Pattern;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.Option;
import picocli.CommandLine.TypeConversionException;

/** Where the points of a study are worked out, for commands that work out many. */
final class WorkersOption {
    /** What Spark's own launcher sets before it starts a program. */
    private static final String LAUNCHED_FOR = "spark.master";

    @Option(
            names = "--on",
            paramLabel = "CLUSTER",
            converter = Address.class,
            description =
                    "Work on a cluster of Apache Spark, such as spark://host:7077; see docs/cluster.md. Default: on"
                            + " this machine, or where spark-submit says. Never changes a result.")
    private String cluster;

    /**
     * Those who work out the points.
     *
     * @param threads how many, on this machine
     * @throws WorkersLost if the cluster cannot be reached
     */
    PointWorkers open(int threads) throws WorkersLost {
        Optional<String> master =
                Optional.ofNullable(cluster).or(() -> Optional.ofNullable(System.getProperty(LAUNCHED_FOR)));
        return master.isPresent() ? SparkCluster.at(master.get()) : new LocalThreads(threads);
    }

    /** Reads where a cluster is, and says how to get Spark where it is missing. */
    static final class Address implements ITypeConverter<String> {
        private static final Pattern KINDS = Pattern.compile(
                "(spark|k8s)://\\S+|yarn|local(\\[[0-9*]+\\])?|local-cluster\\[[0-9]+,[0-9]+,[0-9]+\\]");

        @Override
        public String convert(String text) {
            if (!KINDS.matcher(text).matches()) {
                throw new TypeConversionException(
                        "expected a cluster such as spark://host:7077, k8s://https://host:6443, yarn or, to try it out,"
                                + " local[2], got '" + Wording.shortened(text) + "'");
            }
            if (!SparkPresence.isThere()) {
                throw new TypeConversionException("needs Apache Spark, which this program does not bring along; start"
                        + " it by Spark's own launcher: spark-submit --master " + text
                        + " darkrim.jar ..., without --on (docs/cluster.md)");
            }
            return text;
        }
    }
}
