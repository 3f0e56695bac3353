package darkrim.trace;

/** Decides whether facets in a box can matter. */
@FunctionalInterface
public interface BoxTest {
    /**
     * Whether a box must be looked into.
     *
     * @param box holds the box
     * @param at where its six bounds begin: least x, y, z, greatest x, y, z, mm
     */
    boolean matters(double[] box, int at);
}
