package darkrim.trace;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.concurrent.ForkJoinTask;
import java.util.concurrent.RecursiveTask;

/**
 * Builds the tree from the top by a binned surface-area heuristic (MacDonald and Booth, "Heuristics for ray tracing using space
 * subdivision", The Visual Computer 6, 1990; binning after Wald, "On fast construction of SAH-based bounding volume hierarchies", 2007).
 * Where there are many facets, the children of a node come about by splitting that of the largest area until there are enough; a
 * {@link Part} of few is built more carefully.
 *
 * <p>Subtrees are built side by side; where they are cut does not depend on the number of threads, nor does the tree.
 */
final class TreeBuilder extends RecursiveTask<Nodes> {
    private static final long serialVersionUID = 1;
    /** So many facets are built in one go. */
    private static final int PART = 1 << 14;

    private final transient References references;
    private final transient Subset all;

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
        Bins bins = new Bins();
        if (all.size() <= PART) {
            return new Part(references, bins, all).nodes();
        }
        List<Subset> children = children(bins);
        List<TreeBuilder> subtrees = new ArrayList<>();
        for (Subset child : children) {
            subtrees.add(new TreeBuilder(references, child));
        }
        ForkJoinTask.invokeAll(subtrees);
        Nodes nodes = new Nodes(1);
        int node = nodes.add();
        for (int slot = 0; slot < children.size(); slot++) {
            nodes.setChild(
                    node,
                    slot,
                    children.get(slot).box(),
                    nodes.append(subtrees.get(slot).join()));
        }
        return nodes;
    }

    /** Parts all until there are enough parts. */
    private List<Subset> children(Bins bins) {
        List<Subset> children = new ArrayList<>(Nodes.WIDTH);
        children.add(all);
        while (children.size() < Nodes.WIDTH) {
            int largest = -1;
            for (int i = 0; i < children.size(); i++) {
                // What fits a part is better parted there.
                if (children.get(i).size() > PART
                        && (largest < 0
                                || children.get(i).halfArea()
                                        > children.get(largest).halfArea())) {
                    largest = i;
                }
            }
            if (largest < 0) {
                break;
            }
            Subset parted = children.get(largest);
            int middle = Splits.split(references, bins, parted.first(), parted.end(), parted.depth());
            children.set(largest, new Subset(references, parted.first(), middle, parted.depth() + 1));
            children.add(new Subset(references, middle, parted.end(), parted.depth() + 1));
        }
        // As in a part: the largest is looked at first.
        children.sort(Comparator.comparingDouble(Subset::halfArea));
        return children;
    }
}
