package darkrim.shadow;

import darkrim.scene.Scene;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/** Asks that every line be clear and pass the field limit: no facet touches the shaft. A counterexample is a line that is blocked. */
final class IsFullyLit implements Question {
    private final double[] corners;
    private final FacetEdges edges;
    private final Optional<FieldExclusion> field;
    private final BlockedLine blockedLine;
    private final String surface;

    private final List<Integer> blockers = new ArrayList<>();
    private int[] open = new int[16];
    private int openCount;

    /**
     * @param corners nine coordinates a facet; not changed
     * @param blockedLine looks for lines that are blocked
     * @param surface name of the surface that is asked about
     */
    IsFullyLit(
            Scene scene,
            double[] corners,
            FacetEdges edges,
            Tolerance tolerance,
            BlockedLine blockedLine,
            String surface) {
        this.corners = corners;
        this.edges = edges;
        this.blockedLine = blockedLine;
        this.surface = surface;
        field = scene.covering().fieldLimit().map(limit -> new FieldExclusion(limit, tolerance));
    }

    @Override
    public boolean holds(Shaft shaft, Pair pair, int[] facets) {
        openCount = 0;
        blockers.clear();
        boolean apart = true;
        RestingPlanes resting = new RestingPlanes(pair, corners, facets);
        for (int f : facets) {
            if (!pair.isSurelyOutOfReach(corners, 9 * f)
                    && !pair.isBeside(corners, 9 * f)
                    && !shaft.apartFromTriangle(Arrays.copyOfRange(corners, 9 * f, 9 * f + 9))
                    && !resting.hide(9 * f)) {
                apart = false;
                note(f);
                blockers.add(f);
            }
        }
        return apart && (field.isEmpty() || field.get().admits(shaft));
    }

    /** Facets that are not apart from the last shaft. */
    List<Integer> blockers() {
        return blockers;
    }

    private void note(int f) {
        for (int k = 0; k < 3; k++) {
            int edge = edges.of(f, k);
            if (edges.isCrease(edge)) {
                if (openCount == open.length) {
                    open = Arrays.copyOf(open, 2 * openCount);
                }
                open[openCount++] = edge;
            }
        }
    }

    @Override
    public boolean holdsAfterAll(Shaft shaft, Pair pair, int[] facets) {
        return false;
    }

    @Override
    public int openCount() {
        return openCount;
    }

    @Override
    public int open(int number) {
        return open[number];
    }

    @Override
    public Optional<WitnessRay> counterexample(double[] pupilPoint, Face face, Vector3D end) {
        return blockedLine.between(pupilPoint, face, end, surface);
    }

    @Override
    public Optional<Aim> aim(Pair pair) {
        return field.flatMap(limit -> limit.aim(pair, -1));
    }
}
