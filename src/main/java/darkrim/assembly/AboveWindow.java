package darkrim.assembly;

import darkrim.diagnostic.Findings;
import darkrim.layout.BeamSpec;
import darkrim.layout.form.Wording;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/** All parts must lie below the window: light is followed straight down from its lower face. */
final class AboveWindow {
    private AboveWindow() {}

    static void check(List<Body> bodies, BeamSpec beam, Findings findings) {
        if (beam.window().isEmpty()) {
            return;
        }
        double bottom = beam.window().get().bottom();
        Set<String> named = new HashSet<>();
        for (Body body : bodies) {
            double highest = body.triangles()
                    .mapToDouble(t -> Math.max(t.a().getZ(), Math.max(t.b().getZ(), t.c().getZ())))
                    .max()
                    .orElse(Double.NEGATIVE_INFINITY);
            String part = PartName.of(body.name());
            if (highest > bottom && named.add(part)) {
                findings.error(
                        "above-window",
                        body.place(),
                        "part " + part + " reaches up to " + Wording.number(highest)
                                + " mm and the lower face of the window lies at " + Wording.number(bottom)
                                + " mm: parts beside or above a window are not followed, expected all parts below it");
            }
        }
    }
}
