package darkrim.assembly;

import darkrim.layout.Part;
import darkrim.layout.Shape;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * What was made for the last layout and holds for the next where the two agree: the facets of a part of the same shape, and which surfaces a
 * pattern selects among surfaces of the same names. An assembly has the same bits with it as without. It grows no larger than the layout. Used
 * by one thread at a time.
 */
public final class AssemblyMemory {
    /** A part with more facets is built anew, so that large ones are not held while the next are made. */
    private static final int MOST_FACETS = 20_000;

    private final Map<String, Built> builtOf = new HashMap<>();
    private final Map<String, List<String>> selectedBy = new HashMap<>();
    private final List<String> surfaces = new ArrayList<>();

    private record Built(Shape shape, Pieces pieces) {}

    /**
     * The pieces of a part in its own frame.
     *
     * @throws IllegalArgumentException if its sizes do not make a body
     */
    Pieces pieces(Part part) {
        Built last = builtOf.get(part.name());
        if (last != null && last.shape.equals(part.shape())) {
            return last.pieces;
        }
        Pieces pieces = PartPieces.of(part.shape());
        if (pieces.facets() <= MOST_FACETS) {
            builtOf.put(part.name(), new Built(part.shape(), pieces));
        } else {
            builtOf.remove(part.name());
        }
        return pieces;
    }

    /**
     * The surfaces that a pattern selects, in their order.
     *
     * @param pattern the pattern
     * @param among names of all surfaces
     * @throws IllegalArgumentException if the pattern cannot be read
     */
    public List<String> selected(String pattern, List<String> among) {
        if (!surfaces.equals(among)) {
            selectedBy.clear();
            surfaces.clear();
            surfaces.addAll(among);
        }
        return selectedBy.computeIfAbsent(pattern, text -> Selection.of(text).of(surfaces.stream()));
    }
}
