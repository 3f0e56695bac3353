package darkrim.study.advice;

/**
 * Where a requirement changes sides when one dimension moves away from a start.
 *
 * @param requirement the requirement
 * @param dimension the dimension
 * @param up whether the dimension grows
 * @param near the farthest value known to be on the side of the start
 * @param far the nearest value known to be on the other side
 */
record Flip(String requirement, String dimension, boolean up, double near, double far) {
    /** How far the other side is from a start, positive. */
    double distance(double start) {
        return Math.abs(far - start);
    }
}
