package darkrim.light;

import darkrim.scene.Scene;
import darkrim.scene.Surface;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.PriorityQueue;

/** Finds the links of a receiver: the link by which most can come is replaced by those of the halves of its larger piece, again and again. */
final class LinkRefinement {
    /** With more pairs of whole facets than this, links would take longer to find than the samples that they save. */
    private static final int MOST_PAIRS = 1 << 14;

    /** How often a link is replaced, at most. */
    private static final int MOST_STEPS = 1 << 11;

    /** No link is replaced by which less than this share of the sum can come. */
    private static final double SMALL = 1.0 / 1024;

    private final Scene scene;
    private final Senders senders;
    private final TrianglePieces pieces = new TrianglePieces();
    private final LinkBound bound;
    private final PriorityQueue<Pair> open = new PriorityQueue<>(
            Comparator.comparingDouble(Pair::most).reversed().thenComparingLong(Pair::number));
    private double area;
    private double sum;
    private long numbers;

    private record Pair(long number, int to, int from, int sender, Normal normal, double most, boolean wide) {}

    private record Normal(double x, double y, double z) {}

    private LinkRefinement(Scene scene, Senders senders, double lift) {
        this.scene = scene;
        this.senders = senders;
        this.bound = new LinkBound(pieces, lift);
    }

    /**
     * The links of a receiver; none if there would be too many.
     *
     * @param facing what can send it light
     * @param lift how far starts are lifted from a face, mm
     */
    static Optional<LightLinks> of(Scene scene, Senders senders, Receiver receiver, Facing facing, double lift) {
        LinkRefinement refinement = new LinkRefinement(scene, senders, lift);
        if (!refinement.begin(receiver, facing)) {
            return Optional.empty();
        }
        refinement.refine();
        return Optional.of(refinement.links());
    }

    private boolean begin(Receiver receiver, Facing facing) {
        int facets = receiver instanceof Receiver.OnSurface on ? on.surface().facetCount() : 1;
        List<Integer> scattering = new ArrayList<>();
        for (int sender : senders.brightestFirst()) {
            if (facing.mayGet(
                    senders.facet(sender),
                    scene.surfaces().get(senders.surface(sender)).back())) {
                scattering.add(sender);
                if ((long) scattering.size() * facets > MOST_PAIRS) {
                    return false;
                }
            }
        }
        int[] sending = scattering.stream()
                .mapToInt(sender -> pieces.add(scene, senders.facet(sender)))
                .toArray();
        area = receiver instanceof Receiver.OnSurface on ? area(on.surface()) : 1;
        for (int i = 0; i < facets; i++) {
            Normal normal;
            int to;
            if (receiver instanceof Receiver.OnSurface on) {
                int facet = on.surface().firstFacet() + i;
                normal = normal(facet, on.surface().back());
                to = pieces.add(scene, facet);
            } else {
                Receiver.AtPoint at = (Receiver.AtPoint) receiver;
                normal = new Normal(
                        at.normal().getX(), at.normal().getY(), at.normal().getZ());
                to = pieces.add(
                        at.position().getX(),
                        at.position().getY(),
                        at.position().getZ());
            }
            for (int k = 0; k < sending.length; k++) {
                add(to, sending[k], scattering.get(k), normal);
            }
        }
        return true;
    }

    private double area(Surface surface) {
        double all = 0;
        for (int i = 0; i < surface.facetCount(); i++) {
            all += scene.facetArea(surface.firstFacet() + i);
        }
        return all;
    }

    private Normal normal(int facet, boolean back) {
        double side = back ? -1 : 1;
        return new Normal(side * scene.normal(facet, 0), side * scene.normal(facet, 1), side * scene.normal(facet, 2));
    }

    private void add(int to, int from, int sender, Normal normal) {
        int facet = pieces.facet(from);
        if (pieces.facet(to) >= 0 && scene.plane(pieces.facet(to)) == scene.plane(facet)) {
            return;
        }
        Normal other =
                normal(facet, scene.surfaces().get(senders.surface(sender)).back());
        double factor = bound.between(to, normal.x(), normal.y(), normal.z(), from, other.x(), other.y(), other.z())
                * pieces.area(from);
        double most = pieces.area(to) / area * senders.scatteredSample(sender) * Math.min(1, factor);
        if (most > 0) {
            sum += most;
            open.add(new Pair(numbers++, to, from, sender, normal, most, factor > 1));
        }
    }

    private void refine() {
        for (int step = 0; step < MOST_STEPS && !open.isEmpty(); step++) {
            if (open.peek().most() < SMALL * sum) {
                return;
            }
            Pair pair = open.poll();
            sum -= pair.most();
            boolean receiver = pieces.extent(pair.to()) > pieces.extent(pair.from());
            int first = pieces.halves(receiver ? pair.to() : pair.from());
            for (int half = first; half < first + 2; half++) {
                add(receiver ? half : pair.to(), receiver ? pair.from() : half, pair.sender(), pair.normal());
            }
        }
    }

    private LightLinks links() {
        List<LightLinks.Link> links = open.stream()
                .sorted(Comparator.comparingInt(Pair::to).thenComparingLong(Pair::number))
                .map(pair -> new LightLinks.Link(
                        pair.to(),
                        pair.from(),
                        senders.surface(pair.sender()),
                        pair.most(),
                        pair.most() * senders.litShare(pair.sender()),
                        pieces.area(pair.to()) / area * (pair.wide() ? 1 : pieces.area(pair.from())),
                        pair.wide()))
                .toList();
        return new LightLinks(pieces, links);
    }
}
