package darkrim.study.spark;

/** Whether Spark is there: a desktop user does not carry it. Names no class of Spark, so that it can be asked without. */
public final class SparkPresence {
    private SparkPresence() {}

    /** Whether {@link SparkCluster} can be used. */
    public static boolean isThere() {
        try {
            Class.forName("org.apache.spark.SparkContext", false, SparkPresence.class.getClassLoader());
            return true;
        } catch (ClassNotFoundException missing) {
            return false;
        }
    }
}
