package darkrim.study.section;

import darkrim.assembly.Body;
import darkrim.assembly.Face;
import darkrim.assembly.PartName;
import darkrim.assembly.Triangle;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Deque;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.apache.commons.geometry.euclidean.twod.Vector2D;

/**
 * Cuts a body at a plane. Each facet that the plane crosses gives a stretch with the material to its left. Facets that share an edge find the very
 * same point on it, to the bit, so that stretches join end to start; a corner in the plane counts as lying behind it for every facet that has it, which
 * keeps outlines closed, and a face that lies in the plane is cut as if the plane were moved toward the eye by less than any length.
 */
final class BodyCut {
    /** A corner that lies off the line between its neighbours by less than this share of their distance is no corner. */
    private static final double STRAIGHT = 1e-10;

    /** Points of an outline that are nearer than this are one, mm. */
    private static final double SAME = 1e-9;

    private final SectionPlane plane;

    BodyCut(SectionPlane plane) {
        this.plane = plane;
    }

    private record Stretch(Vector3D from, Vector3D to) {}

    /** The cut; empty where the plane misses the body. */
    Optional<CutBody> of(Body body) {
        Map<Vector3D, Deque<Stretch>> byStart = new LinkedHashMap<>();
        Set<String> surfaces = new LinkedHashSet<>();
        for (Face face : body.faces()) {
            boolean cut = false;
            for (Triangle facet : face.triangles()) {
                Optional<Stretch> stretch = stretch(facet);
                if (stretch.isPresent()) {
                    cut = true;
                    byStart.computeIfAbsent(stretch.get().from(), start -> new ArrayDeque<>())
                            .add(stretch.get());
                }
            }
            if (cut) {
                surfaces.addAll(face.surfaces());
            }
        }
        if (byStart.isEmpty()) {
            return Optional.empty();
        }
        List<List<Vector2D>> outlines = new ArrayList<>();
        List<List<Vector2D>> lines = new ArrayList<>();
        join(byStart, outlines, lines);
        String part = PartName.of(body.name());
        return Optional.of(new CutBody(part, body.name(), body.solid(), outlines, lines, List.copyOf(surfaces)));
    }

    /** Where the plane crosses a facet, if it does. */
    private Optional<Stretch> stretch(Triangle facet) {
        Vector3D[] corners = {facet.a(), facet.b(), facet.c()};
        Vector3D from = null;
        Vector3D to = null;
        for (int k = 0; k < 3; k++) {
            Vector3D here = corners[k];
            Vector3D there = corners[(k + 1) % 3];
            boolean behind = plane.frame().height(here) <= 0;
            if (behind != plane.frame().height(there) <= 0) {
                // Counter-clockwise about the outward normal: material lies to the left of the way from the side that
                // goes down to the one up.
                if (behind) {
                    to = crossing(here, there);
                } else {
                    from = crossing(here, there);
                }
            }
        }
        return from == null || to == null || from.equals(to) ? Optional.empty() : Optional.of(new Stretch(from, to));
    }

    /** The same for both directions of an edge. */
    private Vector3D crossing(Vector3D a, Vector3D b) {
        boolean ordered = Vector3D.COORDINATE_ASCENDING_ORDER.compare(a, b) < 0;
        Vector3D low = ordered ? a : b;
        Vector3D high = ordered ? b : a;
        double below = plane.frame().height(low);
        double above = plane.frame().height(high);
        // Corners in the plane are met as they are.
        Vector3D met = below == 0 ? low : above == 0 ? high : low.lerp(high, below / (below - above));
        // Not -0, which would not be the same point as 0.
        return met.add(Vector3D.ZERO);
    }

    private void join(
            Map<Vector3D, Deque<Stretch>> byStart, List<List<Vector2D>> outlines, List<List<Vector2D>> lines) {
        Set<Vector3D> ends = new LinkedHashSet<>();
        byStart.values().forEach(all -> all.forEach(each -> ends.add(each.to())));
        // Lines that stay open begin where nothing ends.
        List<Vector3D> starts = new ArrayList<>(byStart.keySet());
        starts.removeIf(ends::contains);
        starts.addAll(byStart.keySet());
        for (Vector3D start : starts) {
            while (byStart.containsKey(start)) {
                List<Vector3D> chain = chain(start, byStart);
                boolean closed = chain.size() > 3 && chain.get(0).equals(chain.get(chain.size() - 1));
                List<Vector2D> seen =
                        new ArrayList<>(chain.stream().map(plane::seen).toList());
                if (closed) {
                    seen.remove(seen.size() - 1);
                }
                List<Vector2D> corners = corners(seen, closed);
                if (closed && corners.size() >= 3) {
                    outlines.add(corners);
                } else if (!closed) {
                    lines.add(corners);
                }
            }
        }
    }

    /** Follows stretches until one ends where nothing begins, or where the chain began. */
    private static List<Vector3D> chain(Vector3D start, Map<Vector3D, Deque<Stretch>> byStart) {
        List<Vector3D> chain = new ArrayList<>(List.of(start));
        Vector3D at = start;
        do {
            Deque<Stretch> here = byStart.get(at);
            Stretch next = here.poll();
            if (here.isEmpty()) {
                byStart.remove(at);
            }
            at = next.to();
            chain.add(at);
        } while (!at.equals(start) && byStart.containsKey(at));
        return chain;
    }

    /** Without the points between facets of one plane. */
    private static List<Vector2D> corners(List<Vector2D> all, boolean closed) {
        List<Vector2D> apart = apart(all, closed);
        if (closed) {
            // The first is kept unasked: the leftmost one is a corner, as nothing lies beyond it, or lies beside it on
            // an upright side.
            Collections.rotate(apart, -apart.indexOf(Collections.min(apart, Vector2D.COORDINATE_ASCENDING_ORDER)));
        }
        List<Vector2D> kept = new ArrayList<>();
        int count = apart.size();
        for (int i = 0; i < count; i++) {
            boolean end = i == 0 || (!closed && i == count - 1);
            if (end || !isStraight(kept.get(kept.size() - 1), apart.get(i), apart.get((i + 1) % count))) {
                kept.add(apart.get(i));
            }
        }
        if (closed && kept.size() > 3 && isStraight(kept.get(kept.size() - 1), kept.get(0), kept.get(1))) {
            kept.remove(0);
        }
        return kept;
    }

    /**
     * Without points that are the same but for rounding, as where the plane passes a corner by less than its last digit: a step so short has no
     * direction, and beside it no corner would seem to be one.
     */
    private static List<Vector2D> apart(List<Vector2D> all, boolean closed) {
        List<Vector2D> apart = new ArrayList<>();
        for (Vector2D point : all) {
            if (apart.isEmpty() || apart.get(apart.size() - 1).distance(point) > SAME) {
                apart.add(point);
            }
        }
        int last = apart.size() - 1;
        if (!closed && last == 0) {
            apart.add(all.get(all.size() - 1));
        } else if (closed && last > 0 && apart.get(0).distance(apart.get(last)) <= SAME) {
            apart.remove(last);
        }
        return apart;
    }

    private static boolean isStraight(Vector2D before, Vector2D at, Vector2D after) {
        Vector2D way = after.subtract(before);
        double off = Math.abs(way.signedArea(at.subtract(before)));
        return off <= STRAIGHT * way.normSq()
                && at.subtract(before).dot(way) >= 0
                && after.subtract(at).dot(way) >= 0;
    }
}
