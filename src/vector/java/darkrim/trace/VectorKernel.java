package darkrim.trace;

import jdk.incubator.vector.DoubleVector;
import jdk.incubator.vector.FloatVector;
import jdk.incubator.vector.IntVector;
import jdk.incubator.vector.LongVector;
import jdk.incubator.vector.VectorMask;
import jdk.incubator.vector.VectorOperators;
import jdk.incubator.vector.VectorSpecies;

/**
 * Looks at the boxes of all children of a node at once, and tries four facets at once. Everything that is a vector is static and final or stays within a method: only
 * then the compiler keeps it in registers.
 */
final class VectorKernel extends Kernel {
    private static final VectorSpecies<Float> FLOATS = FloatVector.SPECIES_256;
    private static final VectorSpecies<Integer> INTS = IntVector.SPECIES_256;
    /** From JDK 19 on the lanes of a mask become the bits of a number by one instruction; before, adding powers of two is faster. */
    private static final boolean MASKS = Runtime.version().feature() >= 19;

    private static final IntVector BITS = IntVector.fromArray(INTS, new int[] {1, 2, 4, 8, 16, 32, 64, 128}, 0);

    private static final VectorSpecies<Double> DOUBLES = DoubleVector.SPECIES_256;
    private static final int LANES = 4;
    private static final LongVector LONG_BITS =
            LongVector.fromArray(LongVector.SPECIES_256, new long[] {1, 2, 4, 8}, 0);

    /**
     * For processors with vectors of 256 bits; on shorter ones Java makes objects of these, which is many times slower than no vectors.
     *
     * @throws UnsupportedOperationException if this processor has none
     */
    VectorKernel() {
        if (FloatVector.SPECIES_PREFERRED.length() < FLOATS.length()
                || DoubleVector.SPECIES_PREFERRED.length() < DOUBLES.length()) {
            throw new UnsupportedOperationException("vectors of 256 bits");
        }
    }

    /**
     * Which of four facets the ray may cross, as bits: those whose edge functions have no two signs. The operations of
     * {@link FacetTree#meet}, one for one, so that none is lost: negation rounds nothing.
     */
    private static int crossed(double[] p, int base, int facets, Ray ray) {
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
        return MASKS
                ? ~(int) missed.toLong()
                : ~(int) LONG_BITS
                        .blend(0, missed.not().cast(LongVector.SPECIES_256))
                        .reduceLanes(VectorOperators.ADD);
    }

    private static DoubleVector cross(DoubleVector ax, DoubleVector ay, DoubleVector bx, DoubleVector by) {
        DoubleVector product = ay.mul(bx).neg();
        return ax.fma(by, product).sub(ay.fma(bx, product));
    }

    @Override
    int nearest(FacetTree tree, Ray ray) {
        if (tree.order.length == 0 || !ray.enter(tree)) {
            return -1;
        }
        final float[] b = tree.borders;
        final int[] children = tree.children;
        final long[] stack = ray.stack;
        final int[] entries = ray.entries;
        final int nearX = ray.nearX;
        final int nearY = ray.nearY;
        final int nearZ = ray.nearZ;
        final int farX = ray.farX;
        final int farY = ray.farY;
        final int farZ = ray.farZ;
        final FloatVector inverseX = FloatVector.broadcast(FLOATS, ray.inverseX);
        final FloatVector inverseY = FloatVector.broadcast(FLOATS, ray.inverseY);
        final FloatVector inverseZ = FloatVector.broadcast(FLOATS, ray.inverseZ);
        final FloatVector offsetX = FloatVector.broadcast(FLOATS, ray.offsetX);
        final FloatVector offsetY = FloatVector.broadcast(FLOATS, ray.offsetY);
        final FloatVector offsetZ = FloatVector.broadcast(FLOATS, ray.offsetZ);
        int depth = 0;
        int reach = ray.reach();
        int child = 0;
        while (true) {
            if (child >= 0) {
                int at = Nodes.BORDERS * child;
                IntVector in = FloatVector.fromArray(FLOATS, b, at + nearX)
                        .fma(inverseX, offsetX)
                        .reinterpretAsInts()
                        .max(FloatVector.fromArray(FLOATS, b, at + nearY)
                                .fma(inverseY, offsetY)
                                .reinterpretAsInts())
                        .max(FloatVector.fromArray(FLOATS, b, at + nearZ)
                                .fma(inverseZ, offsetZ)
                                .reinterpretAsInts())
                        .max(0);
                IntVector out = FloatVector.fromArray(FLOATS, b, at + farX)
                        .fma(inverseX, offsetX)
                        .reinterpretAsInts()
                        .min(FloatVector.fromArray(FLOATS, b, at + farY)
                                .fma(inverseY, offsetY)
                                .reinterpretAsInts())
                        .min(FloatVector.fromArray(FLOATS, b, at + farZ)
                                .fma(inverseZ, offsetZ)
                                .reinterpretAsInts())
                        .min(reach);
                VectorMask<Integer> entered = in.compare(VectorOperators.LE, out);
                int bits = MASKS
                        ? (int) entered.toLong()
                        : BITS.blend(0, entered.not()).reduceLanes(VectorOperators.ADD);
                in.intoArray(entries, 0);
                int base = depth;
                while (bits != 0) {
                    int slot = Integer.numberOfTrailingZeros(bits);
                    bits &= bits - 1;
                    long moved = ((long) entries[slot] << 32) | (children[Nodes.WIDTH * child + slot] & 0xffffffffL);
                    int j = depth++;
                    while (j > base && stack[j - 1] < moved) {
                        stack[j] = stack[j - 1];
                        j--;
                    }
                    stack[j] = moved;
                }
            } else {
                int first = Nodes.firstOfLeaf(child);
                int facets = Nodes.facetsOfLeaf(child);
                int at = 0;
                do {
                    int bits = crossed(tree.corners, 9 * first + at, facets, ray)
                            & (1 << Math.min(LANES, facets - at)) - 1;
                    while (bits != 0) {
                        int i = at + Integer.numberOfTrailingZeros(bits);
                        bits &= bits - 1;
                        if (tree.meet(ray, first, facets, i)) {
                            reach = ray.reach();
                        }
                    }
                    at += LANES;
                } while (at < facets);
            }
            do {
                if (depth == 0) {
                    return ray.facet;
                }
                depth--;
            } while ((int) (stack[depth] >>> 32) > reach);
            child = (int) stack[depth];
        }
    }

    @Override
    boolean blocked(FacetTree tree, Ray ray) {
        if (tree.order.length == 0 || !ray.enter(tree)) {
            return false;
        }
        final float[] b = tree.borders;
        final int[] children = tree.children;
        final long[] stack = ray.stack;
        final int nearX = ray.nearX;
        final int nearY = ray.nearY;
        final int nearZ = ray.nearZ;
        final int farX = ray.farX;
        final int farY = ray.farY;
        final int farZ = ray.farZ;
        final FloatVector inverseX = FloatVector.broadcast(FLOATS, ray.inverseX);
        final FloatVector inverseY = FloatVector.broadcast(FLOATS, ray.inverseY);
        final FloatVector inverseZ = FloatVector.broadcast(FLOATS, ray.inverseZ);
        final FloatVector offsetX = FloatVector.broadcast(FLOATS, ray.offsetX);
        final FloatVector offsetY = FloatVector.broadcast(FLOATS, ray.offsetY);
        final FloatVector offsetZ = FloatVector.broadcast(FLOATS, ray.offsetZ);
        int depth = 0;
        int reach = ray.reach();
        int child = 0;
        while (true) {
            if (child >= 0) {
                int at = Nodes.BORDERS * child;
                IntVector in = FloatVector.fromArray(FLOATS, b, at + nearX)
                        .fma(inverseX, offsetX)
                        .reinterpretAsInts()
                        .max(FloatVector.fromArray(FLOATS, b, at + nearY)
                                .fma(inverseY, offsetY)
                                .reinterpretAsInts())
                        .max(FloatVector.fromArray(FLOATS, b, at + nearZ)
                                .fma(inverseZ, offsetZ)
                                .reinterpretAsInts())
                        .max(0);
                IntVector out = FloatVector.fromArray(FLOATS, b, at + farX)
                        .fma(inverseX, offsetX)
                        .reinterpretAsInts()
                        .min(FloatVector.fromArray(FLOATS, b, at + farY)
                                .fma(inverseY, offsetY)
                                .reinterpretAsInts())
                        .min(FloatVector.fromArray(FLOATS, b, at + farZ)
                                .fma(inverseZ, offsetZ)
                                .reinterpretAsInts())
                        .min(reach);
                VectorMask<Integer> entered = in.compare(VectorOperators.LE, out);
                int bits = MASKS
                        ? (int) entered.toLong()
                        : BITS.blend(0, entered.not()).reduceLanes(VectorOperators.ADD);
                while (bits != 0) {
                    int slot = Integer.numberOfTrailingZeros(bits);
                    bits &= bits - 1;
                    stack[depth++] = children[Nodes.WIDTH * child + slot];
                }
            } else {
                int first = Nodes.firstOfLeaf(child);
                int facets = Nodes.facetsOfLeaf(child);
                int at = 0;
                do {
                    int bits = crossed(tree.corners, 9 * first + at, facets, ray)
                            & (1 << Math.min(LANES, facets - at)) - 1;
                    while (bits != 0) {
                        int i = at + Integer.numberOfTrailingZeros(bits);
                        bits &= bits - 1;
                        if (tree.meet(ray, first, facets, i)) {
                            return true;
                        }
                    }
                    at += LANES;
                } while (at < facets);
            }
            if (depth == 0) {
                return false;
            }
            depth--;
            child = (int) stack[depth];
        }
    }

    @Override
    String description() {
        return "the vector kernel";
    }
}
