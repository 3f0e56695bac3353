package darkrim.assembly;

import java.util.List;

/**
 * What a part consists of, in its own frame, before it is placed.
 *
 * @param meshes its bodies
 * @param openings its openings, if it is a plate
 * @param dies its dies, if it is a group of detectors
 * @param chordError greatest distance between a curved outline and the polygon that stands for it, mm
 */
record Pieces(List<? extends Piece> meshes, List<Opening> openings, List<Die> dies, double chordError) {
    /** Number of facets. */
    int facets() {
        return meshes.stream().mapToInt(Piece::size).sum();
    }

    /** A part with straight edges only. */
    static Pieces of(Mesh mesh) {
        return of(mesh, 0);
    }

    static Pieces of(Mesh mesh, double chordError) {
        return new Pieces(List.of(mesh), List.of(), List.of(), chordError);
    }
}
