package darkrim.trace;

/** Some references, side by side, that become a child of a node while the tree is built. */
final class Subset {
    private final int first;
    private final int end;
    private final int[] box = new int[6];
    private final double halfArea;
    private final int depth;

    /**
     * @param references all
     * @param first the first of these
     * @param end the place after the last
     * @param depth how many splits made it
     */
    Subset(References references, int first, int end, int depth) {
        this.first = first;
        this.end = end;
        this.depth = depth;
        Boxes.empty(box, 0);
        for (int i = first; i < end; i++) {
            Boxes.grow(box, 0, references.boxes, 6 * i);
        }
        halfArea = Boxes.halfArea(box, 0);
    }

    int first() {
        return first;
    }

    int end() {
        return end;
    }

    int size() {
        return end - first;
    }

    int depth() {
        return depth;
    }

    /** Six borders about all of them. */
    int[] box() {
        return box;
    }

    /** Half the surface of the box, square steps. */
    double halfArea() {
        return halfArea;
    }
}
