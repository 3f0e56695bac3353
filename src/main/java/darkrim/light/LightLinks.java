package darkrim.light;

import java.util.Arrays;
import java.util.List;

/**
 * Links between pieces of a receiver and pieces of what may send it once-reflected light. Every pair of a point of the receiver and a point of a
 * sender belongs to one link, and a link is drawn in proportion to the most that can come by it: nothing is looked for where little can come from.
 * Links as in Hanrahan, Salzman, Aupperle, "A rapid hierarchical radiosity algorithm", SIGGRAPH 1991; here they only steer samples, and each sample is
 * weighted by the density with which it was drawn.
 *
 * <p>By a link between pieces of area A_to and A_from, of a receiver of area A, comes at most S = (A_to / A) s min(1, g A_from), where s is the largest
 * sample of the sender and g the {@link LinkBound}: 1 stands for all of the hemisphere. Links are drawn with chance S over the sum of all S. Then no
 * sample is larger than that sum. Immutable.
 */
final class LightLinks {
    /** Share of the samples that are drawn by what can come at most; the rest by what is likely. */
    private static final double BY_MOST = 0.75;

    private final TrianglePieces pieces;
    private final int[] to;
    private final int[] from;
    private final int[] surface;
    private final double[] upTo;
    private final double[] factor;
    private final boolean[] wide;
    private final double largest;

    /** One link. */
    record Link(int to, int from, int surface, double most, double likely, double factor, boolean wide) {}

    /**
     * @param links sorted by piece of the receiver
     */
    LightLinks(TrianglePieces pieces, List<Link> links) {
        this.pieces = pieces;
        int count = links.size();
        to = new int[count];
        from = new int[count];
        surface = new int[count];
        upTo = new double[count];
        factor = new double[count];
        wide = new boolean[count];
        double most = 0;
        double likely = 0;
        for (Link link : links) {
            most += link.most();
            likely += link.likely();
        }
        double byLikely = likely > 0 ? (1 - BY_MOST) / likely : 0;
        double byMost = (likely > 0 ? BY_MOST : 1) / most;
        double sum = 0;
        for (int i = 0; i < count; i++) {
            Link link = links.get(i);
            to[i] = link.to();
            from[i] = link.from();
            surface[i] = link.surface();
            wide[i] = link.wide();
            double chance = byMost * link.most() + byLikely * link.likely();
            sum += chance;
            upTo[i] = sum;
            factor[i] = link.factor() / chance;
        }
        largest = count == 0 ? 0 : (1 + 1e-9) / byMost;
    }

    /** How many there are. */
    int count() {
        return upTo.length;
    }

    /** No sample is larger, sr. */
    double largest() {
        return largest;
    }

    /** The link at a share (0 to 1) of the sum. */
    int at(double share) {
        int found = Arrays.binarySearch(upTo, share * upTo[upTo.length - 1]);
        return Math.min(upTo.length - 1, found >= 0 ? found + 1 : -found - 1);
    }

    /** The pieces. */
    TrianglePieces pieces() {
        return pieces;
    }

    /** Piece of the receiver. */
    int to(int link) {
        return to[link];
    }

    /** Piece of the sender. */
    int from(int link) {
        return from[link];
    }

    /** Surface of the sender. */
    int surface(int link) {
        return surface[link];
    }

    /** Whether the sender is looked for over the hemisphere, by cosine-distributed directions; otherwise by points of its area. */
    boolean isWide(int link) {
        return wide[link];
    }

    /**
     * What a sample counts for: one over the density of the points that are drawn, over the receiver's area. In mm2 of the sender, to be multiplied
     * by cos(a) cos(b) / (pi d^2); a plain number where the link is wide.
     */
    double factor(int link) {
        return factor[link];
    }

    /** Places a point of the sender, equal areas to equal areas. */
    void placeFrom(int link, double s, double t, double[] into) {
        double root = Math.sqrt(s);
        double second = root * (1 - t);
        double third = root * t;
        int piece = from[link];
        for (int axis = 0; axis < 3; axis++) {
            into[axis] = (1 - root) * pieces.corner(piece, 0, axis)
                    + second * pieces.corner(piece, 1, axis)
                    + third * pieces.corner(piece, 2, axis);
        }
    }

    /** The weight of the receiving facet's first or second corner at a point of the receiving piece, given by two of the piece's own weights. */
    double weightTo(int link, double first, double second, int which) {
        int piece = to[link];
        return first * pieces.weight(piece, 0, which)
                + second * pieces.weight(piece, 1, which)
                + (1 - first - second) * pieces.weight(piece, 2, which);
    }

    /** Whether a point of the sending facet, by the weights of its first and second corner, lies in the sending piece. */
    boolean isFrom(int link, double a, double b) {
        int piece = from[link];
        double a2 = pieces.weight(piece, 2, 0);
        double b2 = pieces.weight(piece, 2, 1);
        double a0 = pieces.weight(piece, 0, 0) - a2;
        double b0 = pieces.weight(piece, 0, 1) - b2;
        double a1 = pieces.weight(piece, 1, 0) - a2;
        double b1 = pieces.weight(piece, 1, 1) - b2;
        double turn = a0 * b1 - a1 * b0;
        double first = ((a - a2) * b1 - a1 * (b - b2)) / turn;
        double second = (a0 * (b - b2) - (a - a2) * b0) / turn;
        return first >= 0 && second >= 0 && first + second < 1;
    }
}
