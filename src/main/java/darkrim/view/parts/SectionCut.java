package darkrim.view.parts;

import darkrim.scene.Scene;
import darkrim.scene.Surface;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.IntUnaryOperator;

/**
 * What a section plane leaves of surfaces and edges, and the cut faces of solids.
 *
 * <p>The cut face of a solid is found from where its facets meet the plane: between two neighbouring heights at which such a segment ends
 * no segments begin, end or cross, so that sorted by place they bound solid and void in turn (even-odd rule). Each strip is filled by
 * trapezia.
 */
public final class SectionCut {
    private final Scene scene;
    private final Section section;

    /**
     * @param scene the scene
     * @param section the plane
     */
    public SectionCut(Scene scene, Section section) {
        this.scene = scene;
        this.section = section;
    }

    /** Where a surface lies. */
    public enum Side {
        /** All of it is kept. */
        KEPT,
        /** All of it is cut away. */
        GONE,
        /** The plane runs through it. */
        CUT
    }

    /** Where a surface lies. */
    public Side side(Surface surface) {
        boolean kept = false;
        boolean gone = false;
        for (int f = surface.firstFacet(); f < surface.firstFacet() + surface.facetCount(); f++) {
            for (int k = 0; k < 3; k++) {
                double beyond = beyond(f, k);
                kept |= beyond < 0;
                gone |= beyond > 0;
            }
        }
        return kept && gone ? Side.CUT : gone ? Side.GONE : Side.KEPT;
    }

    /**
     * The kept pieces of a surface's facets.
     *
     * @return pieces in the sense of the facet, each with the facet that it comes from
     */
    public Pieces pieces(Surface surface) {
        double[] corners = new double[9 * surface.facetCount()];
        for (int i = 0; i < corners.length; i++) {
            corners[i] = scene.corner(surface.firstFacet() + i / 9, i % 9 / 3, i % 3);
        }
        return pieces(corners, i -> surface.firstFacet() + i);
    }

    /**
     * The kept pieces of triangles.
     *
     * @param corners nine coordinates each, mm
     * @param tagOf what to name the pieces of a triangle by
     */
    public Pieces pieces(double[] corners, IntUnaryOperator tagOf) {
        Pieces pieces = new Pieces();
        double[][] polygon = new double[4][];
        for (int triangle = 0; triangle < corners.length / 9; triangle++) {
            int kept = 0;
            for (int k = 0; k < 3; k++) {
                double[] from = Arrays.copyOfRange(corners, 9 * triangle + 3 * k, 9 * triangle + 3 * k + 3);
                int next = 9 * triangle + 3 * ((k + 1) % 3);
                double here = section.beyond(from[0], from[1], from[2]);
                double there = section.beyond(corners[next], corners[next + 1], corners[next + 2]);
                if (here <= 0) {
                    polygon[kept++] = from;
                }
                if ((here < 0 && there > 0) || (here > 0 && there < 0)) {
                    double share = here / (here - there);
                    double[] between = new double[3];
                    for (int axis = 0; axis < 3; axis++) {
                        between[axis] = from[axis] + share * (corners[next + axis] - from[axis]);
                    }
                    polygon[kept++] = between;
                }
            }
            for (int i = 1; i + 1 < kept; i++) {
                pieces.add(tagOf.applyAsInt(triangle), polygon[0], polygon[i], polygon[i + 1]);
            }
        }
        return pieces;
    }

    /** The kept pieces of edges: six coordinates each, mm. */
    public double[] edges(double[] all) {
        double[] kept = new double[all.length];
        int length = 0;
        for (int at = 0; at < all.length; at += 6) {
            double here = section.beyond(all[at], all[at + 1], all[at + 2]);
            double there = section.beyond(all[at + 3], all[at + 4], all[at + 5]);
            if (here > 0 && there > 0) {
                continue;
            }
            System.arraycopy(all, at, kept, length, 6);
            if (here > 0 || there > 0) {
                double share = here / (here - there);
                int replaced = here > 0 ? 0 : 3;
                for (int axis = 0; axis < 3; axis++) {
                    kept[length + replaced + axis] = all[at + axis] + share * (all[at + 3 + axis] - all[at + axis]);
                }
            }
            length += 6;
        }
        return Arrays.copyOf(kept, length);
    }

    /**
     * Where the facets of a solid meet the plane.
     *
     * @param surfaces numbers of the surfaces that enclose it
     * @return four numbers a segment: both ends in the plane, by the two axes that follow the plane's own, mm
     */
    public double[] outline(int[] surfaces) {
        List<double[]> segments = new ArrayList<>();
        for (int number : surfaces) {
            Surface surface = scene.surfaces().get(number);
            for (int f = surface.firstFacet(); f < surface.firstFacet() + surface.facetCount(); f++) {
                double[] ends = new double[4];
                int found = 0;
                for (int k = 0; k < 3; k++) {
                    int next = (k + 1) % 3;
                    double here = beyond(f, k);
                    double there = beyond(f, next);
                    // A corner in the plane counts as kept, for every facet that has it: the outline stays closed.
                    if (here <= 0 != there <= 0 && found < 2) {
                        double[] point = between(f, k, next, here / (here - there));
                        ends[2 * found] = point[firstAxis()];
                        ends[2 * found + 1] = point[secondAxis()];
                        found++;
                    }
                }
                if (found == 2) {
                    segments.add(ends);
                }
            }
        }
        double[] flat = new double[4 * segments.size()];
        for (int i = 0; i < segments.size(); i++) {
            System.arraycopy(segments.get(i), 0, flat, 4 * i, 4);
        }
        return flat;
    }

    /**
     * Fills an outline.
     *
     * @param outline segments as {@link #outline} gives them
     * @return nine coordinates a triangle in space, mm, facing the side that is cut away
     */
    public double[] fill(double[] outline) {
        double[] flat = new EvenOddFill(outline).triangles();
        double[] placed = new double[flat.length / 2 * 3];
        // Counter-clockwise by the two axes is counter-clockwise as seen from the plane's positive side.
        for (int triangle = 0; triangle < flat.length / 6; triangle++) {
            for (int k = 0; k < 3; k++) {
                int from = 6 * triangle + 2 * (section.flipped() ? 2 - k : k);
                int to = 9 * triangle + 3 * k;
                placed[to + section.axis()] = section.offset();
                placed[to + firstAxis()] = flat[from];
                placed[to + secondAxis()] = flat[from + 1];
            }
        }
        return placed;
    }

    /** The segments of an outline in space: six coordinates each, mm. */
    public double[] placed(double[] outline) {
        double[] placed = new double[outline.length / 2 * 3];
        for (int end = 0; end < outline.length / 2; end++) {
            placed[3 * end + section.axis()] = section.offset();
            placed[3 * end + firstAxis()] = outline[2 * end];
            placed[3 * end + secondAxis()] = outline[2 * end + 1];
        }
        return placed;
    }

    private int firstAxis() {
        return (section.axis() + 1) % 3;
    }

    private int secondAxis() {
        return (section.axis() + 2) % 3;
    }

    private double beyond(int f, int k) {
        return section.beyond(scene.corner(f, k, 0), scene.corner(f, k, 1), scene.corner(f, k, 2));
    }

    private double[] between(int f, int k, int next, double share) {
        double[] point = new double[3];
        for (int axis = 0; axis < 3; axis++) {
            double from = scene.corner(f, k, axis);
            point[axis] = from + share * (scene.corner(f, next, axis) - from);
        }
        return point;
    }
}
