package darkrim.assembly;

import darkrim.diagnostic.Findings;
import darkrim.layout.BeamSpec;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.apache.commons.geometry.euclidean.threed.Vector3D;

/**
 * Warns of detectors whose active surface faces away from all of the pupil: no light comes straight to them, so a requirement that they be dark
 * holds for a drawing that is upside down.
 */
final class DetectorFacing {
    private DetectorFacing() {}

    /** How many detectors of a part face away, and the first of them. */
    private record Away(Die first, int count) {
        Away and(Away other) {
            return new Away(first, count + other.count);
        }
    }

    static void check(List<Body> bodies, List<Die> dies, BeamSpec beam, Findings findings) {
        Map<String, Face> actives = new HashMap<>();
        bodies.forEach(body -> body.faces().forEach(face -> actives.put(face.name(), face)));
        List<Vector3D> pupil = PupilPlane.rim(beam.pupil());
        Map<String, Away> byPart = new LinkedHashMap<>();
        for (Die die : dies) {
            if (facesAway(actives.get(die.name() + "/active"), die, pupil)) {
                byPart.merge(PartName.of(die.name()), new Away(die, 1), Away::and);
            }
        }
        byPart.forEach((part, away) -> findings.warning(
                "detector-faces-away",
                away.first().place(),
                "the active surface of " + away.first().name()
                        + (away.count() == 1 ? " faces" : " and " + (away.count() - 1) + " more face")
                        + " away from the pupil, so that no light comes straight from it; expected +z of part " + part
                        + " toward the pupil: look at its 'turn' and 'mirror'"));
    }

    private static boolean facesAway(Face active, Die die, List<Vector3D> pupil) {
        Vector3D normal = active.triangles().get(0).doubledNormal();
        return pupil.stream()
                .allMatch(point -> die.active().stream()
                        .allMatch(corner -> point.subtract(corner).dot(normal) <= 0));
    }
}
