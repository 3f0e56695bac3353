package darkrim.study.rejection;

/**
 * Light on the receivers after some number of reflections, over the irradiance of the body.
 *
 * @param order number of reflections, 0 for direct light
 * @param evidence how it is known
 * @param value the share; 0 where none was found
 * @param error its standard error
 * @param atMost it is no larger, at the confidence that all bounds of a direction have together; infinite where no bound is known
 */
public record OrderLight(int order, Evidence evidence, double value, double error, double atMost) {
    /** How a share is known. */
    public enum Evidence {
        /** It is 0, by geometry. */
        PROVED,
        /** It was sampled and some was found. */
        SAMPLED,
        /** It was sampled and none was found: it lies below the bound, if there is one. */
        NONE_FOUND
    }

    /** Whether there is a bound. */
    public boolean isBounded() {
        return atMost < Double.POSITIVE_INFINITY;
    }

    /** A proved zero. */
    static OrderLight proved(int order) {
        return new OrderLight(order, Evidence.PROVED, 0, 0, 0);
    }
}
