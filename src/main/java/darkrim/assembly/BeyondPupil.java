package darkrim.assembly;

import darkrim.diagnostic.Findings;
import darkrim.diagnostic.Place;
import darkrim.geom.Frame;
import darkrim.layout.BeamSpec;
import darkrim.layout.form.Wording;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.DoubleStream;

/** Names parts that reach beyond the plane of the pupil: light starts there, so what lies beyond stops none of it. */
final class BeyondPupil {
    /** Parts that end at the pupil may do so by rounding, mm. */
    private static final double TOLERANCE = 1e-6;

    private BeyondPupil() {}

    /** Depths of a part behind the pupil, mm: of what reaches farthest beyond, and of what comes nearest to the detectors. */
    private record Depths(Place place, double farthest, double nearest) {
        Depths and(Depths other) {
            return new Depths(place, Math.max(farthest, other.farthest), Math.min(nearest, other.nearest));
        }
    }

    static void check(List<Body> bodies, BeamSpec beam, Findings findings) {
        Frame pupil = PupilPlane.frame(beam.pupil());
        Map<String, Depths> byPart = new LinkedHashMap<>();
        for (Body body : bodies) {
            double[] beyond = body.triangles()
                    .flatMapToDouble(
                            t -> DoubleStream.of(-pupil.height(t.a()), -pupil.height(t.b()), -pupil.height(t.c())))
                    .toArray();
            String part = GridSteps.partOf(body.name());
            for (double depth : beyond) {
                byPart.merge(part, new Depths(body.place(), depth, depth), Depths::and);
            }
        }
        byPart.forEach((part, depths) -> {
            if (depths.farthest > TOLERANCE) {
                findings.warning("beyond-pupil", depths.place, message(part, depths));
            }
        });
    }

    private static String message(String part, Depths depths) {
        String whole = depths.nearest >= -TOLERANCE ? "lies wholly beyond" : "reaches beyond";
        return "part " + part + " " + whole + " the plane of the pupil, by up to "
                + Wording.number(Math.ceil(1e4 * depths.farthest) / 1e4)
                + " mm: light starts at the pupil, so what lies beyond it stops none; expected the part between the pupil and"
                + " the detectors";
    }
}
