package darkrim.shadow;

/**
 * Shares from 0 to 1 that fill a box of up to eight dimensions evenly, without chance: the multiples of the square roots of primes, without their
 * whole parts (R. D. Richtmyer, "The evaluation of definite integrals, and a quasi-Monte-Carlo method based on the properties of algebraic numbers", 1951; from
 * memory). Mutable, for one thread.
 */
final class EvenShares {
    private static final int[] PRIMES = {2, 3, 5, 7, 11, 13, 17, 19};

    private int point;
    private int dimension;

    /** Goes on to the next point. */
    void advance() {
        point++;
        dimension = 0;
    }

    /** The next share of this point; a point has eight. */
    double next() {
        double share = point * Math.sqrt(PRIMES[dimension++]);
        return share - Math.floor(share);
    }

    /** One of some numbers from 0 on, each as often as the others. */
    int next(int count) {
        return Math.min(count - 1, (int) (next() * count));
    }
}
