/**
 * Studies on a cluster of Apache Spark. The only package that knows it; the program runs without it.
 *
 * <p>In: points of a study that know how to be worked out elsewhere. Out: their results, the same bits as on one
 * machine. Main types: {@code SparkCluster} hands out tasks, {@code PointTask} is one of them, {@code
 * SparkPresence} says whether the library is there. docs/cluster.md and docs/decisions/0013 tell how it is used.
 *
 * <p>It must not know: what a point is: it sends and collects. No other package may name Spark. Begin to read:
 * {@code SparkCluster}.
 */
package darkrim.study.spark;
