package darkrim.shadow;

import darkrim.scene.Scene;
import java.util.Optional;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/** Asks that every line be blocked or miss the field limit; a counterexample is a clear line. */
final class IsDark implements Question {
    private final SheetCut sheetCut;
    private final CoverCut coverCut;
    private final Optional<FieldExclusion> field;
    private final Optional<ClearLine> clearLine;
    private final String surface;

    /**
     * @param corners nine coordinates a facet; not changed
     * @param clearLine how to look for light, or empty not to look
     * @param surface name of the surface that is asked about
     */
    IsDark(
            Scene scene,
            double[] corners,
            FacetEdges edges,
            Tolerance tolerance,
            Optional<ClearLine> clearLine,
            String surface) {
        sheetCut = new SheetCut(corners, edges);
        coverCut = new CoverCut(scene, corners, edges, tolerance);
        field = scene.covering().fieldLimit().map(limit -> new FieldExclusion(limit, tolerance));
        this.clearLine = clearLine;
        this.surface = surface;
    }

    @Override
    public boolean holds(Shaft shaft, Pair pair, int[] facets) {
        return sheetCut.cuts(shaft, pair, facets)
                || (field.isPresent()
                        && !field.get().passesMiddle(pair)
                        && field.get().excludes(shaft));
    }

    @Override
    public boolean holdsAfterAll(Shaft shaft, Pair pair, int[] facets) {
        return coverCut.covers(shaft, pair, facets);
    }

    @Override
    public int openCount() {
        return sheetCut.openCount();
    }

    @Override
    public int open(int number) {
        return sheetCut.open(number);
    }

    @Override
    public Optional<WitnessRay> counterexample(double[] pupilPoint, Face face, Vector3D end) {
        return clearLine.flatMap(lines -> lines.between(pupilPoint, face, end, surface));
    }

    @Override
    public Optional<Aim> aim(Pair pair) {
        return field.flatMap(limit -> limit.aim(pair, 1));
    }
}
