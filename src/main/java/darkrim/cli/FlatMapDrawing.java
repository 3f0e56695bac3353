package darkrim.cli;

import darkrim.present.picture.ColourScale;
import darkrim.present.picture.MapPicture;
import darkrim.scene.Scene;
import darkrim.scene.Surface;
import darkrim.study.NoSuchPoint;
import darkrim.study.SurfaceNames;
import darkrim.study.irradiance.LightKind;
import darkrim.study.irradiance.LitLayout;
import darkrim.study.irradiance.SurfaceCells;
import darkrim.study.irradiance.SurfaceMap;
import java.util.List;

/** A flat map of one surface. */
record FlatMapDrawing(DrawingTask task, String surface) implements Drawing {
    private static final int ALONG = 24;
    private static final int SAMPLES = 512;

    @Override
    public void check(Scene scene) throws NoSuchPoint {
        Surface found = SurfaceNames.find(scene, surface);
        if (!SurfaceCells.isFlat(scene, found)) {
            throw new NoSuchPoint("'" + surface + "' is not flat, so that it has no flat map; name a flat surface");
        }
    }

    @Override
    public LitLayout.Fineness fineness() {
        return task.fineness(surface::equals, ALONG, SAMPLES);
    }

    @Override
    public boolean judged() {
        return false;
    }

    @Override
    public String what(LitLayout lit) throws NoSuchPoint {
        LightKind kind = task.light().light().orElseThrow();
        MapPicture picture = picture(lit);
        String stretched = picture.stretch().words();
        return task.beginning(kind) + " on " + surface + ": " + picture.summary() + "."
                + (stretched.isEmpty() ? "" : " " + stretched);
    }

    private SurfaceMap map(LitLayout lit) throws NoSuchPoint {
        return lit.maps().get(SurfaceNames.find(lit.scene(), surface).index());
    }

    private ColourScale scale(LitLayout lit) throws NoSuchPoint {
        return task.scale(lit, List.of(map(lit)));
    }

    private MapPicture picture(LitLayout lit) throws NoSuchPoint {
        return new MapPicture(
                map(lit),
                task.light().light().orElseThrow(),
                scale(lit),
                task.unit(lit).perRelative());
    }

    @Override
    public byte[] png(LitLayout lit) throws NoSuchPoint {
        return picture(lit)
                .png(
                        task.text(lit, List.of(), what(lit), scale(lit)),
                        task.size().width(),
                        task.size().height());
    }
}
