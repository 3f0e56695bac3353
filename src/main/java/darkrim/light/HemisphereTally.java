package darkrim.light;

/**
 * What a bundle of rays from one point met: sums, by the number of the surface, then the pupil, the open and the inside of parts.
 * Mutable while it is filled, by one thread.
 */
public final class HemisphereTally {
    private final int surfaces;
    private final long rays;
    private final long[] seen;
    private final long[] lit;
    private final double[] photons;
    private final double[] watts;
    private final double[] reflectedPhotons;
    private final double[] reflectedWatts;

    HemisphereTally(int surfaces, long rays) {
        this.surfaces = surfaces;
        this.rays = rays;
        seen = new long[surfaces + 3];
        lit = new long[surfaces + 3];
        photons = new double[surfaces + 3];
        watts = new double[surfaces + 3];
        reflectedPhotons = new double[surfaces + 3];
        reflectedWatts = new double[surfaces + 3];
    }

    /** How many things are told apart: the surfaces and three more. */
    public int size() {
        return seen.length;
    }

    /** The number that stands for the pupil: light of the beam comes from there. */
    public int pupil() {
        return surfaces;
    }

    /** The number that stands for the open: no part is met, and the beam does not come from there. */
    public int open() {
        return surfaces + 1;
    }

    /** The number that stands for the inside of solid parts: the point lies within one. */
    public int inside() {
        return surfaces + 2;
    }

    /** How many rays, spread by the cosine. */
    public long rays() {
        return rays;
    }

    /** How many rays met it first. */
    public long seen(int number) {
        return seen[number];
    }

    /** Of these, at how many a point of the pupil, drawn at random, shone on what was met. */
    public long lit(int number) {
        return lit[number];
    }

    /** Sum of the photon radiance emitted there, photons/(s m2 sr). */
    public double photons(int number) {
        return photons[number];
    }

    /** Sum of the radiance emitted there, W/(m2 sr). */
    public double watts(int number) {
        return watts[number];
    }

    /** Sum of the photon radiance of warm light reflected there, photons/(s m2 sr). */
    public double reflectedPhotons(int number) {
        return reflectedPhotons[number];
    }

    /** Sum of the radiance of warm light reflected there, W/(m2 sr). */
    public double reflectedWatts(int number) {
        return reflectedWatts[number];
    }

    void see(int number) {
        seen[number]++;
    }

    void light(int number) {
        lit[number]++;
    }

    void emit(int number, double photonRadiance, double radiance) {
        photons[number] += photonRadiance;
        watts[number] += radiance;
    }

    void reflect(int number, double photonRadiance, double radiance) {
        reflectedPhotons[number] += photonRadiance;
        reflectedWatts[number] += radiance;
    }
}
