package darkrim.trace;

import jdk.incubator.vector.FloatVector;
import jdk.incubator.vector.IntVector;
import jdk.incubator.vector.VectorMask;
import jdk.incubator.vector.VectorOperators;
import jdk.incubator.vector.VectorSpecies;

/** Looks at the boxes of all children of a node at once. */
final class VectorKernel extends Kernel {
    private static final VectorSpecies<Float> FLOATS = FloatVector.SPECIES_256;
    private static final VectorSpecies<Integer> INTS = IntVector.SPECIES_256;
    private static final IntVector SLOTS = IntVector.broadcast(INTS, 0).addIndex(1);
    private static final boolean MASKS = Runtime.version().feature() >= 19;
    private static final IntVector BITS = IntVector.fromArray(INTS, new int[] {1, 2, 4, 8, 16, 32, 64, 128}, 0);

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
                for (int i = Nodes.firstOfLeaf(child), end = Nodes.endOfLeaf(child); i < end; i++) {
                    if (tree.meet(ray, i)) {
                        reach = ray.reach();
                    }
                }
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
                for (int i = Nodes.firstOfLeaf(child), end = Nodes.endOfLeaf(child); i < end; i++) {
                    if (tree.meet(ray, i)) {
                        return true;
                    }
                }
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
        return "vector";
    }
}
