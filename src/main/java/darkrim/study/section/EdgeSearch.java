package darkrim.study.section;

import darkrim.assembly.Opening;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.apache.commons.geometry.euclidean.threed.Vector3D;
import org.apache.commons.geometry.euclidean.twod.Vector2D;

/**
 * Finds the edges past which light comes in a section: the sides of the openings that it cuts; where it cuts none, every corner of what it cuts that
 * the middle of the pupil sees edge-on.
 */
final class EdgeSearch {
    private final SectionPlane plane;
    private final Vector2D pupil;

    /**
     * @param pupil the middle of the pupil as it is seen in the section, mm
     */
    EdgeSearch(SectionPlane plane, Vector2D pupil) {
        this.plane = plane;
        this.pupil = pupil;
    }

    List<LimitingEdge> of(List<Opening> openings, List<CutBody> bodies) {
        List<LimitingEdge> edges = new ArrayList<>();
        openings.forEach(opening -> edges.addAll(sides(opening)));
        if (edges.isEmpty()) {
            bodies.forEach(body -> edges.addAll(corners(body)));
        }
        return edges;
    }

    private record Crossing(String side, Vector2D at, Vector3D along) {}

    /** The two sides of an opening that the section cuts; none where it misses the opening, or cuts its outline more than twice. */
    private List<LimitingEdge> sides(Opening opening) {
        Map<Boolean, List<Vector2D>> profiles = new LinkedHashMap<>();
        Map<Boolean, Crossing> first = new LinkedHashMap<>();
        for (List<Vector3D> loop : opening.loops()) {
            List<Crossing> crossings = crossings(loop, opening.sides());
            if (crossings.size() != 2) {
                return List.of();
            }
            crossings.sort(Comparator.comparingDouble(each -> each.at().getX()));
            for (int i = 0; i < 2; i++) {
                profiles.computeIfAbsent(i == 0, side -> new ArrayList<>())
                        .add(crossings.get(i).at());
                first.putIfAbsent(i == 0, crossings.get(i));
            }
        }
        List<LimitingEdge> edges = new ArrayList<>();
        profiles.forEach((left, profile) -> {
            Vector2D other = profiles.get(!left).get(1);
            edges.add(new LimitingEdge(
                    opening.name(),
                    first.get(left).side(),
                    profile,
                    profile.get(1).lerp(other, 0.5),
                    first.get(left).along()));
        });
        return edges;
    }

    private List<Crossing> crossings(List<Vector3D> loop, List<String> sides) {
        List<Crossing> found = new ArrayList<>();
        for (int i = 0; i < loop.size(); i++) {
            Vector3D from = loop.get(i);
            Vector3D to = loop.get((i + 1) % loop.size());
            double here = plane.frame().height(from);
            double there = plane.frame().height(to);
            if (here <= 0 != there <= 0) {
                Vector3D at = from.lerp(to, here / (here - there));
                String side = i < sides.size() ? sides.get(i) : "";
                found.add(new Crossing(side, plane.seen(at), to.subtract(from).normalize()));
            }
        }
        return found;
    }

    private List<LimitingEdge> corners(CutBody body) {
        List<LimitingEdge> edges = new ArrayList<>();
        for (List<Vector2D> outline : body.outlines()) {
            for (int i = 0; i < outline.size(); i++) {
                Vector2D before = outline.get((i + outline.size() - 1) % outline.size());
                Vector2D at = outline.get(i);
                Vector2D after = outline.get((i + 1) % outline.size());
                // Material lies to the left: a corner that turns left is one of the material, not of the room.
                if (at.subtract(before).signedArea(after.subtract(at)) > 0) {
                    add(edges, body, before, at, after);
                }
            }
        }
        for (List<Vector2D> line : body.lines()) {
            for (int i = 0; i < line.size(); i++) {
                Vector2D at = line.get(i);
                Vector2D before = line.get(i == 0 ? 1 : i - 1);
                Vector2D after = line.get(i == line.size() - 1 ? i - 1 : i + 1);
                add(edges, body, before, at, after);
            }
        }
        return edges;
    }

    /** A corner limits light where both its neighbours lie to the same side of the line from the pupil. */
    private void add(List<LimitingEdge> edges, CutBody body, Vector2D before, Vector2D at, Vector2D after) {
        Vector2D way = at.subtract(pupil);
        double one = way.signedArea(before.subtract(at));
        double other = way.signedArea(after.subtract(at));
        if (one * other > 0) {
            Vector2D square = way.orthogonal().multiply(one > 0 ? -1 : 1);
            edges.add(new LimitingEdge(
                    body.body(),
                    "",
                    List.of(at),
                    at.add(square.normalize()),
                    plane.frame().normal()));
        }
    }
}
