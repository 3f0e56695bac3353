package darkrim.view.window;

import darkrim.present.picture.ChangeScale;
import darkrim.scene.Surface;
import darkrim.view.look.Light;
import darkrim.view.look.Look;
import darkrim.view.parts.Stage;
import darkrim.view.work.Content;
import darkrim.view.work.FacePair;
import darkrim.view.work.LightChange;
import java.util.List;
import java.util.Optional;

/**
 * How the faces of a layout differ from those of another, as colours and signs.
 *
 * @param before the other layout
 * @param after the layout that is drawn
 * @param light the class of light
 * @param source name of the source whose light is compared; empty for the beam
 */
record Differences(Content before, Content after, Light light, Optional<String> source) {
    /** What a look compares; nothing where it shows no light. */
    static Optional<Differences> of(Look look, Content before, Content after) {
        return look.light() == Light.NONE
                ? Optional.empty()
                : Optional.of(new Differences(before, after, look.light(), look.source()));
    }

    /** The colour of a face, opaque. */
    int argb(Surface surface) {
        FacePair pair = new FacePair(surface.name(), before, after, source);
        LightChange change = pair.change(light);
        return switch (change.kind()) {
            case NOT_KNOWN -> ChangeScale.argb(Double.NaN);
            case NO_CHANGE_SEEN -> ChangeScale.argb(0.5);
            case LESS, MORE -> ChangeScale.argb(ChangeScale.share(change.ratio()));
        };
    }

    /** The sign on a face: N for a new one, + and - for more and less light; none where no change is seen. */
    Optional<String> sign(Surface surface) {
        FacePair pair = new FacePair(surface.name(), before, after, source);
        if (pair.isNew()) {
            return Optional.of("N");
        }
        return switch (pair.change(light).kind()) {
            case NOT_KNOWN, NO_CHANGE_SEEN -> Optional.empty();
            case LESS -> Optional.of("\u2212");
            case MORE -> Optional.of("+");
        };
    }

    /** The edges of faces that are gone, six coordinates each, mm. */
    double[] goneEdges(Look look) {
        if (before.stage().isEmpty() || after.stage().isEmpty()) {
            return new double[0];
        }
        Stage was = before.stage().get();
        List<double[]> edges = was.scene().surfaces().stream()
                .filter(surface -> look.shows(surface.name()))
                .filter(surface ->
                        after.stage().get().scene().surface(surface.name()).isEmpty())
                .map(surface -> was.edges().get(surface.index()))
                .toList();
        return CutFaces.joined(edges);
    }
}
