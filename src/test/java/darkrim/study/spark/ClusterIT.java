package darkrim.study.spark;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import darkrim.study.LayoutFamily;
import darkrim.study.LocalThreads;
import darkrim.study.Point;
import darkrim.study.PointCheck;
import darkrim.study.PointResult;
import darkrim.study.PointWorkers;
import darkrim.study.WorkersLost;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.stream.IntStream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** The same study by threads of one program, by Spark within it, and by two worker processes, one of which may die. */
class ClusterIT {
    private static final int POINTS = 12;
    private static final int BATCHES = 24;

    private static PointCheck check;
    private static List<PointResult> expected;

    /** Tilts from walls that the beam strikes, where samples decide, to walls that are proved dark, and at last one that cannot be. */
    private static List<Point> points() {
        List<Point> points = new ArrayList<>();
        IntStream.range(0, POINTS - 1).forEach(i -> points.add(Point.of(Map.of("wall_tilt", 3 + 0.5 * i))));
        points.add(Point.of(Map.of("wall_height", -1.0)));
        return points;
    }

    @BeforeAll
    static void workOutHere() throws Exception {
        check = new PointCheck(LayoutFamily.of(Path.of("geometries/part-box.yaml")), Optional.of(7L), BATCHES);
        try (PointWorkers threads = new LocalThreads(2)) {
            expected = collect(threads);
        }
        assertThat(expected).hasSize(POINTS);
        assertThat(expected.get(0).figure("floor-clean").orElseThrow().standardError())
                .isPositive();
        assertThat(expected.get(POINTS - 1).impossible()).contains("part-box.yaml:");
    }

    @BeforeEach
    void setUp() {
        System.setProperty("spark.ui.enabled", "false");
        System.setProperty("spark.log.level", "OFF");
        // The executors get the program as a user's do: as the jar.
        System.setProperty("spark.jars", System.getProperty("darkrim.jar"));
    }

    @AfterEach
    void tearDown() {
        System.getProperties().stringPropertyNames().stream()
                .filter(name -> name.startsWith("spark."))
                .forEach(System::clearProperty);
    }

    private static List<PointResult> collect(PointWorkers workers) throws Exception {
        return collect(workers, result -> {});
    }

    private static List<PointResult> collect(PointWorkers workers, Consumer<PointResult> each) throws Exception {
        List<PointResult> results = new ArrayList<>();
        int count = workers.work(check, points(), each.andThen(results::add), () -> false);
        assertThat(count).isEqualTo(results.size());
        return results;
    }

    /** Every bit: the text of a number in Java tells it from every other number; NaN equals NaN in records. */
    private static void assertSameBits(List<PointResult> results) {
        assertThat(results).isEqualTo(expected).hasToString(expected.toString());
    }

    @Test
    void twoThreadsOfSparkGiveTheSameBits() throws Exception {
        try (PointWorkers spark = SparkCluster.at("local[2]")) {
            assertSameBits(collect(spark));
            // Given points again, as by a study that refines; and a stop is heard.
            List<PointResult> first = new ArrayList<>();
            assertThat(spark.work(check, points(), first::add, () -> first.size() == 2))
                    .isEqualTo(2);
            assertThat(first).isEqualTo(expected.subList(0, 2));
            assertThatThrownBy(
                            () -> spark.work(check, List.of(Point.of(Map.of("no_such", 1.0))), first::add, () -> false))
                    .isInstanceOf(IllegalArgumentException.class)
                    .hasMessageContaining("no_such");
        }
    }

    @Test
    void ofAClusterThatGoesAwayItIsSaidAndWhatCameBeforeIsGood() throws Exception {
        List<PointResult> before = new ArrayList<>();
        try (PointWorkers spark = SparkCluster.at("local[2]")) {
            Runnable leave = spark::close;
            assertThatThrownBy(() -> spark.work(
                            check,
                            points(),
                            result -> {
                                before.add(result);
                                leave.run();
                            },
                            () -> false))
                    .isInstanceOf(WorkersLost.class)
                    .hasMessageStartingWith("the cluster gave up: ");
        }
        assertThat(before).isNotEmpty().isEqualTo(expected.subList(0, before.size()));
    }

    @Test
    void twoWorkerProcessesGiveTheSameBitsThoughOneIsKilled() throws Exception {
        assumeTrue(SparkHome.missing().isEmpty(), SparkHome.missing());
        SparkHome.arrange();
        try (PointWorkers spark = SparkCluster.at("local-cluster[2,1,1024]")) {
            assertSameBits(collect(spark));
            List<Long> killed = new ArrayList<>();
            assertSameBits(collect(spark, result -> {
                if (killed.isEmpty()) {
                    assertThat(executors()).hasSize(2);
                    ProcessHandle victim = executors().get(0);
                    assertThat(victim.destroyForcibly()).isTrue();
                    killed.add(victim.pid());
                }
            }));
            assertThat(killed).hasSize(1);
        }
    }

    /** The processes that Spark started from this one to work out points. */
    private static List<ProcessHandle> executors() {
        return ProcessHandle.current()
                .descendants()
                .filter(process -> process.info().commandLine().orElse("").contains("CoarseGrainedExecutorBackend"))
                .filter(ProcessHandle::isAlive)
                .toList();
    }
}
