package darkrim.trace;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.ForkJoinTask;
import java.util.concurrent.RecursiveTask;

/**
 * Builds the tree from the top by a binned surface-area heuristic (MacDonald and Booth, "Heuristics for ray tracing using space
 * subdivision", The Visual Computer 6, 1990; binning after Wald, "On fast construction of SAH-based bounding volume hierarchies", 2007). The
 * children of a node come about by splitting that of the largest area until there are enough (Wald, Benthin, Boulos, "Getting rid of
 * packets", 2008).
 *
 * <p>Large parts are built side by side; where they are cut does not depend on the number of threads, nor does the tree.
 */
final class TreeBuilder extends RecursiveTask<Nodes> {
    private static final long serialVersionUID = 1;
    /** What it costs to look at the children of a node, in facets tested. */
    private static final double NODE_COST = 1;
    /** A part of so many facets is built on its own. */
    private static final int PART = 1 << 14;
    /**
     * From this depth on nodes are halved by number, so that no input makes the tree too deep: nine coordinates a facet fit an array for
     * fewer than 2^28 facets, which 28 halvings part.
     */
    private static final int HEURISTIC_DEPTH = FacetTree.DEEPEST - 28;

    private final transient References references;
    private final transient Subset all;
    private final transient Bins bins = new Bins();
    private transient Nodes nodes;

    private TreeBuilder(References references, Subset all) {
        this.references = references;
        this.all = all;
    }

    /** Sorts the references into leaves; returns the nodes over them. */
    static Nodes build(References references) {
        int count = references.facets.length;
        return new TreeBuilder(references, new Subset(references, 0, count, 0)).invoke();
    }

    @Override
    protected Nodes compute() {
        nodes = new Nodes(Math.max(1, Math.min(all.size(), PART) / 4));
        node(all);
        return nodes;
    }

    private void node(Subset set) {
        int node = nodes.add();
        List<Subset> children = children(set);
        List<TreeBuilder> parts = new ArrayList<>();
        for (Subset child : children) {
            if (child.size() > PART) {
                parts.add(new TreeBuilder(references, child));
            }
        }
        if (parts.size() > 1) {
            ForkJoinTask.invokeAll(parts);
        } else {
            parts.forEach(TreeBuilder::invoke);
        }
        int part = 0;
        for (int slot = 0; slot < children.size(); slot++) {
            Subset child = children.get(slot);
            int link;
            if (child.leaf()) {
                link = Nodes.leaf(child.first(), child.size());
            } else if (child.size() > PART) {
                link = nodes.append(parts.get(part++).join());
            } else {
                link = nodes.count();
                node(child);
            }
            nodes.setChild(node, slot, child.box(), link);
        }
    }

    /** Parts a set until it has enough parts, or all are leaves. */
    private List<Subset> children(Subset set) {
        List<Subset> children = new ArrayList<>(Nodes.WIDTH);
        children.add(set);
        while (children.size() < Nodes.WIDTH) {
            int largest = -1;
            double area = -1;
            for (int i = 0; i < children.size(); i++) {
                Subset child = children.get(i);
                if (!child.leaf() && child.halfArea() > area) {
                    area = child.halfArea();
                    largest = i;
                }
            }
            if (largest < 0) {
                break;
            }
            Subset parted = children.get(largest);
            int middle = split(parted);
            if (middle == parted.first()) {
                parted.keepTogether();
            } else {
                children.set(largest, new Subset(references, parted.first(), middle, parted.depth() + 1));
                children.add(new Subset(references, middle, parted.end(), parted.depth() + 1));
            }
        }
        return children;
    }

    /** Sorts the facets of a set; returns where the second part begins, or the first place to leave a leaf. */
    private int split(Subset set) {
        int facets = set.size();
        double best = Double.POSITIVE_INFINITY;
        if (set.depth() < HEURISTIC_DEPTH) {
            bins.fill(references, set.first(), set.end());
            best = bins.cost();
        }
        boolean pays = NODE_COST + best / set.halfArea() < facets;
        if (!pays && facets <= Nodes.LARGEST_LEAF) {
            return set.first();
        }
        return best == Double.POSITIVE_INFINITY ? set.first() + facets / 2 : partition(set.first(), set.end());
    }

    /** Moves the facets below the split that was weighed last before those above it. */
    private int partition(int first, int end) {
        int left = first;
        int right = end;
        while (left < right) {
            if (bins.below(references, left)) {
                left++;
            } else {
                right--;
                if (bins.below(references, right)) {
                    references.swap(left, right);
                    left++;
                }
            }
        }
        return left;
    }
}
