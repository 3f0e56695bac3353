package darkrim.cli;

import darkrim.layout.form.Wording;
import darkrim.present.Printable;
import darkrim.present.picture.ColourScale;
import darkrim.present.picture.PixelPicture;
import darkrim.present.picture.Subject;
import darkrim.scene.Scene;
import darkrim.study.NoSuchPoint;
import darkrim.study.SurfacePoint;
import darkrim.study.SurfaceRectangle;
import darkrim.study.irradiance.LitLayout;
import darkrim.trace.FacetTree;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** What one point sees. */
record SightDrawing(DrawingTask task, DrawnParts look, PointOption at, double halfAngle) implements Drawing {
    private static final int ALONG = 12;
    private static final int SAMPLES = 64;

    @Override
    public void check(Scene scene) throws NoSuchPoint {
        point(scene);
    }

    private SurfacePoint point(Scene scene) throws NoSuchPoint {
        FacetTree tree = FacetTree.build(scene.corners(), scene.copyPlanes(), scene.bound());
        return SurfacePoint.of(scene, tree, at.surface(), at.u(), at.v());
    }

    @Override
    public LitLayout.Fineness fineness() {
        SurfacePatterns cells =
                new SurfacePatterns("--cells", task.light().cells().orElse(List.of("**")));
        return task.fineness(cells::selects, ALONG, SAMPLES);
    }

    @Override
    public boolean judged() {
        return task.light().cells().isPresent();
    }

    @Override
    public String what(LitLayout lit) {
        return task.beginning(task.light().light().orElseThrow()) + " on what " + at.surface() + " sees at "
                + Wording.number(at.u()) + "," + Wording.number(at.v()) + ", to "
                + Wording.number(halfAngle) + " deg from the direction that it faces.";
    }

    @Override
    public byte[] png(LitLayout lit) throws NoSuchPoint {
        SurfacePoint point = point(lit.scene());
        ColourScale scale = task.scale(lit, lit.maps());
        Subject subject = task.subject(lit, look.shown(lit.scene()), scale, Map.of(), Optional.empty(), List.of());
        List<String> notes =
                List.of("The distance from the middle grows in proportion to the angle. Right and up are as layouts are"
                        + " drawn: an eye at the point would see right and left exchanged. Blue-green line: outline of "
                        + task.source().map(each -> Printable.of(each.name())).orElse("the pupil") + ".");
        return new PixelPicture(
                        subject,
                        task.text(lit, notes, what(lit), scale),
                        point,
                        SurfaceRectangle.of(lit.scene(), point.surface()).alongV(),
                        halfAngle)
                .png(task.size().width(), task.size().height(), task.effort().threads());
    }
}
