package darkrim.trace;

import jdk.incubator.vector.ByteVector;
import jdk.incubator.vector.DoubleVector;
import jdk.incubator.vector.FloatVector;
import jdk.incubator.vector.IntVector;
import jdk.incubator.vector.VectorMask;
import jdk.incubator.vector.VectorOperators;
import jdk.incubator.vector.VectorSpecies;

/**
 * Looks at the boxes of all children of a node at once, and tries four facets at once. Everything that is a vector is static and final or stays within a method: only
 * then the compiler keeps it in registers.
 */
final class VectorKernel extends Kernel {
    private static final VectorSpecies<Float> FLOATS = FloatVector.SPECIES_256;
    /** From JDK 19 on the lanes of a mask become the bits of a number by one instruction. */
    static final boolean MASKS = Runtime.version().feature() >= 19;

    /** {@link #slots} has so many bits for each slot, by its logarithm. */
    private static final int SLOT_SHIFT = MASKS ? 0 : 3;

    private static final long LOWEST_BITS = 0x0101010101010101L;

    /**
     * For processors with vectors of 256 bits; on shorter ones Java makes objects of these, which is many times slower than no vectors.
     *
     * @throws UnsupportedOperationException if this processor has none
     */
    VectorKernel() {
        if (FloatVector.SPECIES_PREFERRED.length() < FLOATS.length()
                || DoubleVector.SPECIES_PREFERRED.length() < FourFacets.LANES) {
            throw new UnsupportedOperationException("vectors of 256 bits");
        }
    }

    /** Which children are entered: one bit of the number for each. */
    private static long slots(VectorMask<Integer> entered) {
        if (MASKS) {
            return entered.toLong();
        }
        // A byte each, taken from the vector as two numbers: before JDK 19 the shortest way.
        IntVector bytes = ((ByteVector) entered.toVector().convertShape(VectorOperators.I2B, ByteVector.SPECIES_64, 0))
                .reinterpretAsInts();
        return (((long) bytes.lane(1) << 32) | (bytes.lane(0) & 0xffffffffL)) & LOWEST_BITS;
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
                long bits = slots(entered);
                in.intoArray(entries, 0);
                int base = depth;
                while (bits != 0) {
                    int slot = Long.numberOfTrailingZeros(bits) >>> SLOT_SHIFT;
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
                    int bits = FourFacets.crossed(tree.corners, 9 * first + at, facets, ray)
                            & (1 << Math.min(FourFacets.LANES, facets - at)) - 1;
                    while (bits != 0) {
                        int i = at + Integer.numberOfTrailingZeros(bits);
                        bits &= bits - 1;
                        if (tree.meet(ray, first, facets, i)) {
                            reach = ray.reach();
                        }
                    }
                    at += FourFacets.LANES;
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
                long bits = slots(entered);
                while (bits != 0) {
                    int slot = Long.numberOfTrailingZeros(bits) >>> SLOT_SHIFT;
                    bits &= bits - 1;
                    stack[depth++] = children[Nodes.WIDTH * child + slot];
                }
            } else {
                int first = Nodes.firstOfLeaf(child);
                int facets = Nodes.facetsOfLeaf(child);
                int at = 0;
                do {
                    int bits = FourFacets.stopping(tree.corners, 9 * first + at, facets, ray)
                            & (1 << Math.min(FourFacets.LANES, facets - at)) - 1;
                    while (bits != 0) {
                        int i = at + Integer.numberOfTrailingZeros(bits);
                        bits &= bits - 1;
                        if (tree.planes[first + i] != ray.skippedPlane) {
                            return true;
                        }
                    }
                    at += FourFacets.LANES;
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
