package darkrim.study.spark;

import darkrim.study.InOrder;
import darkrim.study.Point;
import darkrim.study.PointCheck;
import darkrim.study.PointResult;
import darkrim.study.PointWorkers;
import darkrim.study.WorkersLost;
import java.util.List;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;
import java.util.stream.IntStream;
import org.apache.spark.SimpleFutureAction;
import org.apache.spark.SparkConf;
import org.apache.spark.api.java.JavaSparkContext;
import org.apache.spark.broadcast.Broadcast;
import org.apache.spark.network.util.JavaUtils;
import scala.jdk.javaapi.CollectionConverters;
import scala.jdk.javaapi.FutureConverters;
import scala.runtime.BoxedUnit;

/**
 * Executors of Apache Spark, which work out one point in each task. Spark gives the points of an executor that is lost to another one. No
 * failure of a point ends the study: failures travel as values.
 */
public final class SparkCluster implements PointWorkers {
    private static final long PAUSE_MILLISECONDS = 100;

    private final JavaSparkContext spark;

    private SparkCluster(JavaSparkContext spark) {
        this.spark = spark;
    }

    /**
     * Joins a cluster and waits for its first executor.
     *
     * @param master where it is, such as {@code spark://host:7077}
     * @throws WorkersLost if it cannot be reached, or gives no executor in the time that {@link SparkSettings#WAIT} names
     */
    public static SparkCluster at(String master) throws WorkersLost {
        SparkConf settings = SparkSettings.of(master);
        JavaSparkContext spark;
        try {
            spark = new JavaSparkContext(settings);
        } catch (RuntimeException unreachable) {
            throw new WorkersLost("no study can be started on " + master + ": " + reason(unreachable), unreachable);
        }
        if (!Boolean.TRUE.equals(spark.isLocal())) {
            awaitExecutor(spark, master, settings.get(SparkSettings.WAIT));
        }
        return new SparkCluster(spark);
    }

    private static void awaitExecutor(JavaSparkContext spark, String master, String patience) throws WorkersLost {
        long end = System.nanoTime() + TimeUnit.SECONDS.toNanos(JavaUtils.timeStringAsSec(patience));
        // The first one listed is this program.
        while (spark.sc().statusTracker().getExecutorInfos().length < 2) {
            if (spark.sc().isStopped()) {
                throw new WorkersLost("no study can be started on " + master + ": it does not answer", null);
            }
            if (System.nanoTime() > end) {
                spark.close();
                throw new WorkersLost(
                        "no study can be started on " + master + ": it gave no executor within " + patience
                                + "; all are busy, or none can reach this machine (docs/cluster.md)",
                        null);
            }
            pause();
        }
    }

    private static void pause() {
        try {
            TimeUnit.MILLISECONDS.sleep(PAUSE_MILLISECONDS);
        } catch (InterruptedException interrupted) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException("interrupted while waiting for a cluster", interrupted);
        }
    }

    @Override
    public int work(PointCheck check, List<Point> points, Consumer<PointResult> results, BooleanSupplier stop)
            throws WorkersLost {
        if (points.isEmpty()) {
            return 0;
        }
        Broadcast<SentStudy> study = spark.broadcast(new SentStudy(check));
        Arrivals arrivals = new Arrivals(points.size());
        AtomicInteger done = new AtomicInteger();
        SimpleFutureAction<BoxedUnit> job = submit(points, new PointTask(study), arrivals);
        try {
            return InOrder.handOver(
                    arrivals.coming(),
                    each -> {
                        results.accept(each.unpacked());
                        done.incrementAndGet();
                    },
                    stop);
        } catch (ExecutionException lost) {
            // On Ctrl-C Spark leaves the cluster by itself, perhaps before we hear of the wish to stop.
            if (stop.getAsBoolean()) {
                return done.get();
            }
            throw new WorkersLost("the cluster gave up: " + reason(lost.getCause()), lost.getCause());
        } finally {
            if (!spark.sc().isStopped()) {
                job.cancel();
                study.destroy();
            }
        }
    }

    private SimpleFutureAction<BoxedUnit> submit(List<Point> points, PointTask task, Arrivals arrivals) {
        List<Object> all = IntStream.range(0, points.size())
                .<Object>mapToObj(Integer::valueOf)
                .toList();
        SimpleFutureAction<BoxedUnit> job = spark.sc()
                .submitJob(
                        spark.parallelize(points, points.size()).rdd(),
                        task,
                        CollectionConverters.asScala(all).toSeq(),
                        arrivals,
                        () -> BoxedUnit.UNIT);
        FutureConverters.asJava(job).whenComplete((done, failure) -> {
            if (failure != null) {
                arrivals.end(failure);
            }
        });
        return job;
    }

    /** What Spark says, without the stack traces that it appends. */
    private static String reason(Throwable problem) {
        return String.valueOf(problem.getMessage()).lines().findFirst().orElse("");
    }

    @Override
    public void close() {
        spark.close();
    }
}
