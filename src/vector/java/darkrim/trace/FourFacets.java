package darkrim.trace;

import jdk.incubator.vector.DoubleVector;
import jdk.incubator.vector.LongVector;
import jdk.incubator.vector.VectorMask;
import jdk.incubator.vector.VectorOperators;
import jdk.incubator.vector.VectorSpecies;

/** Tests four facets of a leaf at once, by the operations of {@link FacetTree#meet}, one for one. */
final class FourFacets {
    static final int LANES = 4;

    private static final VectorSpecies<Double> DOUBLES = DoubleVector.SPECIES_256;
    private static final LongVector LONG_BITS =
            LongVector.fromArray(LongVector.SPECIES_256, new long[] {1, 2, 4, 8}, 0);

    private FourFacets() {}

    /**
     * Which of four facets the ray may cross, as bits: those whose edge functions have no two signs. None is lost: negation rounds nothing.
     *
     * @param p corners of a tree
     * @param base where the first of the four begins
     * @param facets facets in the leaf
     */
    static int crossed(double[] p, int base, int facets, Ray ray) {
        return tested(p, base, facets, ray, false);
    }

    /**
     * Which of four facets the ray crosses within its length, as bits, also those in the plane that it skips: {@link #crossed}, and the distance
     * as well. Where the edge functions add up to 0, that is infinite or no number and compares as a miss.
     */
    static int stopping(double[] p, int base, int facets, Ray ray) {
        return tested(p, base, facets, ray, true);
    }

    private static int tested(double[] p, int base, int facets, Ray ray, boolean withDistance) {
        int x = base + facets * ray.axisX;
        int y = base + facets * ray.axisY;
        int z = base + facets * ray.axisZ;
        int b = 3 * facets;
        int c = 6 * facets;
        DoubleVector shearX = DoubleVector.broadcast(DOUBLES, ray.shearX);
        DoubleVector shearY = DoubleVector.broadcast(DOUBLES, ray.shearY);
        DoubleVector az = DoubleVector.fromArray(DOUBLES, p, z).sub(ray.startZ);
        DoubleVector bz = DoubleVector.fromArray(DOUBLES, p, z + b).sub(ray.startZ);
        DoubleVector cz = DoubleVector.fromArray(DOUBLES, p, z + c).sub(ray.startZ);
        DoubleVector ax = DoubleVector.fromArray(DOUBLES, p, x).sub(ray.startX).sub(shearX.mul(az));
        DoubleVector ay = DoubleVector.fromArray(DOUBLES, p, y).sub(ray.startY).sub(shearY.mul(az));
        DoubleVector bx =
                DoubleVector.fromArray(DOUBLES, p, x + b).sub(ray.startX).sub(shearX.mul(bz));
        DoubleVector by =
                DoubleVector.fromArray(DOUBLES, p, y + b).sub(ray.startY).sub(shearY.mul(bz));
        DoubleVector cx =
                DoubleVector.fromArray(DOUBLES, p, x + c).sub(ray.startX).sub(shearX.mul(cz));
        DoubleVector cy =
                DoubleVector.fromArray(DOUBLES, p, y + c).sub(ray.startY).sub(shearY.mul(cz));
        DoubleVector u = cross(cx, cy, bx, by);
        DoubleVector v = cross(ax, ay, cx, cy);
        DoubleVector w = cross(bx, by, ax, ay);
        VectorMask<Double> negative = u.lt(0).or(v.lt(0)).or(w.lt(0));
        VectorMask<Double> positive = u.compare(VectorOperators.GT, 0)
                .or(v.compare(VectorOperators.GT, 0))
                .or(w.compare(VectorOperators.GT, 0));
        VectorMask<Double> missed = negative.and(positive);
        if (withDistance) {
            if (missed.allTrue()) {
                return 0;
            }
            DoubleVector sum = u.add(v).add(w);
            DoubleVector distance =
                    u.mul(az).add(v.mul(bz)).add(w.mul(cz)).mul(ray.shearZ).div(sum);
            missed = distance.compare(VectorOperators.GT, 0)
                    .and(distance.lt(ray.farthest))
                    .andNot(missed)
                    .not();
        }
        return VectorKernel.MASKS
                ? ~(int) missed.toLong()
                : ~(int) LONG_BITS
                        .blend(0, missed.not().cast(LongVector.SPECIES_256))
                        .reduceLanes(VectorOperators.ADD);
    }

    private static DoubleVector cross(DoubleVector ax, DoubleVector ay, DoubleVector bx, DoubleVector by) {
        DoubleVector product = ay.mul(bx).neg();
        return ax.fma(by, product).sub(ay.fma(bx, product));
    }
}
