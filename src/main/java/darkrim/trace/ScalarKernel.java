package darkrim.trace;

/** Looks at one box after the other; runs on every JDK. */
final class ScalarKernel extends Kernel {
    @Override
    int nearest(FacetTree tree, Ray ray) {
        if (tree.order.length == 0 || !ray.enter(tree)) {
            return -1;
        }
        final long[] stack = ray.stack;
        int depth = 0;
        int reach = ray.reach();
        int child = 0;
        while (true) {
            if (child >= 0) {
                int base = depth;
                depth = look(tree, ray, child, reach, depth);
                // Nearest on top.
                for (int i = base + 1; i < depth; i++) {
                    long moved = stack[i];
                    int j = i;
                    while (j > base && stack[j - 1] < moved) {
                        stack[j] = stack[j - 1];
                        j--;
                    }
                    stack[j] = moved;
                }
            } else {
                int first = Nodes.firstOfLeaf(child);
                int facets = Nodes.facetsOfLeaf(child);
                for (int i = 0; i < facets; i++) {
                    if (tree.meet(ray, first, facets, i)) {
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
        final long[] stack = ray.stack;
        int depth = 0;
        int reach = ray.reach();
        int child = 0;
        while (true) {
            if (child >= 0) {
                depth = look(tree, ray, child, reach, depth);
            } else {
                int first = Nodes.firstOfLeaf(child);
                int facets = Nodes.facetsOfLeaf(child);
                for (int i = 0; i < facets; i++) {
                    if (tree.meet(ray, first, facets, i)) {
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

    /** Puts the children that the ray enters on the stack. */
    private static int look(FacetTree tree, Ray ray, int node, int reach, int depth) {
        final float[] b = tree.borders;
        final long[] stack = ray.stack;
        int at = Nodes.BORDERS * node;
        int nearX = at + ray.nearX;
        int nearY = at + ray.nearY;
        int nearZ = at + ray.nearZ;
        int farX = at + ray.farX;
        int farY = at + ray.farY;
        int farZ = at + ray.farZ;
        float inverseX = ray.inverseX;
        float inverseY = ray.inverseY;
        float inverseZ = ray.inverseZ;
        float offsetX = ray.offsetX;
        float offsetY = ray.offsetY;
        float offsetZ = ray.offsetZ;
        int next = depth;
        for (int slot = 0; slot < Nodes.WIDTH; slot++) {
            int child = tree.children[Nodes.WIDTH * node + slot];
            if (child == 0) {
                break;
            }
            int in = Math.max(
                    Math.max(bits(b[nearX + slot] * inverseX + offsetX), bits(b[nearY + slot] * inverseY + offsetY)),
                    Math.max(bits(b[nearZ + slot] * inverseZ + offsetZ), 0));
            int out = Math.min(
                    Math.min(bits(b[farX + slot] * inverseX + offsetX), bits(b[farY + slot] * inverseY + offsetY)),
                    Math.min(bits(b[farZ + slot] * inverseZ + offsetZ), reach));
            if (in <= out) {
                stack[next++] = ((long) in << 32) | (child & 0xffffffffL);
            }
        }
        return next;
    }

    /** For comparing, see {@link Kernel}: of whole numbers the greater is one instruction, of floats, with their zeros and what is none, five. */
    private static int bits(float entry) {
        return Float.floatToRawIntBits(entry);
    }

    @Override
    String description() {
        return KernelChoice.hasVectors()
                ? "the scalar kernel"
                : "the scalar kernel (java --add-modules jdk.incubator.vector -jar ... switches on a faster one, if the processor"
                        + " has vectors of 256 bits)";
    }
}
